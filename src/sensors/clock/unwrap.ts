/** A counter that wraps, made to run on. Plain data. */
export interface UnwrapState {
  readonly modulus: number;
  /** Last raw reading and its unwrapped value; `null` before the first. */
  last: { raw: number; value: number; arrivalS: number } | null;
}

/** For `counter` see {@link unwrap}; u16 sequence numbers: 2 ** 16, u32 clocks: 2 ** 32. */
export const createUnwrap = (modulus: number): UnwrapState => ({ modulus, last: null });

/** A reading of the same counter a little before or after the last one; `null` before the first. */
export function unwrapNear({ last, modulus }: UnwrapState, raw: number): number | null {
  if (!last) return null;
  const ahead = (((raw - last.raw) % modulus) + modulus) % modulus;
  return last.value + (ahead < modulus / 2 ? ahead : ahead - modulus);
}

export interface Unwrapped {
  /** Runs on over wraps, in raw ticks. After a restart it begins again at the raw reading. */
  readonly value: number;
  /** Ticks since the reading before; 0 for the first and after a restart. */
  readonly step: number;
  /** The device began anew: no number of wraps explains the reading. */
  readonly restarted: boolean;
}

/** A device clock may run 3 % off, and a packet may be held up 2 s, before we call it a restart. */
const RATE_TOLERANCE = 0.03;
const HELD_UP_S = 2;

/**
 * Unwraps one reading, with the host clock to tell a wrap, even several, from a restart.
 * @param raw 0 .. modulus - 1
 * @param arrivalS host s
 * @param ticksPerS nominal
 */
export function unwrap(
  state: UnwrapState,
  raw: number,
  arrivalS: number,
  ticksPerS: number,
): Unwrapped {
  const { last, modulus } = state;
  if (!last) {
    state.last = { raw, value: raw, arrivalS };
    return { value: raw, step: 0, restarted: false };
  }
  const elapsedS = arrivalS - last.arrivalS;
  const short = (((raw - last.raw) % modulus) + modulus) % modulus;
  const wraps = Math.max(0, Math.round((elapsedS * ticksPerS - short) / modulus));
  const step = short + wraps * modulus;
  const toleranceS = HELD_UP_S + RATE_TOLERANCE * Math.abs(elapsedS);
  const restarted = Math.abs(step / ticksPerS - elapsedS) > toleranceS;
  const value = restarted ? raw : last.value + step;
  state.last = { raw, value, arrivalS };
  return { value, step: restarted ? 0 : step, restarted };
}
