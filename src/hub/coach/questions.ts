import { sql } from 'kysely';
import type { OpenQuestion } from '../../coaching/attention.ts';
import type { Db } from '../db/open.ts';
import { type Whose, those } from './whose.ts';

/** What an answer to the note of a session goes to, where others have the id of a comment. */
const NOTE = 'note';
/** A question in a note of a reviewed session waits for so long, ms: a coach may have answered it elsewhere. A choice. */
const NOTE_WAITS_MS = 28 * 86_400_000;
const QUOTE_LENGTH = 200;

type Row = OpenQuestion & { readonly studentId: string };

/** Words of students that wait for an answer, by student, newest first, at most one a session. */
export async function openQuestions(
  db: Db,
  whose: Whose,
  nowMs: number,
): Promise<ReadonlyMap<string, readonly OpenQuestion[]>> {
  const found = [...(await lastWords(db, whose)), ...(await askingNotes(db, whose, nowMs))];
  const byStudent = new Map<string, OpenQuestion[]>();
  for (const { studentId, ...question } of found.sort((a, b) => b.atMs - a.atMs)) {
    const list = byStudent.get(studentId) ?? [];
    byStudent.set(studentId, list);
    if (!list.some(({ sessionId }) => sessionId === question.sessionId)) list.push(question);
  }
  return byStudent;
}

/** Sessions in which the student spoke last. */
async function lastWords(db: Db, whose: Whose): Promise<readonly Row[]> {
  const { rows } = await sql<Row>`
    select c.authorId as studentId, c.sessionId, max(c.atMs) as atMs, c.id as answerTo,
      substr(c.text, 1, ${QUOTE_LENGTH}) as text
    from person p join comment c on c.authorId = p.id
    where ${those(whose)} and not exists (select 1 from comment d
      where d.sessionId = c.sessionId and d.authorId <> c.authorId and d.atMs >= c.atMs)
    group by c.sessionId`.execute(db);
  return rows;
}

/** Notes with a question mark that no coach has answered: on the note, or about the whole session. */
async function askingNotes(db: Db, whose: Whose, nowMs: number): Promise<readonly Row[]> {
  const { rows } = await sql<Row>`
    select s.studentId, s.id as sessionId, s.startedMs as atMs, ${NOTE} as answerTo,
      substr(s.note, 1, ${QUOTE_LENGTH}) as text
    from person p join session s on s.studentId = p.id
    where ${those(whose)} and instr(s.note, '?') > 0
      and (s.reviewedMs is null or s.startedMs > ${nowMs - NOTE_WAITS_MS})
      and not exists (select 1 from comment d where d.sessionId = s.id and d.authorId <> s.studentId
        and (d.onNote = 1 or (d.repIndex is null and d.momentS is null and d.replyTo is null)))`.execute(
    db,
  );
  return rows;
}
