import type { AnalysisResult } from '../../analysis/result.ts';
import type { CorrectedKind } from '../../coaching/ledger.ts';
import type { Plan } from '../../coaching/plan.ts';
import type { SessionSummary } from '../sessionsContract.ts';

/** What the hub serves of sessions over HTTP, beside what the student's service serves. Times are epoch ms. */

/** GET /api/students/:studentId/sessions?beforeMs= (newest first, at most 50) */
export interface HubSessionRow {
  readonly summary: SessionSummary;
  readonly reviewedMs: number | null;
  readonly comments: number;
}

export interface HubSessionList {
  readonly sessions: readonly HubSessionRow[];
  readonly more: boolean;
}

/** GET /api/sessions/:sessionId. Overview, curves and exports have the addresses and shapes of the student's service. */
export interface HubSession {
  readonly studentId: string;
  readonly student: string;
  readonly summary: SessionSummary;
  /** The plan that it was done, and is judged, under. */
  readonly plan: Plan;
  readonly planNumber: number | null;
  readonly analysis: AnalysisResult | null;
  readonly notes: {
    readonly note: string;
    readonly painBefore: number | null;
    readonly painAfter: number | null;
    /** When the student changed the note after it had come; `null`: never. */
    readonly editedMs: number | null;
  };
  readonly reviewedMs: number | null;
  readonly comments: readonly Comment[];
  readonly relabels: readonly Relabel[];
  readonly clips: readonly Clip[];
  /** How the hub's numbers differ from the student's and why, in words; empty where they do not. */
  readonly differences: readonly string[];
  /** The student's sessions next to this one. */
  readonly older: NextSession | null;
  readonly newer: NextSession | null;
  /** It is being analysed, or waits for it: numbers and curves follow. */
  readonly analysing: boolean;
  /** For the coach: the student's open pain is in this session, as the list of students has it. */
  readonly openPain: string | null;
}

interface NextSession {
  readonly id: string;
  readonly startedMs: number;
}

export type LabelKind = 'rehearsal' | 'ball' | 'ignore';

/** What a label makes of a repetition, as marks in a recording do. */
export const CORRECTED = {
  rehearsal: 'rehearsal',
  ball: 'ball',
  ignore: 'ignored',
} as const satisfies Readonly<Record<LabelKind, CorrectedKind>>;

/** PUT /api/sessions/:sessionId/relabels/:index; `null` takes it back. @public */
export interface RelabelRequest {
  readonly kind: LabelKind | null;
}

export interface Relabel {
  readonly index: number;
  readonly kind: LabelKind;
  /** What the analysis says. */
  readonly originalKind: 'rehearsal' | 'ball' | 'practiceSwing';
  readonly by: string;
  readonly atMs: number;
}

export interface Comment {
  readonly id: string;
  readonly by: string;
  readonly byRole: 'coach' | 'student';
  readonly mine: boolean;
  readonly atMs: number;
  readonly text: string;
  /** Pinned to a repetition (index of the analysis), to a moment (session s), or to the session (both `null`). */
  readonly index: number | null;
  readonly momentS: number | null;
  /** The comment that it answers. */
  readonly replyTo: string | null;
  /** It answers the student's note of the session. */
  readonly onNote: boolean;
}

/** POST /api/sessions/:sessionId/comments */
export interface NewComment {
  readonly text: string;
  readonly index?: number | null;
  readonly momentS?: number | null;
  readonly replyTo?: string | null;
  readonly onNote?: boolean;
}

/** PUT /api/sessions/:sessionId/reviewed @public */
export interface ReviewedRequest {
  readonly reviewed: boolean;
}

/** GET /api/blocks: ready texts of the coach's own. */
export interface TextBlock {
  readonly id: string;
  readonly title: string;
  readonly text: string;
}

/** GET /api/clips/:clipId is the film itself, in ranges. */
export interface Clip {
  readonly id: string;
  readonly name: string;
  readonly type: 'video/mp4' | 'video/webm';
  readonly bytes: number;
  readonly by: string;
  /** Session s that clip time 0 stands for; `null` until it is lined up. */
  readonly startS: number | null;
  readonly view: 'face-on' | 'down-the-line' | null;
}

/** PATCH /api/clips/:clipId */
export interface ClipChange {
  readonly startS?: number | null;
  readonly view?: 'face-on' | 'down-the-line' | null;
}

export const MAX_CLIP_BYTES = 200 * 1024 * 1024;
