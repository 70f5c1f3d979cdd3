import type { BodyFrame } from '../body/segments.ts';
import { quat } from '../math/quat.ts';
import { vec3 } from '../math/vec3.ts';
import { type Recent, trimRecent } from '../math/recent.ts';
import type { Orientation } from '../orientation/orientation.ts';
import type { ShockSample } from '../swings/shock.ts';

export const ORIENTATION_WIDTH = 12;
export const FRAME_WIDTH = 16;
export const SHOCK_WIDTH = 3;

const GAP = 1;
const SATURATED = 2;
const REST = 4;
const INTERPOLATED = 8;

export function pushOrientation(r: Recent, o: Orientation): void {
  const { q, gyro, acc } = o;
  const flags =
    (o.afterGap ? GAP : 0) |
    (o.saturated ? SATURATED : 0) |
    (o.rest ? REST : 0) |
    (o.interpolated ? INTERPOLATED : 0);
  r.data.push(o.timeS, q.w, q.x, q.y, q.z);
  r.data.push(gyro.x, gyro.y, gyro.z, acc.x, acc.y, acc.z, flags);
  trimRecent(r);
}

export function readOrientation(d: readonly number[], at: number): Orientation {
  const n = (i: number) => d[at + i] ?? 0;
  const flags = n(11);
  return {
    timeS: n(0),
    q: quat(n(1), n(2), n(3), n(4)),
    gyro: vec3(n(5), n(6), n(7)),
    acc: vec3(n(8), n(9), n(10)),
    rest: (flags & REST) !== 0,
    interpolated: (flags & INTERPOLATED) !== 0,
    afterGap: (flags & GAP) !== 0,
    saturated: (flags & SATURATED) !== 0,
  };
}

export function pushFrame(r: Recent, f: BodyFrame): void {
  const { thorax: t, humerus: h, thoraxRate: a, humerusRate: b } = f;
  const flags = (f.gap ? GAP : 0) | (f.saturated ? SATURATED : 0);
  r.data.push(f.timeS, t.w, t.x, t.y, t.z, h.w, h.x, h.y, h.z);
  r.data.push(a.x, a.y, a.z, b.x, b.y, b.z, flags);
  trimRecent(r);
}

export function readFrame(d: readonly number[], at: number): BodyFrame {
  const n = (i: number) => d[at + i] ?? 0;
  const flags = n(15);
  return {
    timeS: n(0),
    thorax: quat(n(1), n(2), n(3), n(4)),
    humerus: quat(n(5), n(6), n(7), n(8)),
    thoraxRate: vec3(n(9), n(10), n(11)),
    humerusRate: vec3(n(12), n(13), n(14)),
    gap: (flags & GAP) !== 0,
    saturated: (flags & SATURATED) !== 0,
  };
}

export function pushShock(r: Recent, s: ShockSample): void {
  r.data.push(s.timeS, s.size, s.seen ? 1 : 0);
  trimRecent(r);
}

export const readShock = (d: readonly number[], at: number): ShockSample => ({
  timeS: d[at] ?? 0,
  size: d[at + 1] ?? 0,
  seen: d[at + 2] === 1,
});
