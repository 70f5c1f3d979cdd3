import type { Inbox, MachineComment } from './machine.ts';

/** What the student's own service serves of its connection with a coach. Types only. Times are epoch ms. */

/** GET /api/coach, and the answer to each of the others. */
export interface CoachLink {
  /** `null`: not connected. */
  readonly connection: {
    readonly hubUrl: string;
    readonly student: string;
    readonly coach: string;
    readonly club: string;
    /** What this computer is called there. */
    readonly machine: string;
    readonly sinceMs: number;
  } | null;
  /** `null`: the student has not said yet. */
  readonly consent: Consent | null;
  /** Why nothing gets through now, in a sentence. */
  readonly problem: string | null;
  /** When it is tried again; `null` where nothing waits. */
  readonly nextTryMs: number | null;
  readonly lastContactMs: number | null;
  /** Kept sessions, newest first, at most 200. */
  readonly sessions: readonly SendingRow[];
  /** As it was fetched last; it can be read without the hub. */
  readonly inbox: Inbox | null;
  /** Answers that have not reached the hub yet. */
  readonly outbox: readonly (MachineComment & { readonly atMs: number })[];
  /** Comments of the coach that have not been looked at. */
  readonly unread: number;
}

export interface Consent {
  readonly send: boolean;
  /** Sessions from before the consent too. */
  readonly older: boolean;
  readonly atMs: number;
}

export interface SendingRow {
  readonly id: string;
  readonly startedMs: number;
  readonly simulated: boolean;
  /** `kept`: not to be sent. `refused`: the hub will not have it, `why` says so. */
  readonly state: 'sent' | 'sending' | 'waiting' | 'refused' | 'kept';
  readonly why: string | null;
  /** 0-1 while it is being sent. */
  readonly share: number | null;
}

/** POST /api/coach/connect */
export interface ConnectRequest {
  readonly hubUrl: string;
  readonly code: string;
  readonly machine: string;
  /** Go on although anyone on the way could read it (http to another computer). */
  readonly plain?: boolean;
}

/** POST /api/coach/consent */
export interface ConsentRequest {
  readonly send: boolean;
  readonly older?: boolean;
}

/** POST /api/coach/comments */
export interface ReplyRequest {
  readonly clientId: string;
  readonly text: string;
  readonly index: number | null;
  readonly replyTo: string | null;
}

/** POST /api/coach/seen: what is there now has been looked at. DELETE /api/coach disconnects. */
