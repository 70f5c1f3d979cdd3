/** Does work one at a time for each key, in the order in which it was asked. */
export type Exclusive = <T>(key: string, work: () => Promise<T>) => Promise<T>;

/** @param most of one key at the same time */
export function exclusive(most = 1): Exclusive {
  const lines = new Map<string, { running: number; readonly waiting: (() => void)[] }>();
  return async (key, work) => {
    const line = lines.get(key) ?? { running: 0, waiting: [] };
    lines.set(key, line);
    if (line.running >= most) await new Promise<void>((go) => line.waiting.push(go));
    else line.running += 1;
    try {
      return await work();
    } finally {
      const next = line.waiting.shift();
      if (next !== undefined) next();
      else if (--line.running === 0) lines.delete(key);
    }
  };
}
