import { describe, expect, it } from 'vitest';
import { clockResidualMs, createClockSpread, observeClock } from '../../src/analysis/quality.ts';
import type { ImuSample } from '../../src/sensors/sample.ts';

const zero = { x: 0, y: 0, z: 0 };
const sample = (timeS: number, deviceTimeS: number | null): ImuSample => ({
  sensor: 'chest',
  timeS,
  deviceTimeS,
  arrivalTimeS: timeS,
  acc: zero,
  gyro: zero,
  saturated: false,
});

/** A minute at 100 Hz whose session time swings by 2 ms about the device's. */
const minute = (fromS: number, deviceFromS: number): ImuSample[] =>
  Array.from({ length: 6000 }, (_, i) =>
    sample(fromS + i / 100 + 0.002 * Math.sin(i / 50), deviceFromS + i / 100),
  );

describe('the spread of session time about the device clock', () => {
  const spreadOf = (samples: readonly ImuSample[]): number | null => {
    const spread = createClockSpread();
    for (const s of samples) observeClock(spread, s);
    return clockResidualMs(spread);
  };

  it('is the 95th percentile of the distance from a straight line', () => {
    // 95 % of a sine's values lie below sin(0.95 x 90 deg) = 0.9969 of its height
    expect(spreadOf(minute(0, 40))).toBeCloseTo(2 * Math.sin(0.95 * (Math.PI / 2)), 1);
  });

  it('stays small where the device began anew in mid-session', () => {
    expect(spreadOf([...minute(0, 900), ...minute(65, 0.2)])).toBeLessThan(3);
  });

  it('is of the worst run', () => {
    const straight = Array.from({ length: 6000 }, (_, i) => sample(65 + i / 100, i / 100));
    expect(spreadOf([...minute(0, 900), ...straight])).toBeGreaterThan(1.5);
  });

  it('is not known without a device clock', () => {
    expect(spreadOf([sample(0, null), sample(1, null)])).toBeNull();
  });
});
