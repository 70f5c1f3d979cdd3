import type { BodyFrame } from '../body/segments.ts';
import { type AnalysedSwing, analyseSwing } from '../swings/analyseSwing.ts';
import {
  type DetectorState,
  type SwingCandidate,
  createDetector,
  stepDetector,
} from '../swings/detector.ts';
import { type Recent, createRecent, readRecent } from '../math/recent.ts';
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

/** How much of the past one swing can need, s. */
const KEEP_S = 20;
/** Before the backswing this much is looked at, s. */
const LEAD_S = 0.5;

/** The last seconds of movement and the detector over them. Plain data. */
export interface SwingingState {
  readonly detector: DetectorState;
  readonly frames: Recent;
  readonly shocks: Recent;
}

export const createSwinging = (): SwingingState => ({
  detector: createDetector(),
  frames: createRecent(FRAME_WIDTH, KEEP_S),
  shocks: createRecent(SHOCK_WIDTH, KEEP_S),
});

export function rememberShock(s: SwingingState, shock: ShockSample): void {
  pushShock(s.shocks, shock);
}

/** Takes one frame; returns a swing when one has just ended and was one. */
export function stepSwinging(
  s: SwingingState,
  frame: BodyFrame,
  signals: SwingSignals,
): AnalysedSwing | null {
  pushFrame(s.frames, frame);
  const candidate = stepDetector(s.detector, signals);
  return candidate === null ? null : closeSwing(s, candidate);
}

function closeSwing(s: SwingingState, c: SwingCandidate): AnalysedSwing | null {
  const fromS = c.startS - LEAD_S;
  const frames = readRecent(s.frames, fromS, c.endS, readFrame);
  // the arm may run ahead of the chest: what lies after the end must not count, or timing of arrival would
  const shocks = readRecent(s.shocks, fromS, c.endS, readShock);
  return analyseSwing(frames, shocks, c);
}
