import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { comparisonTexts, pairTexts } from '../../src/coaching/differenceText.ts';
import { isWithin } from '../../src/coaching/judge.ts';
import { MEASURE_INFO, MEASURE_KEYS, type MeasureKey } from '../../src/coaching/measureInfo.ts';
import { measureText, percentText, targetText } from '../../src/coaching/measureText.ts';
import type { Target } from '../../src/coaching/plan.ts';
import { shownNumber } from '../../src/coaching/shown.ts';
import { de } from '../../src/dashboard/strings/de.ts';
import { en } from '../../src/dashboard/strings/en.ts';

/** Half the width of what is drawn, in the measure's unit. */
const REACH: Readonly<Record<string, number>> = { '°': 90, s: 3, ms: 600, cm: 80 };
const PER_UNIT = 1e6;

/** Uniform over a band about zero, to a millionth of the widest. */
const uniform = (reach: number) =>
  fc.integer({ min: -PER_UNIT, max: PER_UNIT }).map((k) => (k / PER_UNIT) * reach);

/** A value and a target of one measure; half of the values lie within two steps of one of its ends. */
const judged = fc.constantFrom(...MEASURE_KEYS).chain((key) => {
  const reach = REACH[MEASURE_INFO[key].unit]!;
  const decimals = fc.constantFrom(0, 1, 2, 4);
  const end = fc.tuple(uniform(reach), decimals).map(([v, d]) => Number(v.toFixed(d)) + 0);
  const target = fc
    .tuple(end, end, fc.constantFrom('min', 'max', 'both'))
    .map(([a, b, ends]): Target =>
      ends === 'both'
        ? { min: Math.min(a, b), max: Math.max(a, b) }
        : ends === 'min'
          ? { min: a }
          : { max: a },
    );
  return target.chain((t) => {
    const near = fc
      .tuple(
        fc.constantFrom(...[t.min, t.max].filter((e) => e !== undefined)),
        fc.integer({ min: 0, max: 9 }),
        uniform(20),
      )
      .map(([e, zeros, by]) => e + by / 10 ** zeros);
    return fc.record({
      key: fc.constant(key),
      target: fc.constant(t),
      value: fc.oneof(uniform(reach), near),
    });
  });
});

/** Reads a number as a person does who knows how the language writes it. */
const readBack = (text: string): number =>
  Number(/[+-]?\d+(?:\.\d+)?/.exec(text.replaceAll('−', '-').replace(/(\d),(\d)/, '$1.$2'))![0]);
const numbersIn = (text: string): number[] =>
  [
    ...text
      .replaceAll('−', '-')
      .replace(/(\d),(\d)/g, '$1.$2')
      .matchAll(/[+-]?\d+(?:\.\d+)?/g),
  ].map(([n]) => Number(n));

const COMMAND_LINE = {
  value: measureText,
  target: targetText,
};
const WRITERS = [
  ['the command line', COMMAND_LINE],
  ['English', en.measures],
  ['German', de.measures],
] as const;

describe('a value beside its target', () => {
  it.each(WRITERS)('never contradicts its verdict, in %s', (_, { value: write, target: name }) => {
    let together = 0;
    fc.assert(
      fc.property(judged, ({ key, target, value }) => {
        const text = write(key, value, target);
        const ends = numbersIn(name(key, target));
        const read: Target =
          target.min !== undefined && target.max !== undefined
            ? { min: ends[0]!, max: ends[1]! }
            : target.min !== undefined
              ? { min: ends[0]! }
              : { max: ends[0]! };
        expect(read).toEqual(target);
        const passed = isWithin(value, target);
        if (/\d/.test(text)) {
          expect(isWithin(readBack(text), read)).toBe(passed);
          return;
        }
        together += 1;
        for (const lead of [-19.9, 0, 19.9]) expect(isWithin(lead, read)).toBe(passed);
      }),
      { numRuns: 2000 },
    );
    expect(together).toBeGreaterThan(0);
  });

  it('is as exact as its accuracy allows wherever that is enough', () => {
    fc.assert(
      fc.property(judged, ({ key, target, value }) => {
        const { decimals } = MEASURE_INFO[key];
        const plain = shownNumber(value, decimals);
        if (isWithin(Number(plain), target) !== isWithin(value, target)) return;
        const side = (v: number) => [v < (target.min ?? -Infinity), v > (target.max ?? Infinity)];
        if (String(side(Number(plain))) !== String(side(value))) return;
        expect(shownNumber(value, decimals, [target])).toBe(plain);
      }),
    );
  });

  it.each([
    ['keptRotationDeg', -15.2, { min: -15 }, '-15.2°'],
    ['keptRotationDeg', -15.000001, { min: -15 }, '-15.01°'],
    ['keptRotationDeg', -15, { min: -15 }, '-15°'],
    ['holdS', 0.999999, { min: 1 }, '0.999 s'],
    ['releaseToCatchMs', 450.004, { max: 450 }, '450.1 ms'],
    ['releaseToCatchMs', 449, { max: 445 }, '450 ms'],
    ['chestLeadMs', 12, { min: 20 }, 'together'],
    ['chestLeadMs', 12, { min: 10 }, '+10 ms'],
    ['chestLeadMs', 9, { min: 10 }, '+9 ms'],
  ] as const)('%s of %f, target %j, reads %s', (key, value, target, text) => {
    expect(measureText(key, value, target)).toBe(text);
  });

  it('keeps the order of a low quartile, a median and a high one', () => {
    fc.assert(
      fc.property(judged, fc.integer({ min: 0, max: 3000 }), ({ key, target, value }, k) => {
        const { decimals } = MEASURE_INFO[key];
        const [a, b] = [value, value + k / 1000].map((v) =>
          Number(shownNumber(v, decimals, [target])),
        );
        expect(a).toBeLessThanOrEqual(b!);
      }),
      { numRuns: 1500 },
    );
  });
});

const twoValues = fc.constantFrom(...MEASURE_KEYS).chain((key: MeasureKey) => {
  const reach = REACH[MEASURE_INFO[key].unit]!;
  return fc.record({ key: fc.constant(key), a: uniform(reach), b: uniform(reach) });
});

describe('a difference', () => {
  it.each([
    ['English', en.measures],
    ['German', de.measures],
  ] as const)('is that of the numbers as shown, in %s', (_, { pair }) => {
    fc.assert(
      fc.property(twoValues, ({ key, a, b }) => {
        const { here, beside, difference, plusMinus, clear } = pair(key, a, b);
        const shown = readBack(difference!);
        expect(readBack(here) - readBack(beside)).toBeCloseTo(shown, 9);
        expect(clear).toBe(Math.abs(shown) > readBack(plusMinus));
      }),
      { numRuns: 1500 },
    );
  });

  it('of two periods is that of the numbers as shown, inside its interval, and says as much of zero', () => {
    fc.assert(
      fc.property(
        twoValues,
        fc.integer({ min: 1, max: 4000 }),
        fc.integer({ min: 1, max: 4000 }),
        fc.constantFrom('°', 'small'),
        ({ key, a, b }, down, up, size) => {
          const later = size === 'small' ? a + b / 1000 : b;
          const spread = (v: number) => ({ low: v - 0.3, median: v, high: v + 0.4 });
          const scale = REACH[MEASURE_INFO[key].unit]! / 90_000;
          const exact = later - a;
          const interval = { low: exact - down * scale, high: exact + up * scale };
          const texts = comparisonTexts(key, spread(a), spread(later), interval);
          const shown = readBack(texts.difference!);
          const [low, high] = [texts.interval!.low, texts.interval!.high].map(readBack) as [
            number,
            number,
          ];
          expect(readBack(texts.later!.median) - readBack(texts.earlier!.median)).toBeCloseTo(
            shown,
            9,
          );
          expect(low).toBeLessThanOrEqual(shown);
          expect(high).toBeGreaterThanOrEqual(shown);
          expect(low > 0).toBe(interval.low > 0);
          expect(high < 0).toBe(interval.high < 0);
          const sure = MEASURE_INFO[key].accuracy.plusMinus;
          expect(Math.abs(shown) > sure).toBe(Math.abs(exact) > sure);
        },
      ),
      { numRuns: 2000 },
    );
  });

  it('has none where a value was not taken', () => {
    expect(pairTexts('holdS', 1, null)).toMatchObject({ beside: 'not measured', difference: null });
    expect(comparisonTexts('holdS', null, null, null)).toEqual({
      earlier: null,
      later: null,
      difference: null,
      interval: null,
    });
  });
});

describe('a ratio', () => {
  it('reads as percent, on its own side of what is said of it', () => {
    expect(percentText(0.496)).toBe('50 %');
    expect(percentText(0.496, [0.5])).toBe('49.6 %');
    expect(de.measures.percent(0.4996, [0.5])).toBe('49,96 %');
    expect(en.measures.percent(-0.2, [])).toBe('−20 %');
  });
});
