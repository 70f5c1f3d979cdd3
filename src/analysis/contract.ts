import type { CalibrationQuality } from '../body/calibrationResult.ts';
import type { KnownFits } from '../body/recheck.ts';
import type { BodyFrame, JointAngles } from '../body/segments.ts';
import type { Ledger, SafetyWarning } from '../coaching/judgement.ts';
import type { VolumeHistory } from '../coaching/warnings.ts';
import type { Plan } from '../coaching/plan.ts';
import type { ImuSample } from '../sensors/sample.ts';
import type { SessionEvent } from '../sensors/sessionEvent.ts';
import type { JudgedRepetition } from './result.ts';

export interface AnalysisSettings {
  readonly hand: 'left' | 'right';
  readonly plan: Plan;
  /** What was done before this session; left out = nothing known. */
  readonly history?: VolumeHistory;
  /** An earlier calibration of the same sensors, which a re-check may find still true. */
  readonly known?: KnownFits;
  /** Also give every instant's pose and angles: for the screen and for curves. */
  readonly emitFrames?: boolean;
}

/** What goes in: both sensors and the session's events, in any interleaving that keeps each one's own order. */
export type AnalysisInput =
  | { readonly kind: 'sample'; readonly sample: ImuSample }
  | { readonly kind: 'event'; readonly event: SessionEvent };

/** What the golfer is doing now, for the screen. */
export type Phase =
  'calibrating' | 'waiting' | 'address' | 'backswing' | 'top' | 'released' | 'caught' | 'paused';

/** What comes out, in order of session time. */
export type AnalysisOutput =
  | {
      readonly kind: 'calibration';
      readonly quality: CalibrationQuality;
      /** What may be kept for a later re-check; `null` where it was refused. */
      readonly fits: KnownFits | null;
    }
  | {
      readonly kind: 'phase';
      readonly phase: Phase;
      readonly atS: number;
      /** Time held so far at the top, s; 0 elsewhere. */
      readonly holdS: number;
    }
  | {
      readonly kind: 'frame';
      readonly frame: BodyFrame;
      readonly angles: JointAngles;
      /** Axial rotation since the last still top (outward +), deg; `null` outside a repetition. */
      readonly keptRotationDeg: number | null;
    }
  | {
      readonly kind: 'repetition';
      readonly repetition: JudgedRepetition;
      /** The same movement measured as the other kinds, should a person say that it was one of them. */
      readonly others: readonly JudgedRepetition[];
    }
  | { readonly kind: 'ledger'; readonly ledger: Ledger }
  | { readonly kind: 'warning'; readonly warning: SafetyWarning };
