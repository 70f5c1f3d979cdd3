import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isWithin } from '../../src/coaching/judge.ts';
import { MEASURE_INFO, MEASURE_KEYS } from '../../src/coaching/measureInfo.ts';
import { measureLabel, measureText, targetText } from '../../src/coaching/measureText.ts';
import { TARGET_MEASURES } from '../../src/coaching/plan.ts';
import { GOOD_MEASURES } from './repetitions.ts';

describe('the table of measures', () => {
  it('has every measure of a repetition and the hold', () => {
    expect([...MEASURE_KEYS].sort()).toEqual([...Object.keys(GOOD_MEASURES), 'holdS'].sort());
  });

  it.each(MEASURE_KEYS.map((k) => [k]))(
    'says of %s what it is, how it is measured, how sure and what it cannot see',
    (key) => {
      const info = MEASURE_INFO[key];
      for (const text of [info.what, info.how, info.cannotSee])
        expect(text).toMatch(/^[A-Z].{9,}\.$/);
      expect(info.accuracy.source).not.toBe('');
      expect(info.accuracy.plusMinus).toBeGreaterThan(0);
      // Plain words come first; terms only in the brackets. Sides are lead and trail, never left and right.
      expect(info.name).not.toMatch(/flexion|rotation|humer|thora|lateral|elevation|left|right/i);
    },
  );

  it('puts plain words first and the term second', () => {
    expect(measureLabel('keptRotationDeg')).toBe('arm kept rotated outward (external rotation)');
    expect(measureLabel('holdS')).toBe('hold at the top');
  });

  // Brouwer et al. 2021; Ludewig et al. 2002 and Warner and Heller 2025.
  it('states the published accuracy on people', () => {
    expect(MEASURE_INFO.addedFlexionDeg.accuracy).toMatchObject({
      plusMinus: 4,
      source: expect.stringMatching(/Brouwer/),
    });
    expect(MEASURE_INFO.keptRotationDeg.accuracy.text).toMatch(/10 to 15° .*25 to 50 % too little/);
  });

  it('has units that the names of the measures carry', () => {
    const ending = { '°': /Deg$/, s: /[a-z]S$/, ms: /Ms$/, cm: /Cm$/ };
    for (const key of MEASURE_KEYS) expect(key).toMatch(ending[MEASURE_INFO[key].unit]);
  });

  // Release 25 ms and catch 15 ms apart: at the speed after 0.3 s of fall, 9.80665 m/s^2 (CGPM 1901).
  it('derives the accuracy of the fall from that of the times', () => {
    const apart = Math.hypot(0.025, 0.015);
    expect(MEASURE_INFO.releaseToCatchMs.accuracy.plusMinus).toBeCloseTo(apart * 1000, -1);
    expect(MEASURE_INFO.fallCm.accuracy.plusMinus).toBeCloseTo(9.80665 * 0.3 * apart * 100, 0);
    expect(MEASURE_INFO.chestLeadMs.accuracy.plusMinus).toBeCloseTo(Math.hypot(25, 25), 0);
  });
});

describe('showing a value', () => {
  it.each([
    ['addedFlexionDeg', 10.6, '+11°'],
    ['keptRotationDeg', -14.6, '-15°'],
    ['leanChangeDeg', -0.2, '0°'],
    ['flexionTopDeg', 7.2, '+7°'],
    ['holdS', 1.26, '1.3 s'],
    ['chestLeadMs', 83, '+80 ms'],
    ['chestLeadMs', -64, '-60 ms'],
    ['releaseToCatchMs', 303, '300 ms'],
    ['fallCm', 44.1, '44 cm'],
    ['holdS', null, 'not measured'],
    ['holdS', NaN, 'not measured'],
  ] as const)('%s of %s reads %s', (key, value, text) => {
    expect(measureText(key, value)).toBe(text);
  });

  // Under 20 ms the design says "together".
  it.each([
    [19, 'together'],
    [-19.9, 'together'],
    [20, '+20 ms'],
  ])('a chest lead of %d ms reads %s', (value, text) => {
    expect(measureText('chestLeadMs', value)).toBe(text);
  });

  it('adds decimals where rounding would carry it over the end of the target', () => {
    expect(measureText('holdS', 0.97, { min: 1 })).toBe('0.97 s');
    expect(measureText('holdS', 0.97)).toBe('1.0 s');
    expect(measureText('releaseToCatchMs', 453, { max: 450 })).toBe('453 ms');
    expect(measureText('addedFlexionDeg', 1.6, { min: 2 })).toBe('+1.6°');
  });

  it('never shows a number on the other side of the target than the value', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...TARGET_MEASURES),
        fc.integer({ min: -4000, max: 4000 }),
        fc.integer({ min: -40, max: 40 }),
        (key, k, end) => {
          const text = measureText(key, k / 100, { min: end });
          if (text === 'together') return;
          expect(isWithin(parseFloat(text), { min: end })).toBe(isWithin(k / 100, { min: end }));
        },
      ),
    );
  });

  it('names a target', () => {
    expect(targetText('holdS', { min: 1 })).toBe('at least 1 s');
    expect(targetText('releaseToCatchMs', { max: 450 })).toBe('at most 450 ms');
    expect(targetText('leanChangeDeg', { min: -3, max: 3 })).toBe('from -3 to 3°');
  });
});
