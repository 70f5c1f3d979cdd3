import { describe, expect, it } from 'vitest';
import type { BodyFrame } from '../../src/body/segments.ts';
import { radians } from '../../src/math/angle.ts';
import {
  aboutX,
  aboutY,
  aboutZ,
  multiply,
  relative,
  toRotationVector,
} from '../../src/math/quat.ts';
import { scale } from '../../src/math/vec3.ts';
import { type SwingCandidate, createDetector, stepDetector } from '../../src/swings/detector.ts';
import { momentsOf } from '../../src/swings/moments.ts';
import { signalsOf } from '../../src/swings/signals.ts';
import { swingWindow } from '../../src/swings/window.ts';

/** Share of a minimum-jerk movement that is done (Flash & Hogan 1985, J Neurosci 5:1688). */
function done(timeS: number, fromS: number, takesS: number): number {
  const s = Math.min(1, Math.max(0, (timeS - fromS) / takesS));
  return s * s * s * (10 - 15 * s + 6 * s * s);
}

/** Address, a backswing of 95 deg in `takesS`, a hold of 1.2 s, and down again in 0.35 s; its times are known exactly. */
function rehearsal(takesS: number) {
  const startS = 1;
  const topS = startS + takesS;
  const releaseS = topS + 1.2;
  const pose = (t: number) => {
    const up = done(t, startS, takesS) - 0.8 * done(t, releaseS, 0.35);
    const lean = multiply(aboutX(radians(6 - 38 * up)), aboutZ(radians(-38 + 30 * up)));
    const thorax = multiply(aboutY(radians(-95 * up)), lean);
    return { thorax, humerus: multiply(thorax, aboutZ(radians(45 + 30 * up))) };
  };
  const frameAt = (t: number): BodyFrame => {
    const [a, b] = [pose(t - 0.001), pose(t + 0.001)];
    const rate = (segment: 'thorax' | 'humerus') =>
      scale(toRotationVector(relative(a[segment], b[segment])), 500);
    const rates = { thoraxRate: rate('thorax'), humerusRate: rate('humerus') };
    return { timeS: t, ...pose(t), ...rates, gap: false, saturated: false };
  };
  const frames = Array.from({ length: Math.round((releaseS + 1) * 100) }, (_, i) =>
    frameAt(i / 100),
  );
  return { startS, topS, releaseS, frames };
}

function candidateOf(frames: readonly BodyFrame[]): SwingCandidate {
  const detector = createDetector();
  const found = frames.flatMap((f) => stepDetector(detector, signalsOf(f)) ?? []);
  expect(found).toHaveLength(1);
  return found[0]!;
}

describe('the moments of a rehearsal', () => {
  it.each([
    ['quick', 0.5, 0.02],
    ['usual', 0.9, 0.02],
    ['slow', 2.2, 0.03],
    ['very slow', 4, 0.12],
  ])('are found after a %s backswing of %f s to within %f s', (_name, takesS, within) => {
    const { startS, topS, releaseS, frames } = rehearsal(takesS);
    const m = momentsOf(swingWindow(frames), candidateOf(frames));
    expect(Math.abs(m.startS - startS)).toBeLessThan(within);
    expect(Math.abs(m.topS - topS)).toBeLessThan(within);
    expect(Math.abs(m.releaseS - releaseS)).toBeLessThan(0.02);
    expect(Math.abs(m.holdS - (releaseS - topS))).toBeLessThan(within + 0.02);
  });
});
