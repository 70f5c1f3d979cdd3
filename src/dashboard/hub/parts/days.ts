const two = (n: number): string => String(n).padStart(2, '0');

/** A day where the reader is, as a date input has it. */
export function dayInput(ms: number): string {
  const at = new Date(ms);
  return `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`;
}

/** Midnight before the day of a date input, epoch ms; `null` where it is none. */
export function dayStart(text: string): number | null {
  const [, year, month, date] = /^(\d{4})-(\d\d)-(\d\d)$/.exec(text) ?? [];
  if (year === undefined) return null;
  const at = new Date(Number(year), Number(month) - 1, Number(date));
  return at.getDate() === Number(date) ? at.getTime() : null;
}

/** Midnight after that day. */
export function dayEnd(text: string): number | null {
  const start = dayStart(text);
  if (start === null) return null;
  const at = new Date(start);
  return new Date(at.getFullYear(), at.getMonth(), at.getDate() + 1).getTime();
}
