import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { cookieName } from '../../src/hub/access/cookies.ts';
import { hashOf, newToken } from '../../src/streaming/secrets.ts';
import { signIn } from '../../src/hub/access/signin.ts';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import { keptSession } from './keptSession.ts';
import { type TestHub, testHub } from './testHub.ts';

/**
 * Everything that an address can name is sam's or carl's. Carl is coach of sam and sue, dora of rick; olga owns the club
 * and does not coach sam. The last four are known to nobody any more.
 */
const ACTORS = [
  'nobody',
  'sam',
  'sue',
  'rick',
  'carl',
  'dora',
  'olga',
  'sam:machine',
  'revoked machine',
  'coach locked out',
  'expired sign-in',
] as const;

/** One sign for each actor: `+` gets through, 1 sign in first (401), 3 not for this account (403), 4 as though not there (404). */
const ANYONE = '+++++++++++';
const SIGNED_IN = '1++++++3111';
const COACHES = '1333+++3111';
const OWNER = '133333+3111';
const STUDENTS = '1+++3333111';
const SAM_AND_CARL = '1+44+443111';
const CARL = '1333+443111';
const MACHINES = '1333333+111';

/** Who may what: decided here by hand, so that a slip in a route's own rule is seen. */
const ROWS: Readonly<Record<string, string>> = {
  'GET /api/setup': ANYONE,
  'POST /api/setup': ANYONE,
  'POST /api/login': ANYONE,
  'GET /api/invitation/:code': ANYONE,
  'POST /api/invitation/:code': ANYONE,
  'POST /api/pair': ANYONE,

  'GET /api/me': SIGNED_IN,
  'POST /api/me/password': SIGNED_IN,
  'POST /api/me/sign-out-elsewhere': SIGNED_IN,
  'POST /api/logout': SIGNED_IN,
  'POST /api/me/pairing': STUDENTS,

  'GET /api/invites': COACHES,
  'POST /api/invites': COACHES,
  'DELETE /api/invites/:inviteId': CARL,
  'GET /api/students': COACHES,
  'GET /api/templates': COACHES,
  'POST /api/templates': COACHES,
  'DELETE /api/templates/:templateId': CARL,
  'GET /api/blocks': COACHES,
  'POST /api/blocks': COACHES,
  'PUT /api/blocks/:blockId': CARL,
  'DELETE /api/blocks/:blockId': CARL,

  'GET /api/club': OWNER,
  'GET /api/club/students': OWNER,
  'PATCH /api/coaches/:coachId': OWNER,
  'PUT /api/students/:studentId/coach': OWNER,
  'GET /api/log': OWNER,
  'GET /api/log/check': OWNER,
  'GET /api/club/failed-analyses': OWNER,
  'POST /api/club/failed-analyses/:sessionId': OWNER,

  'GET /api/students/:studentId': CARL,
  'PATCH /api/students/:studentId': CARL,
  'DELETE /api/students/:studentId': CARL,
  'POST /api/students/:studentId/plans': CARL,
  'POST /api/students/:studentId/lessons': CARL,
  'POST /api/students/:studentId/import': CARL,
  'DELETE /api/lessons/:lessonId': CARL,
  'PUT /api/sessions/:sessionId/reviewed': CARL,
  'POST /api/sessions/:sessionId/analysis': CARL,
  'POST /api/students/:studentId/pain-closings': CARL,
  'DELETE /api/pain-closings/:painClosingId': CARL,
  'POST /api/calm-reviews': COACHES,
  'DELETE /api/calm-reviews/:calmReviewId': CARL,
  'PUT /api/sessions/:sessionId/relabels/:index': CARL,

  'GET /api/students/:studentId/machines': SAM_AND_CARL,
  'DELETE /api/machines/:machineId': SAM_AND_CARL,
  'GET /api/students/:studentId/last': SAM_AND_CARL,
  'GET /api/students/:studentId/sessions': SAM_AND_CARL,
  'GET /api/students/:studentId/plans': SAM_AND_CARL,
  'GET /api/students/:studentId/progress': SAM_AND_CARL,
  'GET /api/students/:studentId/compare': SAM_AND_CARL,
  'GET /api/students/:studentId/export': SAM_AND_CARL,
  'GET /api/sessions/:sessionId': SAM_AND_CARL,
  'DELETE /api/sessions/:sessionId': SAM_AND_CARL,
  'POST /api/sessions/:sessionId/comments': SAM_AND_CARL,
  'POST /api/sessions/:sessionId/clips': SAM_AND_CARL,
  'GET /api/sessions/:sessionId/overview': SAM_AND_CARL,
  'GET /api/sessions/:sessionId/curves/:index': SAM_AND_CARL,
  'GET /api/sessions/:sessionId/export/:format': SAM_AND_CARL,
  // of two who may see it, only the one who wrote it
  'DELETE /api/comments/:commentId': '1+44?443111',
  'GET /api/clips/:clipId': SAM_AND_CARL,
  'PATCH /api/clips/:clipId': SAM_AND_CARL,
  'DELETE /api/clips/:clipId': SAM_AND_CARL,

  'GET /api/machine/inbox': MACHINES,
  'POST /api/machine/comments': MACHINES,
  'PATCH /api/machine/sessions/:clientId/notes': MACHINES,
  'POST /api/machine/plan-seen': MACHINES,
  'DELETE /api/machine': MACHINES,
  'PUT /api/machine/uploads/:clientId': MACHINES,
  'GET /api/machine/uploads/:clientId': MACHINES,
  'PATCH /api/machine/uploads/:clientId': MACHINES,
};

/** Where the body is looked at before whose the thing is. */
const BODIES: Readonly<Record<string, object>> = {
  'PUT /api/blocks/:blockId': { title: 'x', text: 'x' },
};

const CODE = newToken();
const IDS: Readonly<Record<string, string>> = {
  studentId: 'sam',
  sessionId: 's1',
  clipId: 'k1',
  commentId: 'c1',
  machineId: 'samOther',
  planId: 'p1',
  lessonId: 'l1',
  painClosingId: 'pc1',
  calmReviewId: 'cr1',
  inviteId: 'i1',
  templateId: 't1',
  blockId: 'b1',
  coachId: 'carl',
  clientId: 'u1',
  code: CODE,
  index: '1',
  format: 'json',
};
const addressOf = (url: string): string =>
  url.replaceAll(/:(\w+)/g, (_all, name: string) => {
    const id = IDS[name];
    if (id === undefined) throw new Error(`Say in IDS of this file what :${name} is of ${url}`);
    return id;
  });

let hub: TestHub;
const gone = new Map<string, Record<string, string>>();

/** What the addresses name, again: some requests remove it. */
async function lay(): Promise<void> {
  const { db, places } = hub.context;
  const at = hub.clock.ms;
  for (const table of [
    'session',
    'invite',
    'template',
    'block',
    'lesson',
    'plan',
    'painClosing',
  ] as const)
    await db.deleteFrom(table).execute();
  await db
    .insertInto('session')
    .values({
      ...keptSession('s1', 'sam', 1),
      reviewedIn: 'cr1',
      reviewedBy: 'carl',
      reviewedMs: at,
    })
    .execute();
  const empty = { repIndex: null, momentS: null, replyTo: null };
  await db
    .insertInto('comment')
    .values({ ...empty, id: 'c1', sessionId: 's1', atMs: 1, authorId: 'sam', text: 'x' })
    .execute();
  const film = { bytes: 1, createdMs: 1, startS: null, view: null, type: 'video/mp4' as const };
  await db
    .insertInto('clip')
    .values({ ...film, id: 'k1', sessionId: 's1', byId: 'sam', name: 'x' })
    .execute();
  await writeFile(join(places.clips, 'k1'), 'x');
  await mkdir(join(places.students, 'sam'), { recursive: true });
  await writeFile(join(places.students, 'sam', 's1.zip'), 'x');
  await db
    .insertInto('lesson')
    .values({ id: 'l1', studentId: 'sam', atMs: 1, text: 'x' })
    .execute();
  const closed = { sessionId: 's1', throughMs: 1, reason: 'x', byId: 'carl', atMs: 1 };
  await db
    .insertInto('painClosing')
    .values({ ...closed, id: 'pc1', studentId: 'sam', reopenedMs: null })
    .execute();
  const plan = JSON.stringify(DEFAULT_PLAN);
  const valid = { validFromMs: 0, createdMs: 0, byId: 'carl', reachedMs: null };
  await db
    .insertInto('plan')
    .values({ ...valid, id: 'p1', studentId: 'sam', number: 1, plan })
    .execute();
  await db.insertInto('template').values({ id: 't1', coachId: 'carl', name: 'x', plan }).execute();
  await db
    .insertInto('block')
    .values({ id: 'b1', coachId: 'carl', title: 'x', text: 'x' })
    .execute();
  const invite = { role: 'student' as const, name: 'x', byId: 'carl', usedMs: null };
  await db
    .insertInto('invite')
    .values({
      ...invite,
      id: 'i1',
      codeHash: hashOf(CODE),
      createdMs: at,
      expiresMs: at + 1e9,
      personId: null,
    })
    .execute();
  await db
    .updateTable('machine')
    .set({ revokedMs: null })
    .where('id', '!=', 'samRevoked')
    .execute();
}

async function addPeople(): Promise<void> {
  const { db } = hub.context;
  const like = await db
    .selectFrom('person')
    .selectAll()
    .where('id', '=', 'carl')
    .executeTakeFirstOrThrow();
  await db
    .insertInto('person')
    .values([
      { ...like, id: 'dora', login: 'dora' },
      { ...like, id: 'lena', login: 'lena' },
    ])
    .execute();
  await db
    .insertInto('person')
    .values({ ...like, id: 'rick', login: 'rick', role: 'student', coachId: 'dora' })
    .execute();
  const machine = { studentId: 'sam', name: 'x', pairedMs: 0, lastSeenMs: null };
  const token = newToken();
  await db
    .insertInto('machine')
    .values([
      { ...machine, id: 'samOther', tokenHash: hashOf(newToken()), revokedMs: null },
      { ...machine, id: 'samRevoked', tokenHash: hashOf(token), revokedMs: 1 },
    ])
    .execute();
  gone.set('nobody', {});
  gone.set('revoked machine', { authorization: `Bearer ${token}` });
  const cookie = async (who: string, atMs: number): Promise<Record<string, string>> => {
    const signedIn = await signIn(db, who, atMs);
    const { csrf } = await db
      .selectFrom('signin')
      .select('csrf')
      .where('tokenHash', '=', hashOf(signedIn))
      .executeTakeFirstOrThrow();
    return { cookie: `${cookieName(false)}=${signedIn}`, 'x-csrf-token': csrf };
  };
  gone.set('coach locked out', await cookie('lena', hub.clock.ms));
  await db.updateTable('person').set({ active: 0 }).where('id', '=', 'lena').execute();
  gone.set('expired sign-in', await cookie('carl', hub.clock.ms - 31 * 86_400_000));
}

beforeAll(async () => {
  hub = await testHub();
  await addPeople();
}, 60_000);
afterAll(() => hub.close());

async function ask(who: string, name: string): Promise<{ status: number; code: string }> {
  const [method, url = ''] = name.split(' ') as ['GET', string];
  const headers = gone.get(who);
  const payload = BODIES[name];
  const answer = await hub.ask(headers === undefined ? who : null, {
    method,
    url: addressOf(url),
    ...(headers !== undefined && { headers }),
    ...(payload !== undefined && { payload }),
  });
  const isJson = String(answer.headers['content-type']).startsWith('application/json');
  const said = isJson && answer.body !== '' ? answer.json<{ error?: { code?: string } }>() : null;
  return { status: answer.statusCode, code: said?.error?.code ?? '' };
}

const STATUS: Readonly<Record<string, number>> = { '1': 401, '3': 403, '4': 404 };
const REFUSED = /^(sign-in|forbidden|csrf|another-site)$/;

/** What is wrong with what `who` was told; empty where it is as in the table. */
async function faultOf(name: string, who: string, sign: string): Promise<string[]> {
  const { status, code } = await ask(who, name);
  const told = `${name} as ${who}: ${status} ${code}`;
  const wanted = STATUS[sign];
  if (wanted !== undefined) return status === wanted ? [] : [`${told}, not ${wanted}`];
  if (sign === '?') return status < 500 ? [] : [told];
  // what a recording would be read for is not behind the row
  const turnedAway =
    status >= 500 || REFUSED.test(code) || (status === 404 && code === 'not-found');
  return turnedAway ? [`${told}, and should get through`] : [];
}

describe('every route of the hub', () => {
  it('stands in the table of this test', () => {
    const routes = hub.routes.map(({ method, url }) => `${method} ${url}`);
    for (const name of routes)
      expect(
        ROWS[name],
        `${name} is new: add its row to ROWS in tests/hub/matrix.test.ts and think anew of who may use it; do not copy the route's rule.`,
      ).toHaveLength(ACTORS.length);
    expect(
      Object.keys(ROWS).filter((name) => !routes.includes(name)),
      'rows of routes that are gone: take them out',
    ).toEqual([]);
  });

  it('lets through who may and nobody else, with ids of things that are there', async () => {
    const faults: string[] = [];
    for (const [name, row] of Object.entries(ROWS)) {
      await lay();
      // refusals first: who gets through may remove the thing
      const cells = ACTORS.map((who, i) => [who, row[i] ?? ''] as const);
      for (const [who, sign] of cells.filter(([, s]) => s in STATUS))
        faults.push(...(await faultOf(name, who, sign)));
      for (const [who, sign] of cells.filter(([, s]) => !(s in STATUS))) {
        if (!name.startsWith('GET')) await lay();
        faults.push(...(await faultOf(name, who, sign)));
      }
    }
    expect(faults).toEqual([]);
  }, 120_000);

  it('that changes something needs the token of the page', async () => {
    await lay();
    const changing = hub.routes.filter(
      ({ method, access }) =>
        method !== 'GET' && access.who !== 'anyone' && access.who !== 'machine',
    );
    expect(changing.length).toBeGreaterThan(20);
    for (const { method, url, access } of changing) {
      const who = access.who === 'student' ? 'sam' : access.who === 'owner' ? 'olga' : 'carl';
      const answer = await hub.ask(who, {
        method: method as 'POST',
        url: addressOf(url),
        headers: { 'x-csrf-token': 'another' },
      });
      expect(answer.statusCode, `${method} ${url}`).toBe(403);
      expect(answer.json(), `${method} ${url}`).toMatchObject({ error: { code: 'csrf' } });
    }
  });
});
