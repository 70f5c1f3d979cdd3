import { join } from 'node:path';
import type { HubContext } from '../context.ts';
import type { SessionTable } from '../db/tables.ts';
import { sessionPaths } from '../sessionPaths.ts';
import { commentsOf } from './comments.ts';
import type { ExportEntry } from './exportZip.ts';
import { lessonsOf } from './lessons.ts';
import { painClosingsOf } from './painClosings.ts';
import { planVersions } from './planVersions.ts';
import { relabelsOf } from './reviewing.ts';
import { summaryOf } from './sessionViews.ts';
import { clipsOf } from './sessions.ts';
import { isDemonstration } from './counting.ts';

const README = `Everything that the hub keeps of one student.

student.json   the person, plans in all their versions, lessons, computers, pain that a coach closed with the reason, and
               of each session: counts, note, pain,
               what was written about it, kinds that the coach set by hand, films and how they are lined up.
               Times are milliseconds since 1970 (UTC), or seconds of the session.
sessions/      each recording as it came: a zip in the open format Motion-BIDS, which Stillcatch opens by itself.
analysis/      what the hub measured of each.
films/         films as they came.
manifest.json  every file with its size, and what should be here and is not.
`;

const ENDING = { 'video/mp4': 'mp4', 'video/webm': 'webm' } as const;

const personOf = ({ db }: HubContext, id: string) =>
  db
    .selectFrom('person')
    .leftJoin('person as coach', 'coach.id', 'person.coachId')
    .select([
      'person.id',
      'person.name',
      'person.login',
      'person.hand',
      'person.createdMs as joinedMs',
      'coach.name as coach',
    ])
    .where('person.id', '=', id)
    .executeTakeFirstOrThrow();

const machinesOf = ({ db }: HubContext, id: string) =>
  db
    .selectFrom('machine')
    .select(['name', 'pairedMs', 'lastSeenMs', 'revokedMs'])
    .where('studentId', '=', id)
    .execute();

async function sessionOf({ db }: HubContext, row: SessionTable, readerId: string) {
  const { id, planNumber, plan, version, differences, reviewedMs } = row;
  return {
    ...summaryOf(row, await isDemonstration(db)),
    planNumber,
    plan: JSON.parse(plan) as unknown,
    version,
    differences: JSON.parse(differences) as unknown,
    reviewedMs,
    comments: await commentsOf(db, id, readerId),
    relabels: await relabelsOf(db, id),
    clips: await clipsOf(db, id),
  };
}

/** Everything of a student as files, as `readerId` may see it. */
export async function studentEntries(
  context: HubContext,
  id: string,
  readerId: string,
): Promise<readonly ExportEntry[]> {
  const { db, places } = context;
  const rows = await db
    .selectFrom('session')
    .selectAll()
    .where('studentId', '=', id)
    .orderBy('startedMs')
    .execute();
  const sessions = [];
  for (const row of rows) sessions.push(await sessionOf(context, row, readerId));
  const all = {
    student: await personOf(context, id),
    plans: await planVersions(db, id),
    lessons: await lessonsOf(db, id),
    closedPain: await painClosingsOf(db, id),
    computers: await machinesOf(context, id),
    sessions,
  };
  const clips = sessions.flatMap((session) => session.clips);
  return [
    { name: 'README.txt', text: README },
    { name: 'student.json', text: JSON.stringify(all, null, 2) },
    ...rows.map((row) => ({
      name: `sessions/${row.id}.zip`,
      path: sessionPaths(places, id, row.id).zip,
    })),
    ...rows
      .filter(({ analysed }) => analysed === 1)
      .map((row) => ({
        name: `analysis/${row.id}.json`,
        path: sessionPaths(places, id, row.id).analysis,
      })),
    ...clips.map((clip) => ({
      name: `films/${clip.id}.${ENDING[clip.type]}`,
      path: join(places.clips, clip.id),
    })),
  ];
}
