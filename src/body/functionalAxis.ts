import { degrees } from '../math/angle.ts';
import { moments, principalAxis } from '../math/principalAxis.ts';
import { type Vec3, angleBetween, dot, scale } from '../math/vec3.ts';
import type { Orientation } from '../orientation/orientation.ts';
import { LIMITS } from './calibrationLimits.ts';

/** The axis a segment turned about while one movement was repeated. */
export interface FunctionalAxis {
  /** Unit, sensor frame, signed so that the asked movement is positive about it. */
  readonly axis: Vec3;
  readonly explained: number;
  readonly spreadDeg: number;
  readonly repetitions: number;
  /** Largest excursion about the axis, deg. */
  readonly excursionDeg: number;
}

/** Excursions and time stamps about an axis: the gyro integrated, returning to zero between repetitions. */
interface Excursion {
  readonly angle: readonly number[];
  readonly samples: readonly Orientation[];
}

/** First principal axis of the angular rate, signed by the side the movement goes out to. */
export function functionalAxis(windows: readonly (readonly Orientation[])[]): FunctionalAxis {
  const all = windows.flat();
  const { axis, explained } = principalAxis(moments(all.map((o) => o.gyro)));
  const unsigned = windows.map((w) => excursion(w, axis));
  const sum = unsigned.reduce((s, e) => s + e.angle.reduce((a, b) => a + b, 0), 0);
  const sign = sum < 0 ? -1 : 1;
  const signed = unsigned.map((e) => ({ ...e, angle: e.angle.map((a) => a * sign) }));
  const parts = signed.flatMap(repetitionsOf);
  const spreads = parts.map((part) => axisDeviation(part, axis));
  return {
    axis: scale(axis, sign),
    explained,
    spreadDeg: degrees(Math.max(0, ...spreads)),
    repetitions: parts.length,
    excursionDeg: degrees(signed.reduce((m, e) => e.angle.reduce((a, b) => Math.max(a, b), m), 0)),
  };
}

function excursion(samples: readonly Orientation[], axis: Vec3): Excursion {
  let sum = 0;
  const angle = samples.map((o, i) => {
    const dt = i === 0 ? 0 : o.timeS - (samples[i - 1]?.timeS ?? o.timeS);
    sum += dot(o.gyro, axis) * dt;
    return sum;
  });
  return { angle, samples };
}

/** Cuts the movement into its repetitions: out past half of the largest excursion, back under a quarter. */
function repetitionsOf({ angle, samples }: Excursion): Orientation[][] {
  const peak = Math.max(...angle);
  if (degrees(peak) < LIMITS.repetitionDeg) return [];
  const parts: Orientation[][] = [];
  let from = 0;
  let out = false;
  angle.forEach((a, i) => {
    if (!out && a > 0.5 * peak) out = true;
    if (out && a < 0.25 * peak) {
      parts.push(samples.slice(from, i + 1));
      from = i;
      out = false;
    }
  });
  if (out) parts.push(samples.slice(from));
  return parts;
}

function axisDeviation(part: readonly Orientation[], axis: Vec3): number {
  const own = principalAxis(moments(part.map((o) => o.gyro))).axis;
  const angle = angleBetween(own, axis);
  return Math.min(angle, Math.PI - angle);
}
