import { SessionError } from '../../sessions/sessionError.ts';
import { isFull, ofTheDisk } from '../../sessions/write/disk.ts';
import { sentence, sentenceOf } from '../../streaming/apiErrors.ts';
import type { JobFailure } from './jobMessages.ts';

/** Longer reasons are cut. A choice. */
const LONGEST_REASON = 500;

/** Whatever was thrown, as a job's failure. Only what is wrong with the recording itself would be so again. */
export function failureOf(error: unknown): JobFailure {
  const words = ofTheDisk(error) ?? (error instanceof Error ? error.message : String(error));
  return {
    ok: false,
    problem:
      error instanceof SessionError && words === error.message
        ? sentenceOf(error)
        : sentence(words.slice(0, LONGEST_REASON)),
    lasting: error instanceof SessionError && error.code !== 'write-failed',
    noRoom: isFull(error),
  };
}
