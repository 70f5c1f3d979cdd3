import type { Role } from './people.ts';

export type LogAct =
  | 'setup'
  | 'login'
  | 'login-failed'
  | 'logout'
  | 'password'
  | 'invite'
  | 'join'
  | 'pair'
  | 'revoke'
  | 'let-in'
  | 'lock-out'
  | 'export'
  | 'delete'
  | 'move'
  | 'relabel'
  | 'plan'
  | 'pain-close'
  | 'pain-reopen'
  | 'review-calm'
  | 'review-undo';

/** Somebody or something that the log knows by a number. */
export interface LogName {
  readonly number: number;
  /** As it is today; `null` once it is deleted. */
  readonly name: string | null;
}

export type LogPerson = LogName & { readonly role: Role | null };

export interface LogSession {
  readonly number: number;
  /** Name of the student; `null` once it is deleted. */
  readonly student: string | null;
}

/** What an entry is about; what does not matter for its act is left out. */
export interface LogAbout {
  readonly person?: LogPerson;
  readonly coach?: LogPerson;
  readonly session?: LogSession;
  readonly machine?: LogName;
  readonly invite?: LogName;
  readonly role?: 'coach' | 'student';
  readonly repetition?: number;
  readonly sessions?: number;
  readonly format?: string;
  readonly how?: 'itself' | 'elsewhere' | 'everything';
}

/** GET /api/log?before= (newest first) */
export interface LogEntry {
  readonly id: number;
  readonly atMs: number;
  /** `null` where nobody was signed in. */
  readonly by: LogPerson | null;
  readonly act: LogAct;
  readonly about: LogAbout;
  readonly address: string;
}

/** GET /api/log/check */
export interface LogCheck {
  readonly entries: number;
  /** The first entry that is not as it was written; `null` where all are. */
  readonly brokenAt: number | null;
}
