import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Cursor, numberIn, readCell } from '../../src/sessions/read/number.ts';
import { writeFixed } from '../../src/sessions/write/digits.ts';

function read(text: string): { value: number; fault: boolean; end: number } {
  const cursor: Cursor = { bytes: Buffer.from(`x${text}\n`), at: 1, fault: -1 };
  const value = readCell(cursor);
  return { value, fault: cursor.fault >= 0, end: cursor.at - 1 };
}

const digits = fc.stringMatching(/^\d{0,20}$/);
const decimal = fc
  .tuple(fc.constantFrom('', '-', '+'), digits, fc.constantFrom('', '.'), digits)
  .map(([sign, a, point, b]) => sign + a + point + b)
  .filter((text) => /\d/.test(text));
const withExponent = fc
  .tuple(decimal, fc.constantFrom('e', 'E'), fc.integer({ min: -320, max: 320 }))
  .map(([d, e, k]) => `${d}${e}${k}`);

describe('A cell of a recording', () => {
  it('reads a decimal number as Number() does, to the last bit', () => {
    fc.assert(
      fc.property(fc.oneof(decimal, withExponent), (text) => {
        const { value, fault, end } = read(text);
        expect(Object.is(value, Number(text))).toBe(true);
        expect(fault).toBe(false);
        expect(end).toBe(text.length);
        expect(Object.is(numberIn(text), Number(text))).toBe(true);
      }),
      { numRuns: 5000 },
    );
  });

  it('reads every double in its shortest form, and every fixed form', () => {
    const finite = fc.double({ noNaN: true, noDefaultInfinity: true });
    fc.assert(
      fc.property(finite, fc.integer({ min: 0, max: 12 }), (x, places) => {
        expect(Object.is(read(String(x)).value, Number(String(x)))).toBe(true);
        const fixed = (x % 1e6).toFixed(places);
        expect(Object.is(read(fixed).value, Number(fixed))).toBe(true);
      }),
      { numRuns: 3000 },
    );
  });

  it.each(['n/a', 'N/A', 'nan', 'NaN', ''])('takes %j as missing', (text) => {
    expect(read(text)).toEqual({ value: NaN, fault: false, end: text.length });
  });

  it.each(['x', '1,5', '0x10', '1.2.3', '--1', '.', '-', '1e', 'Infinity', '1 2', '12a', '1_000'])(
    'does not take %j as a number',
    (text) => {
      expect(read(text)).toEqual({ value: NaN, fault: true, end: text.length });
      expect(numberIn(text)).toBeNull();
    },
  );
});

describe('A number written with fixed decimals', () => {
  const out = Buffer.alloc(400);
  const written = (x: number, places: number) => {
    const end = writeFixed(out, 3, x, places);
    return out.toString('latin1', 3, end);
  };

  it('comes back within half a unit of the last place', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e6, max: 1e6, noNaN: true }),
        fc.integer({ min: 0, max: 9 }),
        (x, places) => {
          const text = written(x, places);
          expect(text).toMatch(places === 0 ? /^-?\d+$/ : new RegExp(`^-?\\d+\\.\\d{${places}}$`));
          expect(text).not.toMatch(/^-0\.?0*$/);
          expect(Math.abs(Number(text) - x)).toBeLessThanOrEqual(0.5001 * 10 ** -places + 1e-9);
        },
      ),
      { numRuns: 3000 },
    );
  });

  it('is written as toFixed writes it where no tie is near', () => {
    fc.assert(
      fc.property(fc.integer({ min: -2e9, max: 2e9 }), (n) => {
        const x = n / 1e6;
        expect(written(x, 6)).toBe(x === 0 ? '0.000000' : x.toFixed(6));
      }),
      { numRuns: 2000 },
    );
  });

  it.each([
    [NaN, 'n/a'],
    [Infinity, 'n/a'],
    [0.9999999, '1.000000'],
    [-0.0000001, '0.000000'],
    [2147483648.5, '2147483648.500000'],
    [1.5e300, `${(1.5e300).toFixed(6)}`],
  ])('writes %d as %s', (x, text) => {
    expect(written(x, 6)).toBe(text);
  });
});
