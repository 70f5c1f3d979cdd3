import { describe, expect, it } from 'vitest';
import { SessionError } from '../../src/sessions/sessionError.ts';
import { errorOf, failedOf } from '../../src/sessions/threads/failed.ts';
import { sentenceOf } from '../../src/streaming/apiErrors.ts';

const missing = new SessionError('missing-file', 'is missing', { file: 'sub-01/a.tsv', line: 2 });

describe('a refusal', () => {
  it('keeps the spelling of the file that it begins with', () => {
    expect(sentenceOf(missing)).toBe('sub-01/a.tsv, line 2: is missing.');
    expect(sentenceOf(new SessionError('not-a-zip', 'the file is empty'))).toBe(
      'The file is empty.',
    );
  });

  it('is the same when it comes from a thread', () => {
    const came = errorOf(structuredClone(failedOf(missing))) as SessionError;
    expect([came.code, came.message, came.place]).toEqual([
      missing.code,
      missing.message,
      missing.place,
    ]);
    expect(sentenceOf(came)).toBe(sentenceOf(missing));
  });
});
