import { createReadStream } from 'node:fs';
import { mkdtemp, open, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { FastifyInstance } from 'fastify';
import { Zip, ZipPassThrough } from 'fflate';
import { Refused } from '../../streaming/apiErrors.ts';
import { person } from '../access/guard.ts';
import { note } from '../audit.ts';
import type { HubContext } from '../context.ts';
import { config, line, one, only, typed } from '../parts/api.ts';
import { sessionPaths } from '../sessionPaths.ts';
import { lessonsOf } from './lessons.ts';
import { planVersions } from './planVersions.ts';
import { commentsOf } from './comments.ts';
import { removeStudent } from './removeStudent.ts';
import { summaryOf } from './sessionViews.ts';

interface Entry {
  readonly name: string;
  /** A file, or its content. */
  readonly path?: string;
  readonly text?: string;
}

/** Packs into a file piece by piece: films and recordings never stand in memory whole. */
async function pack(entries: readonly Entry[], out: string): Promise<void> {
  const file = await open(out, 'w', 0o600);
  let ready: Uint8Array[] = [];
  let failed: Error | null = null;
  const zip = new Zip((error, bytes) => {
    failed = error ?? failed;
    ready.push(bytes);
  });
  const drain = async (): Promise<void> => {
    if (failed !== null) throw failed;
    const parts = ready;
    ready = [];
    for (const bytes of parts) await file.writeFile(bytes);
  };
  try {
    for (const { name, path, text } of entries) {
      const entry = new ZipPassThrough(name);
      zip.add(entry);
      if (text !== undefined) entry.push(new TextEncoder().encode(text), false);
      if (path !== undefined)
        for await (const chunk of createReadStream(path)) {
          entry.push(new Uint8Array(chunk as Buffer), false);
          await drain();
        }
      entry.push(new Uint8Array(0), true);
      await drain();
    }
    zip.end();
    await drain();
  } finally {
    await file.close();
  }
}

async function entriesOf({ db, places }: HubContext, id: string, readerId: string) {
  const student = await db
    .selectFrom('person')
    .select(['name', 'hand', 'createdMs as joinedMs'])
    .where('id', '=', id)
    .executeTakeFirstOrThrow();
  const rows = await db
    .selectFrom('session')
    .selectAll()
    .where('studentId', '=', id)
    .orderBy('startedMs')
    .execute();
  const clips = await db
    .selectFrom('clip')
    .innerJoin('session', 'session.id', 'clip.sessionId')
    .select(['clip.id', 'clip.sessionId', 'clip.name', 'clip.type', 'clip.startS', 'clip.view'])
    .where('session.studentId', '=', id)
    .execute();
  const relabels = await db
    .selectFrom('relabel')
    .innerJoin('session', 'session.id', 'relabel.sessionId')
    .selectAll('relabel')
    .where('session.studentId', '=', id)
    .execute();
  const sessions = [];
  for (const row of rows)
    sessions.push({
      ...summaryOf(row),
      reviewedMs: row.reviewedMs,
      comments: await commentsOf(db, row.id, readerId),
    });
  const all = {
    student,
    plans: await planVersions(db, id),
    lessons: await lessonsOf(db, id),
    sessions,
    relabels,
    clips,
  };
  const ending = { 'video/mp4': 'mp4', 'video/webm': 'webm' } as const;
  return [
    { name: 'student.json', text: JSON.stringify(all, null, 2) },
    ...rows.map((row) => ({
      name: `sessions/${row.id}.zip`,
      path: sessionPaths(places, id, row.id).zip,
    })),
    ...clips.map((clip) => ({
      name: `films/${clip.id}.${ending[clip.type]}`,
      path: join(places.clips, clip.id),
    })),
  ] satisfies Entry[];
}

/** Everything of one student, to be taken along or deleted. */
export function studentData(api: FastifyInstance, context: HubContext): void {
  const { db } = context;
  typed(api).get(
    '/students/:studentId/export',
    {
      config: config({ who: 'student-or-coach', of: 'student' }),
      schema: { params: one('student') },
    },
    async (request, reply) => {
      const id = request.params.studentId!;
      const folder = await mkdtemp(join(tmpdir(), 'stillcatch-export-'));
      const out = join(folder, 'all.zip');
      const gone = (): Promise<void> => rm(folder, { recursive: true, force: true });
      try {
        await pack(await entriesOf(context, id, person(request).id), out);
      } catch (error) {
        await gone();
        throw error;
      }
      await note(context, request, 'export', `student ${id}`);
      const body = createReadStream(out);
      body.once('close', () => void gone());
      return reply
        .type('application/zip')
        .header('content-disposition', `attachment; filename="stillcatch-student-${id}.zip"`)
        .send(body);
    },
  );
  typed(api).delete(
    '/students/:studentId',
    {
      config: config({ who: 'coach-of', of: 'student' }),
      schema: { params: one('student'), body: only({ name: line(80) }) },
    },
    async (request, reply) => {
      const id = request.params.studentId!;
      const { name } = await db
        .selectFrom('person')
        .select('name')
        .where('id', '=', id)
        .executeTakeFirstOrThrow();
      if (name !== request.body.name.trim())
        throw new Refused(400, 'name', 'The name that was typed is not the name of the student.');
      await removeStudent(context, id, name);
      // Not who it was.
      await note(context, request, 'delete', 'everything of one student');
      return reply.code(204).send();
    },
  );
}
