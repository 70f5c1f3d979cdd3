import type { PlanVersion } from './students.ts';
import type { Comment } from './review.ts';

/** What a student's paired machine and the hub say to each other over HTTP. Types only. */

/** PUT /api/machine/uploads/:clientId: announces a session; the same again gives where it stands. */
export interface UploadRequest {
  /** Of the whole zip, hexadecimal. */
  readonly sha256: string;
  readonly bytes: number;
}

/**
 * GET or PUT /api/machine/uploads/:clientId, and PATCH with header `upload-offset` and the bytes from there on.
 * An offset other than `received` is refused with 409 and this body's facts, so that the sender goes on from there.
 */
export interface UploadState {
  readonly received: number;
  readonly bytes: number;
  /** The session is kept; nothing is left to send. */
  readonly complete: boolean;
  /** The same recording came before under this id of the student's: one is kept. Left out else. */
  readonly sameAs?: string;
}

/** GET /api/machine/inbox */
export interface Inbox {
  readonly student: string;
  readonly coach: string;
  readonly club: string;
  /** The plan that is valid now (`null`: the coach has made none), and one that becomes valid later. */
  readonly plan: PlanVersion | null;
  readonly nextPlan: PlanVersion | null;
  readonly threads: readonly InboxThread[];
}

/** All that was said about one session, oldest first. */
export interface InboxThread {
  /** The student's own id of the session. */
  readonly clientId: string;
  readonly startedMs: number;
  readonly reviewedMs: number | null;
  readonly comments: readonly Comment[];
}

/** POST /api/machine/comments */
export interface MachineComment {
  /** Made by the machine: the same again is not a second comment. */
  readonly id: string;
  readonly clientId: string;
  readonly text: string;
  readonly index: number | null;
  readonly replyTo: string | null;
}

/**
 * PATCH /api/machine/sessions/:clientId/notes: what the student says of a session now. The note is replaced; a rating
 * only rises: pain that a coach has been shown never vanishes by itself, the coach closes it.
 */
export interface MachineNotes {
  readonly note: string;
  /** 0-10; `null` where it was not asked. */
  readonly painBefore: number | null;
  readonly painAfter: number | null;
}

/** POST /api/machine/plan-seen */
export interface PlanSeen {
  readonly planId: string;
}

export const MAX_UPLOAD_BYTES = 128 * 1024 * 1024;
