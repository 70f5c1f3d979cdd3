/** Norm of the specific force at the club, m/s^2: about 9.8 while held, near 0 while it falls. */
export interface ClubForce {
  readonly timeS: number;
  readonly force: number;
}

export interface ClubFall {
  /** The club is let go, session s. */
  readonly releaseS: number;
  /** It is caught, or lands, session s; `null` where it still falls at the end. */
  readonly endS: number | null;
}

/** Choices: below this a club is in nobody's hand, m/s^2; a shorter dip is a swing's own; s. */
const FALLING = { force: 4, shortestS: 0.06 } as const;

/**
 * The longest free fall in a stretch of force at the club, or `null`. Its ends are where the force
 * crosses the limit, between samples by a straight line.
 */
export function clubFall(forces: readonly ClubForce[]): ClubFall | null {
  let best: ClubFall | null = null;
  let from: number | null = null;
  const last = forces.at(-1)?.timeS ?? 0;
  const lengthOf = (f: ClubFall): number => (f.endS ?? last) - f.releaseS;
  const keep = (fall: ClubFall): void => {
    if (lengthOf(fall) >= FALLING.shortestS && (best === null || lengthOf(fall) > lengthOf(best)))
      best = fall;
  };
  forces.forEach((f, i) => {
    const before = forces[i - 1];
    if (f.force < FALLING.force) from ??= before ? crossing(before, f) : f.timeS;
    else if (from !== null) {
      keep({ releaseS: from, endS: before ? crossing(before, f) : f.timeS });
      from = null;
    }
  });
  if (from !== null) keep({ releaseS: from, endS: null });
  return best;
}

function crossing(a: ClubForce, b: ClubForce): number {
  const span = b.force - a.force;
  const t = span === 0 ? 1 : (FALLING.force - a.force) / span;
  return a.timeS + Math.min(1, Math.max(0, t)) * (b.timeS - a.timeS);
}
