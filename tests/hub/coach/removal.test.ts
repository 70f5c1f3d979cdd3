import type { LogCheck, LogEntry } from '../../../src/streaming/hubContract/log.ts';
import { mkdir, readFile, readdir, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { DEFAULT_PLAN } from '../../../src/coaching/plan.ts';
import { note } from '../../../src/hub/log/log.ts';
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
const SECRETS = [
  NAME,
  'Wilma before',
  'wilma.logs.in',
  ID,
  'sessionofhers77',
  'a note of hers',
  'what she said',
  'what carl answered',
  'clipofhers',
  'her film.mp4',
  'a lesson with her',
  'her own laptop',
  'a plan for her',
  'why it differs',
  'stop for today, she was told',
  '192.0.2.77',
];

async function allBytes(folder: string): Promise<string> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  const files = entries.filter((e) => e.isFile()).map((e) => join(e.parentPath, e.name));
  const read = await Promise.all(files.map(async (f) => `${f}\n${await readFile(f, 'latin1')}`));
  return read.join('\n');
}

async function fill(): Promise<void> {
  const { db, places } = hub.context;
  const person = { role: 'student', passwordHash: null, hand: 'right' } as const;
  await db
    .insertInto('person')
    .values({
      ...person,
      id: ID,
      name: 'Wilma before',
      login: 'wilma.logs.in',
      active: 1,
      createdMs: 0,
      coachId: 'carl',
    })
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
  const session = 'sessionofhers77x1';
  await db
    .updateTable('session')
    .set({ differences: '["why it differs"]' })
    .where('id', '=', session)
    .execute();
  await db
    .insertInto('warning')
    .values({
      sessionId: session,
      position: 0,
      warningId: 'pain-now',
      atS: 1,
      text: 'stop for today, she was told',
    })
    .execute();
  await db.insertInto('job').values({ sessionId: session, queuedMs: 1, tries: 0 }).execute();
  await db
    .insertInto('upload')
    .values({
      studentId: ID,
      clientId: 'c',
      sha256: 'x',
      bytes: 1,
      createdMs: 1,
      sessionId: null,
    })
    .execute();
  await db
    .insertInto('machine')
    .values({
      id: `${ID}m`,
      studentId: ID,
      name: 'her own laptop',
      tokenHash: 'h',
      pairedMs: 0,
      lastSeenMs: null,
      revokedMs: null,
    })
    .execute();
  await db
    .insertInto('pairing')
    .values({ codeHash: 'p', studentId: ID, expiresMs: 1, usedMs: null })
    .execute();
  const carl = (method: 'POST' | 'PATCH', url: string, payload: object) =>
    hub.ask('carl', { method, url, payload });
  await carl('POST', '/api/invites', { role: 'student', name: 'Wilma before', studentId: ID });
  await carl('POST', `/api/sessions/${session}/comments`, { text: 'what carl answered' });
  await carl('POST', `/api/students/${ID}/lessons`, { atMs: 1, text: 'a lesson with her' });
  await carl('POST', `/api/students/${ID}/plans`, {
    plan: { ...DEFAULT_PLAN, note: 'a plan for her' },
    validFromMs: 1,
    basedOn: 1,
  });
  await hub.ask(null, {
    method: 'POST',
    url: '/api/login',
    payload: { login: 'wilma.logs.in', password: 'not the right one' },
  });
  await carl('PATCH', `/api/students/${ID}`, { name: NAME });
  const of = { sessionId: session, name: 'her film.mp4', bytes: 1, createdMs: 1 };
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
  const hers = {
    actor: { kind: 'person', id: ID },
    ip: '192.0.2.77',
  } as unknown as Parameters<typeof note>[1];
  await note(hub.context, hers, 'plan', { person: ID });
  await note(hub.context, hers, 'export', { session: 'sessionofhers77x1' });
}

it('a deleted student is nowhere in the data folder: no name, id, session, comment, film or page of the database', async () => {
  await fill();
  const before = await allBytes(hub.context.places.root);
  // the name before stands in what is left over of the database at most
  for (const secret of SECRETS.filter((s) => s !== 'Wilma before'))
    expect(before, secret).toContain(secret);
  const answer = await hub.ask('carl', {
    method: 'DELETE',
    url: `/api/students/${ID}`,
    payload: { name: NAME },
  });
  expect(answer.statusCode).toBe(204);
  const after = await allBytes(hub.context.places.root);
  for (const secret of SECRETS) expect(after.includes(secret), secret).toBe(false);
  const log = (await hub.ask('olga', { url: '/api/log' })).json<LogEntry[]>();
  const deleted = log.flatMap(({ by, act, about }) =>
    by?.name === null ? [{ by, act, about }] : [],
  );
  expect(deleted).toMatchObject([
    { act: 'export', about: { session: { student: null } } },
    { act: 'plan', about: { person: { name: null, role: 'student' } } },
  ]);
  // one and the same number stands for one and the same deleted person
  expect(new Set(deleted.map(({ by }) => by?.number)).size).toBe(1);
  expect(log[0]).toMatchObject({
    act: 'delete',
    by: { name: 'Carl' },
    about: { how: 'everything' },
  });
  const check = (await hub.ask('olga', { url: '/api/log/check' })).json<LogCheck>();
  expect(check).toEqual({ entries: log.length, brokenAt: null });
});
