import type { Phase } from '../analysis/contract.ts';
import type { JudgedRepetition } from '../analysis/result.ts';
import type { CalibrationQuality } from '../body/calibrationResult.ts';
import type { Ledger } from '../coaching/judgement.ts';
import type { CorrectedKind, LedgerStatus } from '../coaching/ledger.ts';
import type { OwnRange, Plan } from '../coaching/plan.ts';
import type { KeptWarning } from '../coaching/standingWarnings.ts';
import type { SessionCount } from '../coaching/sessionCount.ts';
import type { Stop } from './stops.ts';
import type { PracticeSummary } from '../coaching/summary.ts';
import type { SensorLink } from '../sensors/sources/source.ts';
import type { SessionEvent } from '../sensors/sessionEvent.ts';
import type { About } from './about.ts';
import type { GuideView } from './guide/guide.ts';
import type { RepetitionMoments } from './moments.ts';
import type { PoseView } from './pose.ts';

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
  /** Mean length of the specific force while the sensor was last at rest, m/s^2. */
  readonly restNorm: number | null;
}

/** Where a practice is: not begun by anybody, the guided start, step by step, the practice itself, and its end. */
export const STAGES = [
  'idle',
  'safety',
  'strap',
  'check',
  'calibrate',
  'range',
  'address',
  'practice',
  'after',
  'over',
  'stopped',
] as const;
export type Stage = (typeof STAGES)[number];

/** What is known of the student from before. */
export interface PersonView {
  /** The question about former injuries has not been answered yet. */
  readonly firstUse: boolean;
  /** Left out where nothing is kept of a person. */
  readonly about?: About;
  /** The newest stop, of whichever day; left out where there was none. */
  readonly stop?: Stop;
  /** Pain at the start of the last session, 0-10; `null` where there was none. */
  readonly painBefore: number | null;
  /** Whose samples a practice of one's own has: as it was begun last, else as the program was started. */
  readonly sensors?: 'demo' | 'bluetooth';
  /** When the calibration was done that can be re-checked, ms since 1970, UTC; left out where there is none. */
  readonly calibratedMs?: number;
  readonly lastSession: {
    /** ms since 1970, UTC. */
    readonly startedMs: number;
    readonly repetitions: number;
    readonly note: string;
  } | null;
}

/** What a person reads at the end. */
export interface SummaryView {
  readonly summary: PracticeSummary;
  /** Session s from the first to the last sample. */
  readonly durationS: number;
  readonly best: RepetitionMoments | null;
  readonly typical: RepetitionMoments | null;
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

/** The last seconds as columns of equal length, oldest first; degrees, `null` where not known. */
export interface CurveView {
  readonly timeS: readonly number[];
  readonly flexionDeg: readonly (number | null)[];
  readonly turnDeg: readonly (number | null)[];
  readonly keptRotationDeg: readonly (number | null)[];
}

/** The ledger after corrections, what the plan asks for next, and how far the session is. */
export interface LedgerView extends Ledger, LedgerStatus, SessionCount {
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

/** What becomes of this practice. */
export interface KeepingView {
  /** The session that it is written to; `null` where there is none (yet). */
  readonly sessionId: string | null;
  /** Why it is not being kept now, in a sentence for the person; `null` where all is well. */
  readonly problem: string | null;
  /** After a problem, for a while: what of it is kept, in a sentence. */
  readonly restored?: string;
}

/** Everything a screen needs to show a practice from nothing. Plain data. */
export interface PracticeView {
  /** New for every start of the service or of a session: a screen forgets what it said before. */
  readonly practiceId: string;
  readonly hand: 'left' | 'right';
  readonly plan: Plan;
  readonly stage: Stage;
  readonly person: PersonView;
  /** The guided part under way; `null` outside of one. */
  readonly guide: GuideView | null;
  /** Ends of the comfortable range that were measured in this session. */
  readonly ownRange: OwnRange;
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
  /** `null` where nobody keeps it: a recording that is played. */
  readonly keeping: KeepingView | null;
  /** From the end of the practice on. */
  readonly summary: SummaryView | null;
}

export const STRIP_LENGTH = 60;
export const WARNINGS_KEPT = 20;
/** Window of the curves, s, and the least time between two of its points: at most 589 points. */
export const CURVE_WINDOW_S = 10;
export const CURVE_STEP_S = 0.017;
