import { SessionError, type SessionErrorCode } from '../sessionError.ts';

/** What a thread could not do, in words that can be handed over; `code`: of a `SessionError`. */
export interface Failed {
  readonly ok: false;
  readonly code: SessionErrorCode | null;
  readonly message: string;
}

export const failedOf = (error: unknown): Failed => ({
  ok: false,
  code: error instanceof SessionError ? error.code : null,
  message: error instanceof Error ? error.message : String(error),
});

/** The same on the other side. */
export const errorOf = ({ code, message }: Failed): Error =>
  code === null ? new Error(message) : new SessionError(code, message);
