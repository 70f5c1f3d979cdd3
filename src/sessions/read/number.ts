/** Exact powers of ten: up to 10^22 a double holds them without rounding. */
const POWERS = Float64Array.from({ length: 23 }, (_, k) => Number(`1e${k}`));
const EXACT = 2 ** 53;
const LONGEST = 400;
/** Without two ways to read the same digits: a long row of them costs no more than its length. */
const DECIMAL = /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:e[+-]?\d+)?$/i;
const MISSING = /^(n\/a|nan|)$/i;
export const TAB = 9;
export const LF = 10;
export const CR = 13;
const MINUS = 45;
const POINT = 46;
const ZERO = 48;

/** A place in a table of bytes whose last byte is a line feed. */
export interface Cursor {
  bytes: Uint8Array;
  at: number;
  /** Where the first cell began that is neither a number nor missing; -1 while there is none. */
  fault: number;
}

/**
 * Reads the decimal number at the cursor and leaves the cursor on the tab or line end behind it.
 * Equal to `Number()` of the same text to the last bit: an integer up to 2^53 divided by an exact
 * power of ten is rounded once (Clinger 1990, doi 10.1145/93542.93557); what is longer or has an
 * exponent goes to `Number()` itself.
 * @returns NaN for `n/a`, `nan`, an empty cell, and for text (then `fault` is set too).
 */
export function readCell(cursor: Cursor): number {
  const bytes = cursor.bytes;
  const from = cursor.at;
  let at = from;
  let byte = bytes[at] as number;
  const negative = byte === MINUS;
  if (negative) byte = bytes[++at] as number;
  const digitsFrom = at;
  let mantissa = 0;
  let pointAt = -1;
  for (;;) {
    const digit = byte - ZERO;
    if (digit >= 0 && digit <= 9) mantissa = mantissa * 10 + digit;
    else if (byte === POINT && pointAt < 0) pointAt = at;
    else break;
    byte = bytes[++at] as number;
  }
  const decimals = pointAt < 0 ? 0 : at - pointAt - 1;
  const digits = at - digitsFrom - (pointAt < 0 ? 0 : 1);
  if (!isEnd(byte) || digits === 0 || mantissa > EXACT || decimals > 22) return readSlowly(cursor);
  cursor.at = at;
  const value = mantissa / (POWERS[decimals] as number);
  return negative ? -value : value;
}

const isEnd = (byte: number): boolean => byte === TAB || byte === LF || byte === CR;

function readSlowly(cursor: Cursor): number {
  const { bytes, at: from } = cursor;
  let at = from;
  while (at < bytes.length && !isEnd(bytes[at] as number)) at++;
  cursor.at = at;
  const text = textOf(bytes, from, Math.min(at, from + LONGEST + 1));
  if (text.length <= LONGEST && DECIMAL.test(text)) return Number(text);
  if (!MISSING.test(text) && cursor.fault < 0) cursor.fault = from;
  return NaN;
}

export const textOf = (bytes: Uint8Array, from: number, to: number): string =>
  Buffer.from(bytes.buffer, bytes.byteOffset + from, to - from).toString('latin1');

/** The number that a cell of a small table holds; NaN where it is missing, `null` where it is text. */
export function numberIn(text: string): number | null {
  if (DECIMAL.test(text)) return Number(text);
  return MISSING.test(text) ? NaN : null;
}
