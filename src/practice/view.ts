import type { Phase } from '../analysis/contract.ts';
import type { JudgedRepetition } from '../analysis/result.ts';
import type { CalibrationQuality } from '../body/calibrationResult.ts';
import type { Ledger } from '../coaching/judgement.ts';
import type { CorrectedKind, LedgerStatus } from '../coaching/ledger.ts';
import type { Plan } from '../coaching/plan.ts';
import type { KeptWarning } from '../coaching/standingWarnings.ts';
import type { Quat } from '../math/quat.ts';
import type { SensorLink } from '../sensors/sources/source.ts';
import type { SessionEvent } from '../sensors/sessionEvent.ts';

/** Where the samples come from and whether they still come. */
export interface SourceView {
  readonly kind: 'synthetic' | 'replay' | 'ble';
  readonly simulated: boolean;
  readonly state: 'starting' | 'running' | 'ended' | 'failed';
  /** Why it ended badly, in words. */
  readonly reason: string | null;
}

/** One sensor as the sensor line shows it. */
export interface SensorView extends SensorLink {
  /** Measured over the last seconds of session time, Hz. */
  readonly rateHz: number | null;
  /** Share of samples that never came in that time, 0-100. */
  readonly lostPct: number | null;
  /** Age of the last packet at the time of sending, ms. */
  readonly ageMs: number | null;
}

interface PhaseView {
  readonly phase: Phase;
  /** Session s at which the phase began. */
  readonly sinceS: number;
  /** Time held so far at the top, s. */
  readonly holdS: number;
}

/** The calibration under way and what came of it. */
export interface CalibrationView {
  /** Steps done or under way, oldest first; onset and duration in session s. */
  readonly steps: readonly SessionEvent[];
  readonly quality: CalibrationQuality | null;
}

/** Both segments at one instant, right-handed equivalent, global frame (X ahead, Y up, Z right). */
export interface PoseView {
  readonly thorax: Quat;
  readonly humerus: Quat;
}

/** The last seconds as columns of equal length, oldest first; degrees, `null` where not known. */
export interface CurveView {
  readonly timeS: readonly number[];
  readonly flexionDeg: readonly (number | null)[];
  readonly turnDeg: readonly (number | null)[];
  readonly keptRotationDeg: readonly (number | null)[];
}

/** The ledger after corrections, and what the plan asks for next. */
export interface LedgerView extends Ledger, LedgerStatus {
  /** Newest correction can be taken back. */
  readonly canUndo: boolean;
}

/** One repetition in the strip, after corrections. */
export interface StripEntry {
  readonly index: number;
  readonly kind: CorrectedKind;
  /** A person said what it was. */
  readonly corrected: boolean;
  /** `null`: not scored, or no rehearsal. */
  readonly passed: boolean | null;
}

/** Everything a screen needs to show a practice from nothing. Plain data. */
export interface PracticeView {
  /** New for every start of the service or of a session: a screen forgets what it said before. */
  readonly practiceId: string;
  readonly hand: 'left' | 'right';
  readonly plan: Plan;
  readonly source: SourceView;
  readonly sensors: readonly SensorView[];
  readonly phase: PhaseView;
  readonly calibration: CalibrationView;
  /** `null` until a calibration is accepted. */
  readonly pose: PoseView | null;
  /** The pose at the last still address: the ghost. */
  readonly addressPose: PoseView | null;
  readonly curve: CurveView;
  readonly ledger: LedgerView;
  /** The newest repetitions, oldest first; at most `STRIP_LENGTH`. */
  readonly strip: readonly StripEntry[];
  readonly last: JudgedRepetition | null;
  /** Oldest first; at most `WARNINGS_KEPT`. */
  readonly warnings: readonly KeptWarning[];
}

export const STRIP_LENGTH = 60;
export const WARNINGS_KEPT = 20;
/** Window of the curves, s, and the least time between two of its points: at most 589 points. */
export const CURVE_WINDOW_S = 10;
export const CURVE_STEP_S = 0.017;
