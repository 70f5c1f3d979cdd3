const TEXT = 400;
const ITEMS = 600;

/** The same value with texts cut at 400 characters and lists at their first 600 items: no message can outgrow its bound. */
export function bound<T>(value: T): T;
export function bound(value: unknown): unknown {
  if (typeof value === 'string') {
    return value.length <= TEXT ? value : `${value.slice(0, TEXT - 1)}…`;
  }
  if (Array.isArray(value)) return value.slice(0, ITEMS).map((item) => bound(item));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, bound(item)]));
}
