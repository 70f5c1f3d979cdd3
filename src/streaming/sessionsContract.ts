import type { AnalysisResult } from '../analysis/result.ts';
import type { CarryOver } from '../coaching/judgement.ts';
import type { NotCounted, UncountedSession } from '../coaching/notCounted.ts';
import type { Plan, TargetMeasure } from '../coaching/plan.ts';
import type { PainSign } from '../sensors/sessionEvent.ts';

/** What the service serves of kept sessions over HTTP. Types only. */

/** `recording`: runs now. `interrupted`: program or machine stopped meanwhile. `unread`: found, not looked at yet. */
export type SessionStateWord = 'recording' | 'complete' | 'interrupted' | 'unread';

export interface SessionSummary {
  readonly id: string;
  readonly name: string;
  /** ISO 8601 with zone, UTC. */
  readonly startedAt: string;
  /** `null` until analysed. */
  readonly durationS: number | null;
  readonly hand: 'left' | 'right';
  readonly simulated: boolean;
  /** Why it is in no count: the week, last values, progress and needs (`coaching/notCounted.ts`); `null` where it is. */
  readonly notCounted: NotCounted | null;
  readonly state: SessionStateWord;
  readonly deleted: boolean;
  /** False while it waits for its analysis. */
  readonly analysed: boolean;
  /** Why it could not be analysed, in words. */
  readonly problem: string | null;
  readonly rehearsals: number;
  readonly balls: number;
  readonly practiceSwings: number;
  /** Rehearsals that were scored, and how many of them passed. */
  readonly scored: number;
  readonly passed: number;
  readonly warnings: number;
  /** Balls that came after as many rehearsals as the plan asks for; `mixKept` where all did, `null` without balls. */
  readonly ballsInMix: number;
  readonly mixKept: boolean | null;
  /** One letter a repetition: r rehearsal, b ball, as in the analysis. */
  readonly ledger: string;
  readonly note: string;
  /** 0-10; `null` where not asked. */
  readonly painBefore: number | null;
  readonly painAfter: number | null;
}

/** GET /api/sessions (newest first; `?deleted=true`: those that can be brought back). */
export interface SessionList {
  readonly sessions: readonly SessionSummary[];
  /** Where they lie on this computer. */
  readonly folder: string;
}

export interface SessionNotes {
  readonly note: string;
  readonly painBefore: number | null;
  readonly painAfter: number | null;
  /** At a hub: when the student changed the note after it had come; `null` or left out: never. Epoch ms. */
  readonly editedMs?: number | null;
}

/** GET /api/sessions/:id */
export interface SessionDetail {
  readonly summary: SessionSummary;
  readonly plan: Plan;
  /** `null` where it is not analysed (see `summary.problem`) or still recording. */
  readonly analysis: AnalysisResult | null;
  readonly notes: SessionNotes;
  /** What pain was like where it was told, meanwhile or at the end; left out where not known. */
  readonly painSigns?: readonly PainSign[];
  /** Rehearsals and balls of the seven days that end with this session; left out where the others are not known. */
  readonly weekRepetitions?: number;
}

type Column = readonly (number | null)[];

export interface QuaternionView {
  readonly w: number;
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** Segments in the room as the right-handed golfer's; draw the mirror image for a left hand. */
export interface CurvePose {
  readonly timeS: number;
  readonly thorax: QuaternionView;
  readonly humerus: QuaternionView;
}

/** GET /api/sessions/:id/curves/:index (index as in the analysis, from 1). Columns of equal length, at most 104 a second. */
export interface RepetitionCurves {
  readonly index: number;
  readonly kind: 'rehearsal' | 'ball' | 'practiceSwing';
  /** Session s that the page may take as zero: release of a rehearsal, delivery of a ball, else the top. */
  readonly alignS: number;
  /** From 0.3 s before the start of the backswing (at least 1.5 s, at most 6 s before release or top) to 1.0 s after; session s. */
  readonly timeS: readonly number[];
  readonly flexionDeg: Column;
  /** Toward the target +; 0 at the address. */
  readonly turnDeg: Column;
  readonly leanDeg: Column;
  readonly elevationDeg: Column;
  /** Change since the top; 0 before it. */
  readonly keptRotationDeg: Column;
  /** At most 120. */
  readonly poses: readonly CurvePose[];
  /** At the start of the backswing; `null` where it was lost. */
  readonly address: CurvePose | null;
}

/** One small multiple; `offsetS` is relative to `alignS`, at most 60 points. */
export interface OverviewEntry {
  readonly index: number;
  readonly kind: 'rehearsal' | 'ball' | 'practiceSwing';
  readonly passed: boolean | null;
  readonly alignS: number;
  readonly offsetS: readonly number[];
  readonly flexionDeg: Column;
  readonly turnDeg: Column;
}

/** GET /api/sessions/:id/overview */
export interface SessionOverview {
  readonly repetitions: readonly OverviewEntry[];
}

/** Quartiles over one session. */
export interface SpreadView {
  readonly count: number;
  readonly low: number;
  readonly median: number;
  readonly high: number;
}

/** A measure that was never taken is left out. */
export type SpreadsView = Partial<Record<TargetMeasure, SpreadView>>;

export interface ProgressEntry {
  readonly id: string;
  readonly startedAt: string;
  readonly simulated: boolean;
  readonly rehearsals: SpreadsView;
  readonly balls: SpreadsView;
  readonly scored: number;
  readonly passed: number;
  readonly warnings: number;
  /** The plan is another than in the session before. */
  readonly planChanged: boolean;
  /** What was asked; `null` where it is the plan of the entry before. */
  readonly plan: Plan | null;
  /** 0-10; `null` where not asked. */
  readonly painBefore: number | null;
  readonly painAfter: number | null;
  /** Rehearsals and balls. */
  readonly repetitions: number;
  readonly carryOver: CarryOver;
}

/** GET /api/progress: the sessions that are counted, oldest first. */
export interface Progress {
  /** All other sessions. */
  readonly notCounted: readonly UncountedSession[];
  readonly sessions: readonly ProgressEntry[];
}

/** Answer to POST /api/import: 201; the body is the bytes of a .zip. */
export interface Imported {
  readonly id: string;
}

/** GET /api/sessions/:id/export/... */
export const EXPORTS = ['zip', 'csv', 'angles', 'sto'] as const;
export type ExportFormat = (typeof EXPORTS)[number];

export const MAX_IMPORT_BYTES = 64 * 1024 * 1024;

/** Body of every answer that is not 2xx: 400 bad input, 403 another site, 404, 409 in the way of something, 413 too large, 503 nothing can be kept now. */
export interface ApiError {
  readonly error: {
    readonly code: string;
    /** For people, one sentence. */
    readonly message: string;
  };
}

/** Characters of a note that is written to a session afterwards. */
export const LONGEST_NOTE = 2000;
