/** Why one link failed or ended. */
export type LinkErrorCode =
  | 'connect-timeout'
  | 'connect-refused'
  | 'not-seen'
  | 'services-missing'
  | 'prepare-timeout'
  | 'prepare-failed'
  | 'disconnected'
  | 'silent'
  | 'adapter-off'
  | 'cancelled';

const WORDS: Record<LinkErrorCode, string> = {
  'connect-timeout':
    'It did not answer within 10 s. Is it switched on, near, and not connected elsewhere?',
  'connect-refused': 'The Bluetooth adapter refused the connection; it is busy.',
  'not-seen': 'Not seen. Is it switched on, charged and within a few metres?',
  'services-missing': 'It does not offer the services a sensor of this kind must have.',
  'prepare-timeout': 'It stopped answering while it was being set up.',
  'prepare-failed': 'It could not be set up.',
  disconnected: 'The connection ended.',
  silent: 'Connected, but no data for 2 s.',
  'adapter-off': 'Bluetooth was switched off.',
  cancelled: 'No longer wanted.',
};

/** noble rejects with errors, strings or not at all; inside this folder only this is thrown. */
export class LinkError extends Error {
  readonly code: LinkErrorCode;
  constructor(code: LinkErrorCode, detail = '') {
    super(detail ? `${WORDS[code]} (${detail})` : WORDS[code]);
    this.name = 'LinkError';
    this.code = code;
  }
}

export const detailOf = (error: unknown): string =>
  error instanceof Error ? error.message : String(error);

export const linkError = (error: unknown, code: LinkErrorCode): LinkError =>
  error instanceof LinkError ? error : new LinkError(code, detailOf(error));
