/**
 * The last seconds of a stream as one flat list of numbers, time (s) first in each row. Plain data.
 * Numbers in one list cost the collector nothing; the same rows as objects cost more than the filters.
 */
export interface Recent {
  readonly width: number;
  readonly keepS: number;
  data: number[];
}

export const createRecent = (width: number, keepS: number): Recent => ({ width, keepS, data: [] });

/** Call after a row was pushed onto `data`: drops the old in large pieces, never within `keepS` of the newest. */
export function trimRecent(r: Recent): void {
  const { data, width, keepS } = r;
  const newest = data[data.length - width] ?? 0;
  if (newest - (data[0] ?? newest) <= 2 * keepS) return;
  r.data = data.slice(width * firstAt(r, newest - keepS));
}

/** Index of the first row at or after a time; the number of rows where there is none. */
export function firstAt({ data, width }: Recent, timeS: number): number {
  let low = 0;
  let high = data.length / width;
  while (low < high) {
    const mid = (low + high) >> 1;
    if ((data[mid * width] ?? 0) < timeS) low = mid + 1;
    else high = mid;
  }
  return low;
}

/** Rows with fromS <= time <= toS, each made by `read(data, offset of the row)`. */
export function readRecent<T>(
  r: Recent,
  fromS: number,
  toS: number,
  read: (data: readonly number[], at: number) => T,
): T[] {
  const out: T[] = [];
  const { data, width } = r;
  for (let at = firstAt(r, fromS) * width; at < data.length && (data[at] ?? 0) <= toS; at += width)
    out.push(read(data, at));
  return out;
}
