import { isOneLine } from '../../sensors/plainText.ts';
import { SessionError } from '../sessionError.ts';

/** Of one file or folder, and of all of them on the way to it, bytes of UTF-8. File systems end at 255; choices. */
const MOST_NAME_BYTES = 200;
const MOST_PATH_BYTES = 1000;
/** A session's own files lie five deep. */
const MOST_FOLDERS = 20;

/**
 * The border for the name of a file in a session.
 * @throws SessionError where it is too long, or could not be shown in a line.
 */
export function checkName(path: string): void {
  if (Buffer.byteLength(path) > MOST_PATH_BYTES)
    refuse(path, 'too-long', `its path has more than ${MOST_PATH_BYTES} bytes`);
  if (path.split('/').some((name) => Buffer.byteLength(name) > MOST_NAME_BYTES))
    refuse(path, 'too-long', `its name has more than ${MOST_NAME_BYTES} bytes`);
  if (path.split('/').length > MOST_FOLDERS)
    refuse(path, 'unsafe-path', `it lies more than ${MOST_FOLDERS} folders deep`);
  if (!isOneLine(path))
    refuse(path, 'unsafe-path', 'its name holds a line break or a character that cannot be seen');
}

const SHOWN = 60;

function refuse(path: string, code: 'too-long' | 'unsafe-path', what: string): never {
  const start = [...path.slice(0, SHOWN)].map((c) => (isOneLine(c) ? c : '?')).join('');
  throw new SessionError(code, what, { file: path.length > SHOWN ? `${start} …` : start });
}

/**
 * The border for a word that a session says of itself, as its name or a sensor's place.
 * @throws SessionError
 */
export function checkWord(word: string, what: string, file: string): string {
  if (Buffer.byteLength(word) > MOST_NAME_BYTES)
    throw new SessionError('too-long', `${what} has more than ${MOST_NAME_BYTES} bytes`, { file });
  if (isOneLine(word)) return word;
  throw new SessionError(
    'bad-field',
    `${what} holds a line break or a character that cannot be seen`,
    { file },
  );
}
