const RAD_PER_DEG = Math.PI / 180;

export const radians = (deg: number): number => deg * RAD_PER_DEG;
export const degrees = (rad: number): number => rad / RAD_PER_DEG;

/** The same angle in (-pi, pi]. */
export function wrapPi(rad: number): number {
  const r = rad - 2 * Math.PI * Math.round(rad / (2 * Math.PI));
  return r <= -Math.PI ? r + 2 * Math.PI : r;
}

/** The same angle in (-180, 180]. */
export function wrapDeg(deg: number): number {
  const r = deg - 360 * Math.round(deg / 360);
  return r <= -180 ? r + 360 : r;
}

export const clamp = (v: number, low: number, high: number): number =>
  Math.min(high, Math.max(low, v));
