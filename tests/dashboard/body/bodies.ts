import fc from 'fast-check';
import { DRILL_ANGLES, poseOf } from '../../../src/dashboard/body/poses.ts';
import { quat } from '../../../src/math/quat.ts';

/** A share 0 to 1, even: integers scaled. */
const share = fc.integer({ min: 0, max: 1_000_000 }).map((n) => n / 1_000_000);

/** Orientations spread evenly over all there are (Shoemake 1992). */
const anyOrientation = fc.tuple(share, share, share).map(([u, v, w]) => {
  const [a, b] = [2 * Math.PI * v, 2 * Math.PI * w];
  const [r, s] = [Math.sqrt(1 - u), Math.sqrt(u)];
  return quat(r * Math.sin(a), r * Math.cos(a), s * Math.sin(b), s * Math.cos(b));
});

export const anyBody = fc.record({ thorax: anyOrientation, humerus: anyOrientation });

const within = (low: number, high: number): fc.Arbitrary<number> =>
  share.map((s) => low + (high - low) * s);

/** Golfers at the top, in the bands of what people do: turn, bends and raised arms as measured on some. */
export const anyTop = fc
  .record({
    turn: within(-112, -70),
    lateral: within(-38, -5),
    flexion: within(-5, 20),
    plane: within(20, 45),
    elevation: within(45, 85),
    rotation: within(50, 80),
  })
  .map(poseOf);

export const anyAddress = fc
  .record({
    turn: within(-5, 5),
    lateral: within(0, 10),
    flexion: within(25, 45),
    plane: within(72, 92),
    elevation: within(30, 55),
    rotation: within(65, 90),
  })
  .map(poseOf);

/** From address to top, the same way for all angles. */
export const onTheWay = (k: number) => {
  const { address, top } = DRILL_ANGLES;
  const keys = Object.keys(address) as (keyof typeof address)[];
  return poseOf(
    Object.fromEntries(keys.map((key) => [key, address[key] + (top[key] - address[key]) * k])),
  );
};
