import { type Vec3, scale } from '../../../math/vec3.ts';
import { type Jet, REST, jet } from './channel.ts';

/**
 * A blow that reaches the sensors as a short ringing. Each vector is the peak acceleration it gives
 * there, m/s^2, global frame; it is a displacement of millimetres whose second derivative is exact.
 */
export interface Shock {
  readonly timeS: number;
  /** Time scale, s: the peak comes after 0.42 of it, the rebound after 2.3. */
  readonly scaleS: number;
  readonly chest: Vec3;
  readonly arm: Vec3;
  /** Peak angular acceleration of the arm's elevation, rad/s^2. */
  readonly armSwing: number;
}

// d2/du2 of u^3 e^-u is e^-u (6u - 6u^2 + u^3), with its largest value 1.00908 at u = 0.41577.
const PEAK = 1.0090836;

/** Displacement with unit peak acceleration. */
function shockPulse(shock: Shock, timeS: number): Jet {
  const u = (timeS - shock.timeS) / shock.scaleS;
  if (u <= 0 || u > 40) return REST;
  const k = Math.exp(-u) / PEAK;
  return jet(
    k * u * u * u * shock.scaleS * shock.scaleS,
    k * u * u * (3 - u) * shock.scaleS,
    k * u * (6 - 6 * u + u * u),
  );
}

/** Displacement of a sensor by all shocks, as three jets. */
export function shockDisplacement(
  shocks: readonly Shock[],
  where: 'chest' | 'arm',
  timeS: number,
): { readonly x: Jet; readonly y: Jet; readonly z: Jet } {
  const sum = [0, 0, 0, 0, 0, 0, 0, 0, 0];
  for (const s of shocks) {
    const p = shockPulse(s, timeS);
    if (p === REST) continue;
    [p.x, p.v, p.a].forEach((f, i) => {
      const d = scale(s[where], f);
      sum[i] = (sum[i] ?? 0) + d.x;
      sum[i + 3] = (sum[i + 3] ?? 0) + d.y;
      sum[i + 6] = (sum[i + 6] ?? 0) + d.z;
    });
  }
  const at = (i: number): Jet => jet(sum[i] ?? 0, sum[i + 1] ?? 0, sum[i + 2] ?? 0);
  return { x: at(0), y: at(3), z: at(6) };
}

export function shockSwing(shocks: readonly Shock[], timeS: number): Jet {
  let [x, v, a] = [0, 0, 0];
  for (const s of shocks) {
    const p = shockPulse(s, timeS);
    x += p.x * s.armSwing;
    v += p.v * s.armSwing;
    a += p.a * s.armSwing;
  }
  return jet(x, v, a);
}
