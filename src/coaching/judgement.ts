import type { Target, TargetMeasure } from './plan.ts';

export interface Check {
  readonly measure: TargetMeasure;
  readonly value: number | null;
  readonly target: Target;
  /** `null` where the measure could not be taken: neither passed nor failed. */
  readonly passed: boolean | null;
}

export type CueCode =
  | 'good'
  | 'hold-longer'
  | 'chest-first'
  | 'keep-lean'
  | 'bend-down'
  | 'keep-arm-out'
  | 'turn-through'
  | 'catch-sooner'
  | 'missed-catch'
  | 'not-scored';

/** The one sentence after a repetition; at most six words. */
export interface Cue {
  readonly code: CueCode;
  readonly text: string;
}

export interface Verdict {
  /** `null`: not scored (a gap or saturation touched it). */
  readonly passed: boolean | null;
  readonly checks: readonly Check[];
  readonly cue: Cue;
}

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

export interface SafetyWarning {
  readonly id: 'own-range' | 'trunk-own-range' | 'volume' | 'missed' | 'pain-now' | 'pain-high';
  /** Session s. */
  readonly atS: number;
  readonly text: string;
}
