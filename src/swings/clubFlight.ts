import { type ClubFall, type ClubForce, clubFall } from './clubFall.ts';
import type { RepetitionFlag } from './repetition.ts';
import { type ShockSample, strongestShock } from './shock.ts';
import { SWING } from './swingLimits.ts';

/** From letting go to the catch, session s. */
export interface ClubFlight {
  readonly releaseS: number;
  readonly catchS: number | null;
  /** 0..1 */
  readonly confidence: number;
  readonly flags: readonly RepetitionFlag[];
}

/**
 * What two body sensors see: the chest's start for the release, the arm's shock for the catch.
 * @param leastShock m/s^2; a weaker one is none
 */
export function flightFromBody(
  chestStartS: number,
  armStartS: number | null,
  shocks: readonly ShockSample[],
  leastShock = 0,
): ClubFlight {
  const shock = strongestShock(
    shocks,
    Math.max(chestStartS + SWING.earliestCatchS, (armStartS ?? 0) + SWING.armStartsS),
    chestStartS + SWING.landedS + 0.1,
  );
  const releaseS = chestStartS;
  if (shock === null || shock.size < leastShock)
    return missed(releaseS, ['catch-not-detected', 'catch-assumed']);
  if (shock.timeS - releaseS > SWING.landedS) return missed(releaseS, ['landed', 'catch-assumed']);
  return { releaseS, catchS: shock.timeS, confidence: shock.confidence, flags: [] };
}

/** What a third sensor on the club sees: free fall; `null` where there was none. */
export function flightFromClub(
  chestStartS: number,
  endS: number,
  forces: readonly ClubForce[],
): ClubFlight | null {
  const near = (f: ClubForce): boolean =>
    f.timeS >= chestStartS - SWING.letGoBeforeChestS && f.timeS <= endS;
  const fall: ClubFall | null = clubFall(forces.filter(near));
  if (fall === null) return null;
  const { releaseS } = fall;
  const landed = (fall.endS ?? endS) - releaseS > SWING.landedS;
  if (landed) return missed(releaseS, ['release-measured', 'landed', 'catch-assumed']);
  if (fall.endS === null)
    return missed(releaseS, ['release-measured', 'catch-not-detected', 'catch-assumed']);
  return { releaseS, catchS: fall.endS, confidence: 1, flags: ['release-measured'] };
}

const missed = (releaseS: number, flags: readonly RepetitionFlag[]): ClubFlight => ({
  releaseS,
  catchS: null,
  confidence: 0,
  flags,
});
