/** Thresholds from simulation (10 % wobble: explained 0.98, axis error 2.4 deg at the 95th percentile from three bows). */
export const LIMITS = {
  /** l1/(l1+l2+l3): said below `accept`, refused below `refuse`. */
  explained: { accept: 0.97, refuse: 0.95 },
  /** Largest deviation of one repetition's axis, deg. */
  spreadDeg: { accept: 3, refuse: 10 },
  /** |90 - angle(axis, vertical)|, deg. */
  squarenessDeg: { accept: 10, refuse: 25 },
  /** Tilt between the two stands, deg. */
  standTiltDeg: { accept: 4, refuse: 15 },
  /** RMS angular rate while asked to stand still, deg/s. */
  stillDegPerS: 8,
  /** Peak excursion that counts as one bow or one raise, deg. */
  repetitionDeg: 15,
  /** Largest excursion has to reach this, deg. */
  movementDeg: 25,
  /** | |acc| / g - 1 | while still. */
  gravityFraction: 0.05,
  /** Agreement of gyro and accelerometer on the same turn, -1..1. */
  gyroAgreement: 0.5,
} as const;

/** How far a mounting may sit from the kept one; from `npm run report:recheck`. */
export const RECHECK_LIMITS = {
  chest: { tiltDeg: 8, twistDeg: 9 },
  trailArm: { tiltDeg: 9, twistDeg: 12 },
} as const;
