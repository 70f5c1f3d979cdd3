export type SessionErrorCode =
  | 'not-found'
  | 'not-a-session'
  | 'not-a-zip'
  | 'zip-limit'
  | 'zip-damaged'
  | 'unsafe-path'
  | 'too-many'
  | 'duplicate-name'
  | 'several-sessions'
  | 'missing-file'
  | 'too-large'
  | 'bad-json'
  | 'missing-field'
  | 'bad-field'
  | 'binary'
  | 'header-row'
  | 'column-count'
  | 'not-a-number'
  | 'missing-channel'
  | 'bad-channel'
  | 'bad-units'
  | 'missing-column'
  | 'time-backwards'
  | 'too-long'
  | 'no-samples'
  | 'too-slow'
  | 'implausible-units'
  | 'one-sensor'
  | 'hand-unknown'
  | 'missing-calibration'
  | 'exists'
  | 'broke-off'
  | 'in-use'
  | 'index-damaged'
  | 'newer-version'
  | 'write-failed';

/** Where in a recording: file relative to the session, line and column counted from 1. */
export interface Place {
  readonly file?: string;
  readonly line?: number;
  readonly column?: number;
}

/** A recording that cannot be read or written, in one sentence that names the place. */
export class SessionError extends Error {
  override readonly name = 'SessionError';
  readonly code: SessionErrorCode;
  /** Without its place. */
  readonly what: string;
  readonly place: Place;

  constructor(code: SessionErrorCode, what: string, place: Place = {}) {
    super(placed(what, place));
    this.code = code;
    this.what = what;
    this.place = place;
  }
}

/** What a recording says of itself may stand in a refusal; nobody reads more than so much of it. A choice. */
const LONGEST = 600;

const cut = (text: string): string =>
  text.length > LONGEST ? `${text.slice(0, LONGEST)} …` : text;

function placed(what: string, { file, line, column }: Place): string {
  const where = [
    file,
    line === undefined ? undefined : `line ${line}`,
    column === undefined ? undefined : `column ${column}`,
  ].filter((part) => part !== undefined);
  return where.length === 0 ? cut(what) : `${where.map(cut).join(', ')}: ${cut(what)}`;
}
