const SCALE = [1, 10, 100, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9] as const;
const MINUS = 45;
const POINT = 46;
const ZERO = 48;
/** Whole and fraction are written as 32-bit integers; larger numbers take the slow way. */
const LARGEST = 2 ** 31 - 1;
const MISSING = Buffer.from('n/a');

/** Longest that `writeFixed` writes: `Number.MAX_VALUE` with nine decimals. */
export const LONGEST_NUMBER = 330;

/**
 * Writes `value` rounded to `decimals` (0..9) into `out` from `at`; `n/a` where it is not finite.
 * @returns the place behind the last byte written.
 */
export function writeFixed(out: Buffer, at: number, value: number, decimals: number): number {
  const scale = SCALE[decimals] as number;
  const size = Math.abs(value);
  let whole = Math.floor(size);
  if (!(whole < LARGEST)) return writeSlowly(out, at, value, decimals);
  let fraction = Math.round((size - whole) * scale);
  if (fraction === scale) {
    fraction = 0;
    whole++;
  }
  if (value < 0 && (whole > 0 || fraction > 0)) out[at++] = MINUS;
  at = writeInteger(out, at, whole, 1);
  if (decimals === 0) return at;
  out[at++] = POINT;
  return writeInteger(out, at, fraction, decimals);
}

/** Writes a non-negative 32-bit integer with at least `width` digits. */
function writeInteger(out: Buffer, at: number, value: number, width: number): number {
  let digits = width;
  while (digits < 10 && value >= (SCALE[digits] ?? Infinity)) digits++;
  if (value >= 1e9 && digits < 10) digits = 10;
  let rest = value;
  for (let place = at + digits - 1; place >= at; place--) {
    const tenth = (rest / 10) | 0;
    out[place] = ZERO + (rest - tenth * 10);
    rest = tenth;
  }
  return at + digits;
}

function writeSlowly(out: Buffer, at: number, value: number, decimals: number): number {
  if (!Number.isFinite(value)) return at + MISSING.copy(out, at);
  // toFixed turns to an exponent from 1e21 on, which the format allows
  return at + out.write(value.toFixed(decimals), at, 'latin1');
}
