import type { BodyFrame } from '../body/segments.ts';
import { type AnalysedSwing, analyseSwing } from '../swings/analyseSwing.ts';
import {
  type DetectorState,
  type SwingCandidate,
  createDetector,
  stepDetector,
} from '../swings/detector.ts';
import type { SwingSignals } from '../swings/signals.ts';
import type { ShockSample } from '../swings/shock.ts';

/** How much of the past one swing can need, s. */
const KEEP_S = 20;
/** Before the backswing this much is looked at, s. */
const LEAD_S = 0.5;

/** The last seconds of movement and the detector over them. Plain data. */
export interface SwingingState {
  readonly detector: DetectorState;
  frames: BodyFrame[];
  shocks: ShockSample[];
}

export const createSwinging = (): SwingingState => ({
  detector: createDetector(),
  frames: [],
  shocks: [],
});

export function rememberShock(s: SwingingState, shock: ShockSample): void {
  s.shocks.push(shock);
  trim(s.shocks, shock.timeS);
}

/** Takes one frame; returns a swing when one has just ended and was one. */
export function stepSwinging(
  s: SwingingState,
  frame: BodyFrame,
  signals: SwingSignals,
): AnalysedSwing | null {
  s.frames.push(frame);
  trim(s.frames, frame.timeS);
  const candidate = stepDetector(s.detector, signals);
  return candidate === null ? null : closeSwing(s, candidate);
}

function closeSwing(s: SwingingState, c: SwingCandidate): AnalysedSwing | null {
  const fromS = c.startS - LEAD_S;
  const frames = s.frames.filter((f) => f.timeS >= fromS && f.timeS <= c.endS);
  // the arm may run ahead of the chest: what lies after the end must not count, or timing of arrival would
  const shocks = s.shocks.filter((x) => x.timeS >= fromS && x.timeS <= c.endS);
  return analyseSwing(frames, shocks, c);
}

/** Drops the old in large pieces: moving the array on every frame would cost more than the work. */
function trim(items: { timeS: number }[], nowS: number): void {
  const oldest = items[0]?.timeS ?? nowS;
  if (nowS - oldest <= 2 * KEEP_S) return;
  items.splice(
    0,
    items.findIndex((i) => nowS - i.timeS <= KEEP_S),
  );
}
