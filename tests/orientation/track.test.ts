import { describe, expect, it } from 'vitest';
import { clamp, degrees, radians } from '../../src/math/angle.ts';
import { IDENTITY, type Quat, aboutZ, quatAngle, relative } from '../../src/math/quat.ts';
import { ZERO, vec3 } from '../../src/math/vec3.ts';
import type { Orientation } from '../../src/orientation/orientation.ts';
import {
  type TrackState,
  createTrack,
  stepTrack,
  trackQuality,
} from '../../src/orientation/track.ts';
import type { ImuSample } from '../../src/sensors/sample.ts';
import { UP, inclinationBetween, readingAt, sample } from './imu.ts';
import { simulate } from './motion.ts';

function run(
  samples: readonly ImuSample[],
  state = createTrack(),
): { out: Orientation[]; state: TrackState } {
  const out: Orientation[] = [];
  for (const s of samples) stepTrack(state, s, (o) => out.push(o));
  return { out, state };
}

const stillAt = (times: readonly number[]): ImuSample[] => times.map((t) => sample(t, UP));
const steps = (n: number, dtS: number, fromS = 0): number[] =>
  Array.from({ length: n }, (_, i) => fromS + i * dtS);

/** Largest error against the truth of the same sample, deg. */
function worst(
  out: readonly Orientation[],
  samples: readonly ImuSample[],
  truth: readonly Quat[],
): number {
  const at = new Map(samples.map((s, i) => [s.timeS.toFixed(4), truth[i]]));
  const errors = out.map((o) => {
    const q = at.get(o.timeS.toFixed(4));
    if (!q) throw new Error(`no truth at ${o.timeS}`);
    return degrees(quatAngle(o.q, q));
  });
  return Math.max(...errors);
}

describe('the track of one sensor', () => {
  it('reads a quarter turn about a horizontal axis as 90 degrees', () => {
    const samples = steps(501, 0.01).map((t) => {
      const u = Math.PI * clamp(t - 2, 0, 1);
      const angle = (radians(90) * (1 - Math.cos(u))) / 2;
      return readingAt(t, aboutZ(angle), vec3(0, 0, (radians(90) * Math.PI * Math.sin(u)) / 2));
    });
    const { out, state } = run(samples);
    const [first, last] = [out[0]?.q ?? IDENTITY, out.at(-1)?.q ?? IDENTITY];
    expect(degrees(quatAngle(first, last))).toBeCloseTo(90, 1);
    expect(relative(first, last).z).toBeGreaterThan(0.7);
    expect(trackQuality(state)).toMatchObject({ samples: 501, lost: 0, gaps: [] });
  });

  it.each([50, 100, 104, 200])(
    'is right in the middle of a fast movement at %d Hz: readings are of an instant',
    (rateHz) => {
      const { samples, truth } = simulate({ rateHz, rateDegPerS: 300, accPeak: 0.5, movingS: 5 });
      expect(worst(run(samples).out, samples, truth)).toBeLessThan(0.8);
    },
  );

  it('gives the rate less its bias, the force as measured, and says when it is still', () => {
    const bias = vec3(radians(1), radians(-1), radians(0.5));
    const { out } = run(steps(500, 0.01).map((t) => sample(t, UP, bias)));
    const last = out.at(-1);
    expect(last?.rest).toBe(true);
    expect(out[0]?.rest).toBe(false);
    expect(degrees(last?.gyro.x ?? NaN)).toBeCloseTo(0, 1);
    expect(last?.acc).toEqual(UP);
  });
});

describe('lost samples', () => {
  it.each([1, 2, 3, 4])('%d in a row are interpolated, at their own times, and marked', (n) => {
    const { samples, truth } = simulate({ movingS: 6, accPeak: 0.5 });
    const { out, state } = run([...samples.slice(0, 700), ...samples.slice(700 + n)]);
    expect(out).toHaveLength(samples.length);
    expect(out.map((o) => o.timeS.toFixed(4))).toEqual(samples.map((s) => s.timeS.toFixed(4)));
    expect(out.flatMap((o, i) => (o.interpolated ? [i] : []))).toEqual(steps(n, 1, 700));
    expect(out.some((o) => o.afterGap)).toBe(false);
    expect(worst(out, samples, truth)).toBeLessThan(1);
    expect(trackQuality(state)).toMatchObject({ lost: n, gaps: [] });
  });

  it('five in a row are a gap: nothing invented, the next one marked, the heading carried across', () => {
    const { samples, truth } = simulate({ movingS: 6, accPeak: 0.5 });
    const { out, state } = run([...samples.slice(0, 700), ...samples.slice(705)]);
    expect(out).toHaveLength(samples.length - 5);
    expect(out.flatMap((o, i) => (o.afterGap ? [i] : []))).toEqual([700]);
    expect(worst(out, samples, truth)).toBeLessThan(2);
    expect(trackQuality(state).gaps).toEqual([{ fromS: 6.99, toS: 7.05 }]);
    expect(trackQuality(state).lost).toBe(5);
  });

  it('after a long gap the attitude stays and the first still seconds level it', () => {
    const tilted = aboutZ(radians(30));
    const before = stillAt(steps(500, 0.01));
    const after = steps(500, 0.01, 12).map((t) => readingAt(t, tilted, ZERO));
    const { out } = run([...before, ...after]);
    const first = out.find((o) => o.afterGap);
    expect(first?.timeS).toBe(12);
    expect(inclinationBetween(out.at(-1)?.q ?? IDENTITY, tilted)).toBeLessThan(0.5);
  });

  it('are counted in per cent of what should have come', () => {
    const times = steps(1000, 0.01).filter((_, i) => i % 50 !== 25);
    expect(trackQuality(run(stillAt(times)).state)).toMatchObject({ lost: 20, lostPct: 2 });
  });
});

describe('the rate', () => {
  it.each([10, 50, 100, 104, 208, 400])('of %d Hz is measured, not assumed', (hz) => {
    const { state } = run(stillAt(steps(5 * hz, 1 / hz)));
    expect(trackQuality(state).rateHz).toBeCloseTo(hz, 6);
    expect(trackQuality(state).lost).toBe(0);
  });

  it('may change on the way without a loss being seen: 100, then 104, then 200', () => {
    const times = [...steps(300, 0.01), ...steps(312, 1 / 104, 3), ...steps(300, 1 / 200, 6)];
    expect(trackQuality(run(stillAt(times)).state)).toMatchObject({ lost: 0, gaps: [] });
  });

  it('may halve: after a few samples taken for losses the new one is known', () => {
    const { state } = run(stillAt([...steps(300, 0.01), ...steps(300, 0.02, 3)]));
    expect(trackQuality(state).lost).toBeLessThan(10);
    expect(state.period.periodS).toBeCloseTo(0.02, 6);
  });

  it('is known soon where the very first samples are lost or stamped wrongly', () => {
    for (const odd of [0.001, 0.03, 0.2]) {
      const { state } = run(stillAt([-odd, ...steps(300, 0.01)]));
      expect(state.period.periodS).toBeCloseTo(0.01, 6);
      expect(trackQuality(state).lost).toBeLessThan(15);
    }
  });

  it('survives stamps in whole milliseconds at 104 Hz', () => {
    const times = steps(1040, 1 / 104).map((t) => Math.round(1000 * t) / 1000);
    expect(trackQuality(run(stillAt(times)).state)).toMatchObject({ lost: 0, gaps: [] });
    expect(trackQuality(run(stillAt(times)).state).rateHz).toBeCloseTo(104, 1);
  });

  it('is unknown before the second sample', () => {
    expect(trackQuality(createTrack())).toMatchObject({ rateHz: null, lostPct: 0, samples: 0 });
    expect(trackQuality(run(stillAt([3])).state).rateHz).toBeNull();
  });
});

describe('time stamps that cannot be', () => {
  const good = stillAt(steps(100, 0.01));

  it('duplicate, backward and not finite ones are dropped and counted', () => {
    const odd = [
      ...good.slice(0, 50),
      sample(0.49, UP),
      sample(0.2, UP),
      sample(NaN, UP),
      sample(Infinity, UP),
    ];
    const { out, state } = run([...odd, ...good.slice(50)]);
    expect(out.map((o) => o.timeS)).toEqual(good.map((s) => s.timeS));
    expect(state.dropped).toEqual({ duplicate: 1, backward: 1, notFinite: 2 });
  });

  it('one wild stamp far ahead is dropped, not followed', () => {
    const { out, state } = run([...good.slice(0, 50), sample(1e6, UP), ...good.slice(50)]);
    expect(out.map((o) => o.timeS)).toEqual(good.map((s) => s.timeS));
    expect(state.dropped.backward).toBe(1);
    expect(trackQuality(state).gaps).toEqual([]);
  });

  it('a reading that is none is interpolated like a lost one', () => {
    const bad = good.map((s, i) => (i === 50 ? { ...s, acc: vec3(NaN, 0, 0) } : s));
    const { out, state } = run(bad);
    expect(out).toHaveLength(100);
    expect(out[50]?.interpolated).toBe(true);
    expect(state.dropped.notFinite).toBe(1);
    expect(trackQuality(state).lost).toBe(1);
  });
});

describe('saturation', () => {
  it('is counted, marked, and carried into what is interpolated beside it', () => {
    const samples = stillAt(steps(100, 0.01)).map((s, i) => ({ ...s, saturated: i === 50 }));
    const { out, state } = run(samples.filter((_, i) => i !== 51));
    expect(out.flatMap((o, i) => (o.saturated ? [i] : []))).toEqual([50, 51]);
    expect(trackQuality(state).saturated).toBe(1);
  });
});

describe('a track cut anywhere and resumed from JSON', () => {
  it('is the unbroken one, to the bit, through losses, gaps and odd stamps', () => {
    const { samples } = simulate({
      movingS: 5,
      noise: { gyroDegPerS: 0.1, acc: 0.05 },
      biasDegPerS: vec3(1, 0, -1),
    });
    const rough = samples.flatMap((s, i) =>
      i % 90 < 3 || (i > 800 && i < 850) ? [] : i % 71 === 0 ? [s, s] : [s],
    );
    const whole = run(rough);
    let state = createTrack();
    const out: Orientation[] = [];
    rough.forEach((s, i) => {
      if (i % 13 === 0) state = JSON.parse(JSON.stringify(state)) as TrackState;
      stepTrack(state, s, (o) => out.push(o));
    });
    expect(JSON.stringify(out)).toBe(JSON.stringify(whole.out));
    expect(JSON.stringify(state)).toBe(JSON.stringify(whole.state));
  });
});
