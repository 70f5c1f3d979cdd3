import { expect, it } from 'vitest';
import { refusalOf } from '../../src/dashboard/sessions/importing.ts';
import { MAX_IMPORT_BYTES } from '../../src/streaming/sessionsContract.ts';

it('a file that cannot be a session is refused with a sentence that names it', () => {
  expect(refusalOf({ name: 'swing.ZIP', size: 5 })).toBeNull();
  expect(refusalOf({ name: 'swing.mp4', size: 5 })).toMatch(/^swing\.mp4 .*not a \.zip/);
  expect(refusalOf({ name: 'swing.zip', size: 0 })).toMatch(/empty\.$/);
  expect(refusalOf({ name: 'swing.zip', size: MAX_IMPORT_BYTES + 1 })).toMatch(/larger than 64 MB/);
});
