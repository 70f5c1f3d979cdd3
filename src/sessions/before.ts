import { join } from 'node:path';
import Type from 'typebox';
import Compile from 'typebox/compile';
import type { SafetyWarning } from '../coaching/judgement.ts';
import type { VolumeHistory } from '../coaching/warnings.ts';
import { warning } from './analysisSchema.ts';
import type { SessionFiles } from './files/sessionFiles.ts';
import { readJson } from './read/text.ts';
import { SessionError } from './sessionError.ts';
import { writeJson } from './write/wholeFile.ts';

/** What was known before a session and follows from none of its samples and events. */
export interface Before {
  /** `null` where it is not known. */
  readonly history: VolumeHistory | null;
  /** What was warned of before the start. */
  readonly warnings: readonly SafetyWarning[];
}

export const NOTHING_BEFORE: Before = { history: null, warnings: [] };

const count = Type.Number({ minimum: 0 });
const schema = Type.Object({
  schema: Type.Literal(1),
  history: Type.Union([
    Type.Object({ thisWeek: count, weeksBefore: Type.Array(count, { maxItems: 100 }) }),
    Type.Null(),
  ]),
  warnings: Type.Array(warning, { maxItems: 20 }),
});
const validator = Compile(schema);

/** Source data, not a derivative: without it the session's warnings cannot be found again. */
const FILE = 'sourcedata/before.json';

export const writeBefore = (session: string, { history, warnings }: Before): Promise<void> =>
  writeJson(join(session, FILE), { schema: 1, history, warnings });

/** @throws SessionError where there is one that is broken. */
export async function readBefore(files: SessionFiles): Promise<Before> {
  if (!files.names.includes(FILE)) return NOTHING_BEFORE;
  const value: unknown = await readJson(files, FILE);
  if (validator.Check(value)) return { history: value.history, warnings: value.warnings };
  const [first] = validator.Errors(value);
  const what = `what was known before the session is damaged at ${first?.instancePath || 'its start'}: ${first?.message ?? 'wrong content'}`;
  throw new SessionError('bad-field', what, { file: FILE });
}
