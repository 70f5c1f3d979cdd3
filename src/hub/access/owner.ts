import type { Db } from '../db/open.ts';
import type { Owner, Subject } from './access.ts';

/** The part of the path that names each subject. */
export const PARAMETER: Readonly<Record<Subject, string>> = {
  student: 'studentId',
  session: 'sessionId',
  clip: 'clipId',
  comment: 'commentId',
  machine: 'machineId',
  plan: 'planId',
  lesson: 'lessonId',
  painClosing: 'painClosingId',
};

/** Whose it is; `null` where there is no such thing. */
export async function ownerOf(db: Db, subject: Subject, id: string): Promise<Owner | null> {
  const studentId = await studentOf(db, subject, id);
  if (studentId === undefined) return null;
  const row = await db
    .selectFrom('person')
    .select(['id as studentId', 'coachId'])
    .where('id', '=', studentId)
    .where('role', '=', 'student')
    .executeTakeFirst();
  return row ?? null;
}

async function studentOf(db: Db, subject: Subject, id: string): Promise<string | undefined> {
  switch (subject) {
    case 'student':
      return id;
    case 'clip':
    case 'comment': {
      const row = await db
        .selectFrom(subject)
        .innerJoin('session', 'session.id', `${subject}.sessionId`)
        .select('session.studentId')
        .where(`${subject}.id`, '=', id)
        .executeTakeFirst();
      return row?.studentId;
    }
    default: {
      const row = await db
        .selectFrom(subject)
        .select('studentId')
        .where('id', '=', id)
        .executeTakeFirst();
      return row?.studentId;
    }
  }
}
