import { describe, expect, it } from 'vitest';
import { clamp, degrees, radians } from '../../src/math/angle.ts';
import { aboutZ, quatAngle, relative } from '../../src/math/quat.ts';
import { vec3 } from '../../src/math/vec3.ts';
import type { Orientation } from '../../src/orientation/orientation.ts';
import { createTrack, stepTrack, trackQuality } from '../../src/orientation/track.ts';
import { readingAt } from './imu.ts';

describe('the track of one sensor', () => {
  it('reads a quarter turn about a horizontal axis as 90 degrees', () => {
    const state = createTrack();
    const out: Orientation[] = [];
    for (let i = 0; i <= 500; i++) {
      const t = i / 100;
      const u = Math.PI * clamp(t - 2, 0, 1);
      const angle = (radians(90) * (1 - Math.cos(u))) / 2;
      const rate = (radians(90) * Math.PI * Math.sin(u)) / 2;
      stepTrack(state, readingAt(t, aboutZ(angle), vec3(0, 0, rate)), (o) => out.push(o));
    }
    const [first, last] = [out[0], out.at(-1)];
    expect(out).toHaveLength(501);
    if (!first || !last) throw new Error('nothing came');
    expect(degrees(quatAngle(first.q, last.q))).toBeCloseTo(90, 1);
    expect(relative(first.q, last.q).z).toBeGreaterThan(0.7);
    expect(trackQuality(state)).toMatchObject({ samples: 501, lost: 0, gaps: [] });
  });
});
