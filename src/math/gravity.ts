/** Standard acceleration of free fall, m/s^2 (3rd CGPM, 1901). */
export const STANDARD_GRAVITY = 9.80665;

/** Height fallen from rest after `s` seconds, m: d = g t^2 / 2. */
export const freeFall = (s: number): number => (STANDARD_GRAVITY * s * s) / 2;
