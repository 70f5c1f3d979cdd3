// opensim-org/opensim-core#2781: calibration depended on the way the person faced.
import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { createCalibrating, remember, stepCalibrating } from '../../src/analysis/calibrating.ts';
import { jointAngles } from '../../src/body/angles.ts';
import { bodyFrame } from '../../src/body/pose.ts';
import type { SensorPair } from '../../src/body/pairing.ts';
import type { JointAngles } from '../../src/body/segments.ts';
import { aboutY, multiply } from '../../src/math/quat.ts';
import type { Orientation } from '../../src/orientation/orientation.ts';
import { createTrack, stepTrack } from '../../src/orientation/track.ts';
import { simulateSession } from '../../src/sensors/sources/synthetic/index.ts';

const session = simulateSession({ seed: 71, script: 'r' });
const worn = ['chest', 'trailArm'] as const;
const tracks = Object.fromEntries(
  worn.map((sensor) => {
    const list: Orientation[] = [];
    const track = createTrack();
    for (const s of session.samples[sensor]) stepTrack(track, s, (o) => list.push(o));
    return [sensor, list];
  }),
) as Record<(typeof worn)[number], Orientation[]>;

/** Joint angles of the whole session in a room turned by `heading` (rad) about the vertical. */
function anglesIn(heading: number): JointAngles[] {
  const turned = (o: Orientation): Orientation => ({ ...o, q: multiply(aboutY(heading), o.q) });
  const state = createCalibrating();
  for (const sensor of worn)
    for (const o of tracks[sensor]) if (o.timeS < 40) remember(state, sensor, turned(o));
  for (const event of session.events) stepCalibrating(state, event);
  const { mountings, headings } = state;
  if (mountings === null || headings === null) throw new Error('calibration refused');
  return tracks.chest.flatMap((c, i) => {
    const arm = tracks.trailArm[i];
    if (i % 50 !== 0 || !arm) return [];
    const pair: SensorPair = {
      timeS: c.timeS,
      chest: turned(c),
      arm: turned(arm),
      gap: false,
      saturated: false,
    };
    const frame = bodyFrame(pair, mountings, headings);
    return [jointAngles(frame.thorax, frame.humerus, 0)];
  });
}

describe('whichever way the person faces', () => {
  const north = anglesIn(0);
  it('the joint angles are the same to 1e-9 degrees', () => {
    expect(north.length).toBeGreaterThan(50);
    fc.assert(
      fc.property(fc.double({ min: -Math.PI, max: Math.PI, noNaN: true }), (heading) => {
        anglesIn(heading).forEach((a, i) => {
          for (const [key, value] of Object.entries(a)) {
            const before = north[i]?.[key as keyof JointAngles];
            if (typeof value === 'number' && typeof before === 'number')
              expect(Math.abs(value - before), key).toBeLessThan(1e-9);
            else expect(value).toBe(before);
          }
        });
      }),
      { numRuns: 12 },
    );
  });
});
