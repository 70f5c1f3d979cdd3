import type { Ball, PracticeSwing, Rehearsal, Repetition } from '../swings/repetition.ts';
import type { Target, TargetMeasure } from './plan.ts';

export interface Check {
  readonly measure: TargetMeasure;
  readonly value: number | null;
  readonly target: Target;
  /** `null` where the measure could not be taken: neither passed nor failed. A missed catch has failed. */
  readonly passed: boolean | null;
}

export type CueCode =
  | 'good'
  | 'hold-longer'
  | 'hold-shorter'
  | 'chest-first'
  | 'arms-sooner'
  | 'keep-lean'
  | 'bend-down'
  | 'bend-less'
  | 'keep-arm-out'
  | 'arm-out-less'
  | 'turn-through'
  | 'turn-less'
  | 'catch-sooner'
  | 'catch-later'
  | 'missed-catch'
  | 'stay-easy'
  | 'not-scored';

/** The one sentence after a repetition; at most six words. */
export interface Cue {
  readonly code: CueCode;
  readonly text: string;
}

export interface Verdict {
  /** `null`: not scored (a gap or saturation touched it, or a measure is missing and none failed). */
  readonly passed: boolean | null;
  /** In the order of judgement; only what the plan asks for. */
  readonly checks: readonly Check[];
  readonly cue: Cue;
}

export type JudgedRehearsal = Rehearsal & { readonly verdict: Verdict };

/** What a person made of a repetition that was detected as something else. */
export interface HandMark {
  readonly detected: Repetition['kind'];
  /** It is not to be counted at all; it stays listed as it was detected. */
  readonly ignored: boolean;
}

/** Measured and judged as what it stands for; `marked` where a person said so. */
export type JudgedRepetition = (JudgedRehearsal | Ball | PracticeSwing) & {
  readonly marked?: HandMark;
};

/** Rehearsals and balls in order. */
export interface Ledger {
  readonly rehearsals: number;
  readonly balls: number;
  /** rehearsals / balls; `null` before the first ball. */
  readonly ratio: number | null;
  /** Balls that came after the asked number of rehearsals. */
  readonly ballsInMix: number;
  /** `r` and `b`, oldest first. */
  readonly entries: string;
}

/** A ball's measure divided by the rehearsals' (medians); `null` where there is too little. */
export interface CarryOver {
  readonly addedFlexion: number | null;
  readonly keptRotation: number | null;
}

export type WarningId =
  | 'club'
  | 'history'
  | 'warm-up'
  | 'pain-now'
  | 'pain-high'
  | 'pain-next-day'
  | 'red-flag'
  | 'own-range'
  | 'trunk-own-range'
  | 'volume'
  | 'missed';

export interface SafetyWarning {
  readonly id: WarningId;
  /** Session s; 0 for what is said before the start. The first time, where it came again. */
  readonly atS: number;
  readonly text: string;
  /** How often it came, and when last; left out for once. */
  readonly times?: number;
  readonly lastS?: number;
  /** It came in movements without a hold only: balls and practice swings. */
  readonly swingsOnly?: true;
}
