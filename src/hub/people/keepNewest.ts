/** Sets an entry as the newest and drops the oldest one beyond `most`: what strangers make up does not grow it. */
export function keepNewest<T>(map: Map<string, T>, key: string, value: T, most: number): void {
  map.delete(key);
  map.set(key, value);
  const [oldest] = map.keys();
  if (map.size > most && oldest !== undefined) map.delete(oldest);
}
