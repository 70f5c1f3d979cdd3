import { join } from 'node:path';
import { plainWords } from '../sensors/plainText.ts';
import type { SessionFiles } from './files/sessionFiles.ts';
import { readJson } from './read/text.ts';
import { SessionError } from './sessionError.ts';
import { writeJson } from './write/wholeFile.ts';

/** What the golfer said about a practice; kept beside it, so that a copy of the folder has it. */
export interface PracticeNotes {
  /** 0-10; `null` where not asked. */
  readonly painBefore: number | null;
  readonly painAfter: number | null;
  readonly note: string;
}

export const NO_NOTES: PracticeNotes = { painBefore: null, painAfter: null, note: '' };

const FILE = 'derivatives/stillcatch/practice.json';
/** Characters. */
export const LONGEST_NOTE = 5000;

/** Its being there also says that the practice came to its end. */
export const writeNotes = (session: string, notes: PracticeNotes): Promise<void> =>
  writeJson(join(session, FILE), notes);

/** `null` where there are none or they cannot be read: they are never worth refusing a recording. */
export async function readNotes(files: SessionFiles): Promise<PracticeNotes | null> {
  if (!files.names.includes(FILE)) return null;
  const json = await readJson(files, FILE).catch(() => ({}) as Record<string, unknown>);
  const { painBefore, painAfter, note } = json;
  return {
    painBefore: isPain(painBefore) ? painBefore : null,
    painAfter: isPain(painAfter) ? painAfter : null,
    note: typeof note === 'string' ? plainWords(note).slice(0, LONGEST_NOTE) : '',
  };
}

const isPain = (value: unknown): value is number =>
  typeof value === 'number' && Number.isInteger(value) && value >= 0 && value <= 10;

/** @throws SessionError in words where a note is too long or a rating no number from 0 to 10. */
export function checkNotes(notes: Partial<PracticeNotes>): void {
  for (const pain of [notes.painBefore, notes.painAfter])
    if (pain !== undefined && pain !== null && !isPain(pain))
      throw new SessionError('bad-field', 'pain is rated with a whole number from 0 to 10');
  if ((notes.note?.length ?? 0) > LONGEST_NOTE)
    throw new SessionError('bad-field', `a note may have ${LONGEST_NOTE} characters at most`);
}
