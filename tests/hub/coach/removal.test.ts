import { mkdir, readFile, readdir, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { note } from '../../../src/hub/audit.ts';
import { sessionPaths } from '../../../src/hub/sessionPaths.ts';
import { type TestHub, testHub } from '../testHub.ts';
import { addPlan, addSession } from './rows.ts';

let hub: TestHub;
beforeEach(async () => {
  hub = await testHub();
});
afterEach(() => hub.close());

const NAME = 'Wilhelmina Oskarsdatter';
const ID = 'unmistakable99';
const SECRETS = [NAME, ID, 'sessionofhers77', 'a note of hers', 'what she said', 'clipofhers'];

async function allBytes(folder: string): Promise<string> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  const files = entries.filter((e) => e.isFile()).map((e) => join(e.parentPath, e.name));
  const read = await Promise.all(files.map(async (f) => `${f}\n${await readFile(f, 'latin1')}`));
  return read.join('\n');
}

async function fill(): Promise<void> {
  const { db, places } = hub.context;
  const person = { role: 'student', login: null, passwordHash: null, hand: 'right' } as const;
  await db
    .insertInto('person')
    .values({ ...person, id: ID, name: NAME, active: 1, createdMs: 0, coachId: 'carl' })
    .execute();
  await addPlan(hub, ID, 1);
  for (let i = 0; i < 40; i++)
    await addSession(hub, {
      id: `sessionofhers77x${i}`,
      studentId: ID,
      startedMs: i,
      note: 'a note of hers',
    });
  const paths = sessionPaths(places, ID, 'sessionofhers77x1');
  await mkdir(dirname(paths.zip), { recursive: true });
  await writeFile(paths.zip, 'zip');
  await writeFile(join(places.clips, 'clipofhers'), 'film');
  await writeFile(join(places.uploads, `${ID}-s3.part`), 'half');
  const of = { sessionId: 'sessionofhers77x1', name: 'x', bytes: 1, createdMs: 1 };
  await db
    .insertInto('clip')
    .values({ ...of, id: 'clipofhers', byId: ID, type: 'video/mp4', startS: null, view: null })
    .execute();
  await db
    .insertInto('comment')
    .values({
      id: 'c1',
      sessionId: 'sessionofhers77x1',
      authorId: ID,
      atMs: 1,
      text: 'what she said',
      repIndex: null,
      momentS: null,
      replyTo: null,
    })
    .execute();
  const request = { actor: null, ip: '::1' } as unknown as Parameters<typeof note>[1];
  await note(hub.context, request, 'join', `student ${NAME}`);
  await note(hub.context, request, 'plan', `student ${ID}`);
  await note(hub.context, request, 'join', 'student Wilhelmina');
}

it('a deleted student is nowhere in the data folder: no name, id, session, comment, film or page of the database', async () => {
  await fill();
  const before = await allBytes(hub.context.places.root);
  for (const secret of SECRETS) expect(before, secret).toContain(secret);
  const answer = await hub.ask('carl', {
    method: 'DELETE',
    url: `/api/students/${ID}`,
    payload: { name: NAME },
  });
  expect(answer.statusCode).toBe(204);
  const after = await allBytes(hub.context.places.root);
  for (const secret of SECRETS) expect(after.includes(secret), secret).toBe(false);
  const log = await hub.context.db.selectFrom('audit').select('what').orderBy('id').execute();
  expect(log.map((entry) => entry.what)).toEqual([
    'student a deleted student',
    'student a deleted student',
    'student Wilhelmina',
    'everything of one student',
  ]);
});
