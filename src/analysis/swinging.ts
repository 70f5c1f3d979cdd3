import type { BodyFrame } from '../body/segments.ts';
import { type SwingReadings, analyseSwing } from '../swings/analyseSwing.ts';
import {
  type DetectorState,
  type SwingCandidate,
  createDetector,
  stepDetector,
} from '../swings/detector.ts';
import { type Recent, createRecent, readRecent, trimRecent } from '../math/recent.ts';
import {
  FRAME_WIDTH,
  SHOCK_WIDTH,
  pushFrame,
  pushShock,
  readFrame,
  readShock,
} from './recentRows.ts';
import type { SwingSignals } from '../swings/signals.ts';
import type { ShockSample } from '../swings/shock.ts';
import { SWING } from '../swings/swingLimits.ts';

/** How much of the past one swing can need, s. */
const KEEP_S = 20;
/** Before the backswing this much is looked at, s. */
const LEAD_S = SWING.slowlyStillS + 0.2;

/** How long the club's readings are waited for, s of session time. */
const CLUB_WAIT_S = 1;

/** The last seconds of movement and the detector over them. Plain data. */
export interface SwingingState {
  readonly detector: DetectorState;
  readonly frames: Recent;
  readonly shocks: Recent;
  readonly club: Recent;
  /** Newest reading of the club, session s. */
  clubS: number | null;
  /** A movement that is over and waits for the club's readings. */
  ended: SwingCandidate | null;
}

export const createSwinging = (): SwingingState => ({
  detector: createDetector(),
  frames: createRecent(FRAME_WIDTH, KEEP_S),
  shocks: createRecent(SHOCK_WIDTH, KEEP_S),
  club: createRecent(2, KEEP_S),
  clubS: null,
  ended: null,
});

export function rememberShock(s: SwingingState, shock: ShockSample): void {
  pushShock(s.shocks, shock);
}

export const shocksBetween = (s: SwingingState, fromS: number, toS: number): ShockSample[] =>
  readRecent(s.shocks, fromS, toS, readShock);

/** One reading of the third sensor, on the club: only how strong it is pulled counts. */
export function rememberClub(s: SwingingState, timeS: number, force: number): void {
  if (timeS <= (s.clubS ?? -Infinity)) return;
  s.clubS = timeS;
  s.club.data.push(timeS, force);
  trimRecent(s.club);
}

/** Takes one frame; returns a swing when one has ended and was one. */
export function stepSwinging(
  s: SwingingState,
  frame: BodyFrame,
  signals: SwingSignals,
): SwingReadings | null {
  pushFrame(s.frames, frame);
  const found = stepDetector(s.detector, signals);
  const waited = found !== null && s.ended !== null ? closeSwing(s) : null;
  if (found !== null) s.ended = found;
  if (waited !== null || s.ended === null || waitsForClub(s, s.ended, frame.timeS)) return waited;
  return closeSwing(s);
}

/** The club's packets may come later than the body's; a club that is silent is not waited for. */
function waitsForClub(s: SwingingState, c: SwingCandidate, nowS: number): boolean {
  const { clubS } = s;
  const silent = clubS === null || nowS - clubS > CLUB_WAIT_S;
  return !silent && clubS < c.endS;
}

/** What has ended but still waits when the recording ends. */
export const closeSwinging = (s: SwingingState): SwingReadings | null =>
  s.ended === null ? null : closeSwing(s);

function closeSwing(s: SwingingState): SwingReadings | null {
  const c = s.ended;
  s.ended = null;
  if (c === null) return null;
  const fromS = c.startS - LEAD_S;
  // the arm or the club may run ahead of the chest: what lies after the end must not count, or timing of arrival would
  return analyseSwing(
    {
      frames: readRecent(s.frames, fromS, c.endS, readFrame),
      shocks: shocksBetween(s, fromS, c.endS),
      club: readRecent(s.club, fromS, c.endS, (d, at) => ({
        timeS: d[at] ?? 0,
        force: d[at + 1] ?? 0,
      })),
    },
    c,
  );
}
