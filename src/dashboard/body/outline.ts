import { type Point, hull } from './project.ts';

/* Outlines as the `d` of an SVG path, metres to a tenth of a millimetre. */

const mm = (v: number): string => v.toFixed(4);
const at = ({ x, y }: Point): string => `${mm(x)} ${mm(y)}`;

export const line = (points: readonly Point[]): string => `M${points.map(at).join('L')}`;

export const closed = (points: readonly Point[]): string => `${line(points)}Z`;

/** Around all of the points. */
export const around = (points: readonly Point[]): string => closed(hull(points));

export function circle({ x, y }: Point, r: number): string {
  const [d, half] = [2 * r, `a${mm(r)} ${mm(r)} 0 0 0 `];
  return `M${mm(x - r)} ${mm(y)}${half}${mm(d)} 0${half}${mm(-d)} 0Z`;
}

/** A limb: the outline of two discs and what lies between them. */
export function limb(a: Point, ra: number, b: Point, rb: number): string {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const apart = Math.hypot(dx, dy);
  if (apart <= Math.abs(ra - rb) + 1e-4) return ra >= rb ? circle(a, ra) : circle(b, rb);
  const way = Math.atan2(dy, dx);
  const half = Math.acos((ra - rb) / apart);
  const on = (p: Point, r: number, angle: number): Point => ({
    x: p.x + r * Math.cos(angle),
    y: p.y + r * Math.sin(angle),
  });
  const arc = (r: number, large: boolean, to: Point): string =>
    `A${mm(r)} ${mm(r)} 0 ${large ? 1 : 0} 1 ${at(to)}`;
  const [a1, b1] = [on(a, ra, way - half), on(b, rb, way - half)];
  const [a2, b2] = [on(a, ra, way + half), on(b, rb, way + half)];
  return `M${at(a1)}L${at(b1)}${arc(rb, ra < rb, b2)}L${at(a2)}${arc(ra, ra > rb, a1)}Z`;
}

/** An egg: an ellipsoid with half axis `long` along `axis` (its projection, length 0 to 1), `wide` across. */
export function egg(centre: Point, axis: Point, long: number, wide: number): string {
  const seen = Math.min(1, Math.hypot(axis.x, axis.y));
  const tall = Math.sqrt(wide * wide + (long * long - wide * wide) * seen * seen);
  const [ux, uy] = seen < 1e-6 ? [0, 1] : [axis.x / seen, axis.y / seen];
  const turn = ((Math.atan2(uy, ux) * 180) / Math.PI).toFixed(1);
  const top = { x: centre.x + tall * ux, y: centre.y + tall * uy };
  const low = { x: centre.x - tall * ux, y: centre.y - tall * uy };
  const arc = `A${mm(tall)} ${mm(wide)} ${turn} 1 1 `;
  return `M${at(top)}${arc}${at(low)}${arc}${at(top)}Z`;
}
