import { createHash } from 'node:crypto';
import { openFiles } from '../sessions/files/openFiles.ts';
import { NO_NOTES, type PracticeNotes, readNotes } from '../sessions/practiceNotes.ts';
import type { SessionSummary } from '../sessions/store/rows.ts';
import { type HubClient, HubError } from './hubClient.ts';
import type { LinkFile, LinkState } from './linkFile.ts';

/** Tells whether notes are the same without keeping them a second time. */
export const notesName = ({ note, painBefore, painAfter }: PracticeNotes): string =>
  createHash('sha256')
    .update(JSON.stringify([note, painBefore, painAfter]))
    .digest('hex');

/** Names the notes in a packed session: those of now may be newer. */
export async function packedNotesName(zip: string): Promise<string> {
  const files = await openFiles(zip);
  try {
    return notesName((await readNotes(files)) ?? NO_NOTES);
  } finally {
    await files.close();
  }
}

/** Sent sessions whose notes are not those that the hub has. */
const edited = (
  { consent, sessions }: LinkState,
  kept: readonly SessionSummary[],
): readonly SessionSummary[] =>
  consent?.send !== true
    ? []
    : kept.filter((session) => {
        const mark = sessions[session.id];
        return mark?.state === 'sent' && mark.notes !== notesName(session);
      });

/**
 * Sends the notes that were edited after their sessions had been sent. What the hub has is marked in the file, so
 * that an edit made without a connection, or before a restart, goes once it can.
 * @returns why a note was refused, or `null`
 */
export async function sendEditedNotes(
  client: HubClient,
  file: LinkFile,
  kept: readonly SessionSummary[],
): Promise<string | null> {
  let why: string | null = null;
  for (const session of edited(file.read(), kept)) {
    const { id, note, painBefore, painAfter } = session;
    try {
      await client.notes(id, { note, painBefore, painAfter });
    } catch (error) {
      if (!(error instanceof HubError) || error.passing || error.status === 401) throw error;
      // Removed there, or a hub of an older version.
      if (error.status !== 404) why = `Your note was refused: ${error.message}`;
    }
    const { sessions } = file.read();
    const mark = sessions[id];
    if (mark !== undefined)
      file.change({ sessions: { ...sessions, [id]: { ...mark, notes: notesName(session) } } });
  }
  return why;
}
