import { LINK_TEXTS, type LinkTextKey } from '../radioTexts.ts';

/** Why one link failed or ended. */
export type LinkErrorCode = Exclude<LinkTextKey, 'unassigned' | 'waits'>;

/** noble rejects with errors, strings or not at all; inside this folder only this is thrown. */
export class LinkError extends Error {
  readonly code: LinkErrorCode;
  constructor(code: LinkErrorCode, detail = '') {
    super(detail ? `${LINK_TEXTS[code]} (${detail})` : LINK_TEXTS[code]);
    this.name = 'LinkError';
    this.code = code;
  }
}

export const detailOf = (error: unknown): string =>
  error instanceof Error ? error.message : String(error);

export const linkError = (error: unknown, code: LinkErrorCode): LinkError =>
  error instanceof LinkError ? error : new LinkError(code, detailOf(error));
