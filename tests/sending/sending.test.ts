import { readFileSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import { codeHash } from '../../src/hub/access/secrets.ts';
import { sessionPaths } from '../../src/hub/sessionPaths.ts';
import {
  type CoachService,
  type CoachServiceOptions,
  coachService,
} from '../../src/sending/coachLink.ts';
import { checkedHubUrl } from '../../src/sending/hubUrl.ts';
import { readHere } from '../../src/sessions/store/reading.ts';
import { type SessionStore, openStore } from '../../src/sessions/store/store.ts';
import type { CoachLink } from '../../src/streaming/hubContract/coachLink.ts';
import { type TestHub, testHub } from '../hub/testHub.ts';
import { listen, sessionsOf, sha256 } from '../hub/uploads/sending.ts';
import { scratch } from '../sessions/makeSession.ts';
import { type Line, lineTo } from './line.ts';

const recording = (name: string): string =>
  fileURLToPath(new URL(`../../recordings/${name}.zip`, import.meta.url));

let hub: TestHub;
let line: Line;
let store: SessionStore;
let data: string;
let coach: CoachService;

const start = (more: Partial<CoachServiceOptions> = {}): CoachService =>
  coachService({
    ...more,
    store,
    now: () => hub.clock.ms,
    say: () => undefined,
    practising: () => false,
    pausesMs: [50],
  });

beforeEach(async () => {
  hub = await testHub();
  line = await lineTo(await listen(hub));
  data = scratch();
  store = await openStore(data, { reading: readHere });
  coach = start();
});
afterEach(async () => {
  await coach.close();
  await store.close();
  line.close();
  await hub.close();
});

async function connect(): Promise<void> {
  const code = 'ABCDE-FGHJK';
  await hub.context.db
    .insertInto('pairing')
    .values({ codeHash: codeHash(code), studentId: 'sam', expiresMs: 1e15, usedMs: null })
    .execute();
  await coach.connect({ hubUrl: line.url, code, machine: 'Garage' });
}

const PATIENCE = { timeout: 240_000, interval: 20 };

const until = (right: (link: CoachLink) => boolean): Promise<CoachLink> =>
  vi.waitFor(async () => {
    const link = await coach.view();
    if (!right(link)) throw new Error(JSON.stringify(link));
    return link;
  }, PATIENCE);
const allSent = (link: CoachLink): boolean => link.sessions.every((s) => s.state === 'sent');

describe('sending to a coach', () => {
  it('begins only when the student has agreed', async () => {
    await store.importSession(recording('right-mixed'));
    await connect();
    await until((link) => link.lastContactMs !== null);
    expect((await coach.view()).sessions).toMatchObject([{ state: 'kept' }]);
    expect(await sessionsOf(hub, 'sam')).toEqual([]);
    coach.consent({ send: true, older: true });
    await until(allSent);
    expect(await sessionsOf(hub, 'sam')).toMatchObject([{ simulated: 1 }]);
  });

  it('leaves older sessions where only new ones were agreed to', async () => {
    await store.importSession(recording('right-mixed'));
    hub.clock.ms = Date.now() + 60_000; // a recording without a date has that of its file
    await connect();
    coach.consent({ send: true });
    await until((link) => link.lastContactMs !== null);
    expect((await coach.view()).sessions).toMatchObject([{ state: 'kept' }]);
  });

  it('gets through a line that breaks again and again, and a hub that is away for a while', async () => {
    const id = await store.importSession(recording('right-mixed'));
    const zip = join(scratch(), 'a.zip');
    await store.exportZip(id, zip);
    await connect();
    line.cutAfter(300_000);
    coach.consent({ send: true, older: true });
    await until((link) => link.problem !== null);
    line.cut();
    await until((link) => link.sessions[0]!.state !== 'sent' && link.problem !== null);
    expect((await coach.view()).problem).toBe('The hub is not responding.');
    line.mend();
    await until(allSent);
    const [session] = await sessionsOf(hub, 'sam');
    const kept = readFileSync(sessionPaths(hub.context.places, 'sam', session!.id).zip);
    expect(sha256(kept)).toBe(sha256(readFileSync(zip)));
    await vi.waitFor(() => expect(readdirSync(join(data, 'sending'))).toEqual([]), PATIENCE);
  });

  it('goes on in the middle after the program was started anew', async () => {
    await store.importSession(recording('right-mixed'));
    await connect();
    line.cutAfter(400_000);
    coach.consent({ send: true, older: true });
    await until((link) => link.problem !== null);
    line.cut();
    await coach.close();
    const partly = await hub.context.db.selectFrom('upload').selectAll().execute();
    expect(partly).toMatchObject([{ sessionId: null }]);
    line.mend();
    coach = start();
    await until((link) => link.sessions.length === 1 && allSent(link));
    expect(await sessionsOf(hub, 'sam')).toHaveLength(1);
  });

  it('sends a note that was edited later, once it can, also after a restart, and once', async () => {
    const id = await store.importSession(recording('right-mixed'));
    await store.annotate(id, { note: 'first' });
    await connect();
    coach.consent({ send: true, older: true });
    await until(allSent);
    const noteThere = async () => (await sessionsOf(hub, 'sam'))[0]!;
    expect(await noteThere()).toMatchObject({ note: 'first', noteEditedMs: null });
    line.cut();
    await store.annotate(id, { note: 'second', painAfter: 3 });
    coach.wake();
    await until((link) => link.problem !== null);
    await coach.close();
    coach = start();
    await until((link) => link.problem !== null);
    expect(await noteThere()).toMatchObject({ note: 'first' });
    line.mend();
    const edited = { note: 'second', painAfter: 3, noteEditedMs: hub.clock.ms };
    await vi.waitFor(async () => expect(await noteThere()).toMatchObject(edited), PATIENCE);
    await until((link) => link.problem === null);
    // What was sent is not sent again: the hub would take it for an edit.
    await hub.context.db.updateTable('session').set({ note: 'of the hub' }).execute();
    hub.clock.ms += 1000;
    coach.wake();
    await until((link) => link.lastContactMs === hub.clock.ms);
    await coach.close();
    expect(await noteThere()).toMatchObject({ note: 'of the hub' });
  });

  it('sends what was edited while its session was on the way', async () => {
    const id = await store.importSession(recording('right-mixed'));
    await connect();
    line.cutAfter(400_000);
    coach.consent({ send: true, older: true });
    await until((link) => link.problem !== null);
    await store.annotate(id, { note: 'while sending' });
    await until(allSent);
    const there = async () => (await sessionsOf(hub, 'sam'))[0]?.note;
    await vi.waitFor(async () => expect(await there()).toBe('while sending'), PATIENCE);
  });

  it('sends no note once the student has said that nothing is to be sent', async () => {
    const id = await store.importSession(recording('right-mixed'));
    await connect();
    coach.consent({ send: true, older: true });
    await until(allSent);
    coach.consent({ send: false });
    await store.annotate(id, { note: 'for myself' });
    hub.clock.ms += 1000;
    coach.wake();
    await until((link) => link.lastContactMs === hub.clock.ms);
    await coach.close();
    expect(await sessionsOf(hub, 'sam')).toMatchObject([{ note: '' }]);
  });

  it('leaves out what was deleted', async () => {
    const id = await store.importSession(recording('right-mixed'));
    await store.importSession(recording('left-mixed'));
    await store.remove(id);
    await connect();
    coach.consent({ send: true, older: true });
    await until((link) => link.lastContactMs !== null && allSent(link));
    expect(await sessionsOf(hub, 'sam')).toMatchObject([{ hand: 'left' }]);
  });

  it('keeps the token from other people of the computer, and from the page', async () => {
    await connect();
    const path = join(data, 'coach.json');
    expect(statSync(path).mode & 0o777).toBe(0o600);
    const { token } = (JSON.parse(readFileSync(path, 'utf8')) as { connection: { token: string } })
      .connection;
    expect(JSON.stringify(await coach.view())).not.toContain(token);
  });

  it('ends when the student disconnects: the token is worth nothing, what was sent stays', async () => {
    await store.importSession(recording('right-mixed'));
    await connect();
    coach.consent({ send: true, older: true });
    await until(allSent);
    await coach.disconnect();
    expect((await coach.view()).connection).toBeNull();
    const machines = await hub.context.db
      .selectFrom('machine')
      .select('revokedMs')
      .where('name', '=', 'Garage')
      .execute();
    expect(machines).toEqual([{ revokedMs: hub.clock.ms }]);
    expect(await sessionsOf(hub, 'sam')).toHaveLength(1);
  });

  it('says so when the hub has revoked this computer', async () => {
    await connect();
    await hub.context.db.updateTable('machine').set({ revokedMs: 1 }).execute();
    coach.wake();
    const link = await until((l) => l.problem !== null);
    expect(link.problem).toMatch(/no longer knows this computer/);
  });
});

describe('what the coach has to say', () => {
  const planned = (holdS: number) => ({
    ...DEFAULT_PLAN,
    targets: { ...DEFAULT_PLAN.targets, holdS: { min: holdS } },
  });

  it('is there without the hub: plan, comments, and answers that wait', async () => {
    await store.importSession(recording('right-mixed'));
    await connect();
    coach.consent({ send: true, older: true });
    await until(allSent);
    const { db } = hub.context;
    const [session] = await sessionsOf(hub, 'sam');
    await db
      .insertInto('plan')
      .values({
        id: 'p9',
        studentId: 'sam',
        number: 9,
        plan: JSON.stringify(planned(1.7)),
        validFromMs: 0,
        createdMs: 1,
        byId: 'carl',
        reachedMs: null,
      })
      .execute();
    await db
      .insertInto('comment')
      .values({
        id: 'coachcomment1234',
        sessionId: session!.id,
        authorId: 'carl',
        atMs: 5,
        text: 'Wait.',
        repIndex: 2,
        momentS: null,
        replyTo: null,
      })
      .execute();
    coach.wake();
    await until((link) => link.unread === 1);
    expect(coach.plan()?.targets.holdS).toEqual({ min: 1.7 });
    await vi.waitFor(async () => {
      const plan = await db
        .selectFrom('plan')
        .select('reachedMs')
        .where('id', '=', 'p9')
        .executeTakeFirstOrThrow();
      expect(plan.reachedMs).toBe(hub.clock.ms);
    });
    line.cut();
    coach.seen();
    const thread = (await coach.view()).inbox!.threads[0]!;
    coach.reply({
      clientId: thread.clientId,
      text: 'I will.',
      index: 2,
      replyTo: 'coachcomment1234',
    });
    await coach.close();
    coach = start();
    await until((link) => link.problem !== null && link.outbox.length === 1);
    expect((await coach.view()).unread).toBe(0);
    expect(coach.plan()?.targets.holdS).toEqual({ min: 1.7 });
    line.mend();
    await until((link) => link.outbox.length === 0);
    const said = await db
      .selectFrom('comment')
      .select('text')
      .where('authorId', '=', 'sam')
      .execute();
    expect(said).toEqual([{ text: 'I will.' }]);
  });
});

describe('while a page is open', () => {
  it('a plan and a comment are there as soon as the coach has given them', async () => {
    await store.importSession(recording('right-mixed'));
    await connect();
    coach.consent({ send: true, older: true });
    await until(allSent);
    await coach.close();
    let open = false;
    coach = start({ watched: () => open, listeningMs: { look: 5, least: 5 } });
    await vi.waitFor(async () => expect((await coach.view()).inbox?.plan).toBeNull(), PATIENCE);
    open = true;
    const [session] = await sessionsOf(hub, 'sam');
    const plan = { ...DEFAULT_PLAN, name: 'Slower' };
    const url = '/api/students/sam/plans';
    await hub.ask('carl', { method: 'POST', url, payload: { plan, validFromMs: 0, basedOn: 0 } });
    await until((link) => link.inbox?.plan?.plan.name === 'Slower');
    expect(coach.plan()?.name).toBe('Slower');
    await hub.ask('carl', {
      method: 'POST',
      url: `/api/sessions/${session!.id}/comments`,
      payload: { text: 'Better.' },
    });
    await until((link) => link.unread === 1);
  });
});

describe('the hub’s address', () => {
  it.each([
    ['https://hub.example.org', 'https://hub.example.org'],
    ['hub.example.org/', 'https://hub.example.org'],
    ['http://localhost:7411', 'http://localhost:7411'],
    ['http://127.0.0.1:7411/', 'http://127.0.0.1:7411'],
  ])('%s is taken', (typed, used) => expect(checkedHubUrl(typed, false)).toBe(used));

  it('is refused where others could read along, unless that was confirmed', () => {
    expect(() => checkedHubUrl('http://hub.example.org', false)).toThrow(/not encrypted/);
    expect(() => checkedHubUrl('http://127.0.0.1.example.org', false)).toThrow(/not encrypted/);
    expect(checkedHubUrl('http://192.168.1.5:7411', true)).toBe('http://192.168.1.5:7411');
  });

  it.each(['', 'ftp://hub.example.org', 'https://', 'https://me:pw@hub.example.org'])(
    '“%s” is refused',
    (typed) => expect(() => checkedHubUrl(typed, false)).toThrow(),
  );
});
