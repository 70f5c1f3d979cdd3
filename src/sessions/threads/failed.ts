import { type Place, SessionError, type SessionErrorCode } from '../sessionError.ts';

/** What a thread could not do, in words that can be handed over. */
export interface Failed {
  readonly ok: false;
  /** Of a `SessionError`, with its place. */
  readonly code: SessionErrorCode | null;
  readonly place?: Place;
  readonly message: string;
}

export const failedOf = (error: unknown): Failed =>
  error instanceof SessionError
    ? { ok: false, code: error.code, place: error.place, message: error.what }
    : { ok: false, code: null, message: error instanceof Error ? error.message : String(error) };

/** The same on the other side. */
export const errorOf = ({ code, place, message }: Failed): Error =>
  code === null ? new Error(message) : new SessionError(code, message, place);
