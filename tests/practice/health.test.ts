import { describe, expect, it } from 'vitest';
import { measureLink, newHealth, noteSamples, sensorView } from '../../src/practice/health.ts';
import { sample } from './scripted.ts';

const times = (n: number, periodS: number): number[] =>
  Array.from({ length: n }, (_, i) => i * periodS);

describe('the health of a sensor', () => {
  it('reads the rate from session times', () => {
    expect(measureLink(times(200, 1 / 104), 104).rateHz).toBeCloseTo(104, 6);
  });

  it('counts rows that never came', () => {
    const kept = times(400, 0.01).filter((_t, i) => i % 10 !== 5);
    expect(measureLink(kept, 100).lostPct).toBeCloseTo(10, 1);
  });

  it('knows nothing with under half a second of samples', () => {
    expect(measureLink(times(20, 0.01), 100)).toEqual({ rateHz: null, lostPct: null });
    expect(measureLink([], null)).toEqual({ rateHz: null, lostPct: null });
  });

  it('forgets what is older than its window', () => {
    const health = newHealth('chest');
    for (let i = 0; i < 10_000; i++) noteSamples(health, [sample('chest', i / 100)], i * 10);
    expect(health.times.length).toBeLessThanOrEqual(502);
    expect(sensorView(health, 100_000 + 240).ageMs).toBe(250);
  });
});
