import { flexionGain, humerusAngles, thoraxAngles } from '../body/angles.ts';
import type { BodyFrame } from '../body/segments.ts';
import { degrees, wrapPi } from '../math/angle.ts';
import { relative } from '../math/quat.ts';
import type { Measures } from './repetition.ts';
import { axialRate } from './signals.ts';
import { type SwingWindow, frameAt } from './window.ts';

/** The measures that compare two instants of one swing, e.g. release and catch. */
type PostureMeasures = Omit<Measures, 'chestLeadMs' | 'releaseToCatchMs' | 'fallCm'>;

/** Elevation (rad) outside 30-150 deg: external rotation is not shown. */
export function postureMeasures(w: SwingWindow, fromS: number, toS: number): PostureMeasures {
  const a = frameAt(w, fromS);
  const b = frameAt(w, toS);
  const from = thoraxAngles(a.thorax);
  const to = thoraxAngles(b.thorax);
  const arm = humerusAngles(relative(a.thorax, a.humerus));
  const gain = flexionGain(a.thorax, b.thorax);
  return {
    flexionTopDeg: degrees(from.flexion),
    flexionCatchDeg: degrees(to.flexion),
    flexionGainDeg: degrees(gain.gain),
    turnExplainedDeg: degrees(gain.turnExplained),
    addedFlexionDeg: degrees(gain.added),
    leanChangeDeg: degrees(gain.leanChange),
    turnTopDeg: degrees(wrapPi(from.turn)),
    turnTowardTargetDeg: degrees(wrapPi(to.turn - from.turn)),
    lateralChangeDeg: degrees(to.lateral - from.lateral),
    externalRotationTopDeg:
      arm.valid && arm.externalRotation !== null ? degrees(arm.externalRotation) : null,
    elevationTopDeg: degrees(arm.elevation),
    keptRotationDeg: axialRotation(w, fromS, toS),
  };
}

/** True axial rotation of the humerus between two times, outward +, deg: trapezoid over the frames. */
export function axialRotation(w: SwingWindow, fromS: number, toS: number): number {
  const inside = w.frames.filter((f) => f.timeS > fromS && f.timeS < toS);
  const ends = [frameAt(w, fromS), ...inside, frameAt(w, toS)];
  let sum = 0;
  ends.forEach((f: BodyFrame, i) => {
    const before = ends[i - 1];
    if (before) sum += ((axialRate(before) + axialRate(f)) / 2) * (f.timeS - before.timeS);
  });
  return sum;
}
