import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { InjectOptions } from 'fastify';
import { cookieName } from '../../src/hub/access/cookies.ts';
import { hashOf, newToken } from '../../src/streaming/secrets.ts';
import { personBehind, signIn } from '../../src/hub/access/signin.ts';
import { type Hub, buildHub } from '../../src/hub/app.ts';
import type { HubContext } from '../../src/hub/context.ts';
import { type HubData, openHubData } from '../../src/hub/db/open.ts';
import type { Role } from '../../src/streaming/hubContract/people.ts';

/** A hub with invented people, in a folder of its own. */
export interface TestHub extends Hub {
  readonly context: HubContext;
  /** What it told the terminal. */
  readonly said: readonly string[];
  /** Epoch ms of the hub's clock; tests move it. */
  clock: { ms: number };
  /** Sends a request as `who` (`null`: nobody), with cookie and CSRF token or a machine's token. */
  ask(
    who: string | null,
    options: InjectOptions,
  ): Promise<Awaited<ReturnType<Hub['app']['inject']>>>;
  /** What such a request carries, for one over a real connection. */
  headersOf(who: string): Promise<Record<string, string>>;
  /** The same data under a new service, as after a restart. */
  restart(): Promise<void>;
  close(): Promise<void>;
}

const HOST = 'localhost:80';
const START_MS = Date.UTC(2026, 2, 1, 12);

/** Owner `olga` (coach too), coach `carl`; `sam` and `sue` are carl's students, `tom` is olga's. `sam:machine` and so on are their machines. */
export const PEOPLE: readonly { id: string; role: Role; coachId: string | null }[] = [
  { id: 'olga', role: 'owner', coachId: null },
  { id: 'carl', role: 'coach', coachId: null },
  { id: 'sam', role: 'student', coachId: 'carl' },
  { id: 'sue', role: 'student', coachId: 'carl' },
  { id: 'tom', role: 'student', coachId: 'olga' },
];

async function populate({ db }: HubData): Promise<Map<string, string>> {
  const tokens = new Map<string, string>();
  await db.insertInto('club').values({ id: 1, name: 'Fernhill Practice Club', demo: 0 }).execute();
  for (const { id, role, coachId } of PEOPLE) {
    await db
      .insertInto('person')
      .values({
        id,
        role,
        name: id.charAt(0).toUpperCase() + id.slice(1),
        login: id,
        passwordHash: null,
        active: 1,
        createdMs: 0,
        coachId,
        hand: id === 'sue' ? 'left' : 'right',
      })
      .execute();
    if (role !== 'student') continue;
    const token = newToken();
    tokens.set(`${id}:machine`, token);
    await db
      .insertInto('machine')
      .values({
        id: `${id}Machine`,
        studentId: id,
        name: 'Laptop',
        tokenHash: hashOf(token),
        pairedMs: START_MS,
        lastSeenMs: null,
        revokedMs: null,
      })
      .execute();
  }
  return tokens;
}

export async function testHub(): Promise<TestHub> {
  const root = await mkdtemp(join(tmpdir(), 'stillcatch-hub-'));
  const data = await openHubData(root);
  const clock = { ms: START_MS };
  const said: string[] = [];
  const context: HubContext = {
    db: data.db,
    places: data.places,
    settings: { publicUrl: `http://${HOST}` },
    now: () => clock.ms,
    say: (sentence) => void said.push(sentence),
  };
  const machines = await populate(data);
  let hub = await buildHub(context);
  const cookies = new Map<string, string>();
  const headersOf = async (who: string): Promise<Record<string, string>> => {
    const machine = machines.get(who);
    if (machine !== undefined) return { authorization: `Bearer ${machine}` };
    let token = cookies.get(who);
    let actor = token === undefined ? null : await personBehind(data.db, token, clock.ms);
    if (token === undefined || actor === null) {
      token = await signIn(data.db, who, clock.ms);
      cookies.set(who, token);
      actor = await personBehind(data.db, token, clock.ms);
    }
    const csrf = actor?.kind === 'person' ? actor.csrf : '';
    return { cookie: `${cookieName(false)}=${token}`, 'x-csrf-token': csrf };
  };
  return {
    get app() {
      return hub.app;
    },
    get routes() {
      return hub.routes;
    },
    context,
    said,
    clock,
    headersOf,
    async ask(who, options) {
      const own = who === null ? {} : await headersOf(who);
      return hub.app.inject({ ...options, headers: { host: HOST, ...own, ...options.headers } });
    },
    async restart() {
      await hub.app.close();
      hub = await buildHub(context);
    },
    async close() {
      await hub.app.close();
      await data.close();
      await rm(root, { recursive: true, force: true });
    },
  };
}
