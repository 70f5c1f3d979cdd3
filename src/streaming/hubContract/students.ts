import type { NeedCode } from '../../coaching/attention.ts';
import type { NotCountedCounts, UncountedSession } from '../../coaching/notCounted.ts';
import type { Plan, TargetMeasure } from '../../coaching/plan.ts';
import type { ApiError, SpreadView, SpreadsView } from '../sessionsContract.ts';

/** What the hub serves of students over HTTP. Types only. Times are epoch ms. */

export interface Need {
  readonly code: NeedCode;
  /** One line that says why. */
  readonly text: string;
  /** The very session that it is about, and its start; `null` where it is about none. */
  readonly sessionId: string | null;
  readonly atMs: number | null;
  /** The student's own words that wait for an answer. */
  readonly quote: string | null;
  /** What the answer goes to: id of a comment of that session, or `note`. */
  readonly answerTo: string | null;
}

/** GET /api/students: the coach's own, those who need a look first. */
export interface StudentRow {
  readonly id: string;
  readonly name: string;
  readonly hand: 'left' | 'right';
  /** The first is what the order goes by. */
  readonly needs: readonly Need[];
  readonly unreviewed: number;
  readonly lastPracticeMs: number | null;
  /** In the last seven days. */
  readonly weekRehearsals: number;
  readonly weekBalls: number;
  /** Sessions of the last seven days that are in neither. */
  readonly weekNotCounted: NotCountedCounts;
  /** Of whichever time; they are in no other number. */
  readonly simulatedSessions: number;
  /** Newest session that has not been looked at; `null` where there is none. */
  readonly nextSessionId: string | null;
  /** Sessions to review that need no look: nothing of the student is open, and neither pain nor a warning is in them. */
  readonly calm: number;
}

export interface StudentList {
  readonly students: readonly StudentRow[];
}

/** Answer to POST /api/calm-reviews: marks every calm session of the coach's students as reviewed. */
export interface CalmReview {
  /** DELETE /api/calm-reviews/:calmReviewId takes all of it back, for an hour. */
  readonly id: string;
  readonly sessions: number;
}

/** POST /api/students/:studentId/pain-closings */
export interface NewPainClosing {
  /** The newest session with open pain, as it was shown. */
  readonly sessionId: string;
  readonly reason: string;
}

/** DELETE /api/pain-closings/:painClosingId opens it again; it stays on record. */
export interface PainClosing {
  readonly id: string;
  readonly sessionId: string;
  /** Start of that session: the pain of all sessions up to it is closed. */
  readonly throughMs: number;
  readonly reason: string;
  readonly by: string;
  readonly atMs: number;
  readonly reopenedMs: number | null;
}

/** GET /api/students/:studentId */
export interface StudentView {
  readonly id: string;
  readonly name: string;
  readonly hand: 'left' | 'right';
  readonly coach: string;
  readonly joinedMs: number;
  readonly paired: boolean;
  readonly lastContactMs: number | null;
  readonly needs: readonly Need[];
  readonly plan: PlanVersion;
  /** Newest session that nobody has looked at. */
  readonly nextSessionId: string | null;
  /** Newest first. */
  readonly painClosings: readonly PainClosing[];
  /** When the plan reached the student's machine; `null`: not yet. */
  readonly planReachedMs: number | null;
  readonly sessions: number;
  readonly unreviewed: number;
  readonly lessons: readonly Lesson[];
}

/** PATCH /api/students/:studentId */
export interface StudentChange {
  readonly name?: string;
  readonly hand?: 'left' | 'right';
}

/** POST /api/students/:studentId/lessons; a day and what it was about. */
export interface Lesson {
  readonly id: string;
  readonly atMs: number;
  readonly text: string;
}

/** GET /api/students/:studentId/plans, newest first. */
export interface PlanVersion {
  readonly id: string;
  /** 1, 2, ... of this student. */
  readonly number: number;
  readonly plan: Plan;
  readonly validFromMs: number;
  readonly createdMs: number;
  readonly by: string;
  /** What is different from the version before, in words. */
  readonly changes: readonly string[];
}

/** POST /api/students/:studentId/plans */
export interface NewPlan {
  readonly plan: Plan;
  readonly validFromMs: number;
  /** Number of the newest version that the writer has seen; 0 where there was none. */
  readonly basedOn: number;
}

/**
 * What POST /api/students/:studentId/plans answers with 409 where another version was saved since `basedOn`: nothing
 * was saved, and both can be seen beside each other.
 */
export interface PlanConflict extends ApiError {
  readonly newest: PlanVersion;
}

/** GET /api/templates: plans without a student, the coach's own. */
export interface PlanTemplate {
  readonly id: string;
  readonly name: string;
  readonly plan: Plan;
}

/** A student's own last values, beside the targets of the editor. */
export type LastValues = SpreadsView;

/** One session as a point in time. */
export interface ProgressSession {
  readonly id: string;
  readonly startedMs: number;
  readonly simulated: boolean;
  readonly rehearsals: SpreadsView;
  readonly balls: SpreadsView;
  readonly rehearsalCount: number;
  readonly ballCount: number;
  readonly ballsInMix: number;
  readonly scored: number;
  readonly passed: number;
  readonly warnings: number;
  readonly painBefore: number | null;
  readonly painAfter: number | null;
  readonly planNumber: number | null;
  readonly carryOver: {
    readonly addedFlexion: number | null;
    readonly keptRotation: number | null;
  };
}

/** GET /api/students/:studentId/progress, oldest first. */
export interface HubProgress {
  readonly sessions: readonly ProgressSession[];
  /** All other sessions. */
  readonly notCounted: readonly UncountedSession[];
  readonly plans: readonly PlanVersion[];
  readonly lessons: readonly Lesson[];
}

/** GET /api/students/:studentId/compare?aFromMs=&aToMs=&bFromMs=&bToMs= : the sessions of two periods. */
export interface PeriodComparison {
  readonly a: Period;
  readonly b: Period;
  readonly differences: readonly PeriodDifference[];
  /** How many differences have an interval: all of these hold the true differences at once, with 95 %. */
  readonly together: number;
}

export interface Period {
  readonly fromMs: number;
  readonly toMs: number;
  readonly sessions: number;
  readonly rehearsals: number;
  readonly balls: number;
  /** Sessions of the period that are in no number. */
  readonly notCounted: NotCountedCounts;
  /** Numbers of the plans that its sessions were judged by, smallest first. */
  readonly planNumbers: readonly number[];
}

/** Means of the sessions' medians and quartiles; `count` repetitions in all. Of a share or carry-over, the middle half of the sessions. */
export interface UsualSession extends SpreadView {
  readonly sessions: number;
}

export interface PeriodDifference {
  /** `passed`: share 0..1 of the scored rehearsals that reached a target, or all of them (`measure` is `null`). */
  readonly kind: 'rehearsals' | 'balls' | 'passed' | 'carryOver';
  readonly measure: TargetMeasure | null;
  readonly a: UsualSession | null;
  readonly b: UsualSession | null;
  /** b minus a, sessions counted once each; `null` where either has none. */
  readonly difference: {
    readonly value: number;
    /** `null` with fewer than three sessions on either side. */
    readonly interval: { readonly low: number; readonly high: number } | null;
  } | null;
}
