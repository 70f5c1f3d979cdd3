import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import type { CoachLink } from '../../src/streaming/hubContract/coachLink.ts';
import type { Invite, Me, NewInvite, PairingCode } from '../../src/streaming/hubContract/people.ts';
import type { HubSession, HubSessionList } from '../../src/streaming/hubContract/review.ts';
import type { PlanVersion, StudentList } from '../../src/streaming/hubContract/students.ts';
import { type RunningHub, startHub } from './hubHarness.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const PASSWORD = 'nine slow tortoises';

/** Somebody's browser, as far as the hub sees it: a cookie and the page's token. */
class Person {
  me!: Me;
  #cookie = '';
  readonly #url: string;

  constructor(url: string) {
    this.#url = url;
  }

  async ask<T>(method: string, path: string, body?: unknown): Promise<{ status: number; data: T }> {
    const response = await fetch(`${this.#url}/api/${path}`, {
      method,
      headers: {
        cookie: this.#cookie,
        'x-csrf-token': this.me?.csrf ?? '',
        ...(body !== undefined && { 'content-type': 'application/json' }),
      },
      ...(body !== undefined && { body: JSON.stringify(body) }),
    });
    const cookie = response.headers.getSetCookie()[0];
    if (cookie !== undefined) this.#cookie = cookie.split(';')[0] ?? '';
    const data = (response.status === 204 ? null : await response.json()) as T;
    return { status: response.status, data };
  }

  async get<T>(path: string): Promise<T> {
    return (await this.ask<T>('GET', path)).data;
  }

  async enter(path: string, body: unknown): Promise<this> {
    this.me = (await this.ask<Me>('POST', path, body)).data;
    expect(this.me.csrf).toBeTruthy();
    return this;
  }
}

/** The program on a student's computer, a process of its own. */
class Computer {
  readonly data = mkdtempSync(join(tmpdir(), 'stillcatch-student-'));
  url = '';
  #process: ChildProcess | null = null;

  async start(): Promise<void> {
    const args = ['--import', 'tsx', 'src/main/student.ts', '--port', '0', '--data', this.data];
    const child = spawn(process.execPath, args, {
      cwd: root,
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    this.#process = child;
    this.url = await new Promise<string>((resolve, reject) => {
      let said = '';
      child.once('exit', () => reject(new Error(`it ended: ${said}`)));
      child.stdout?.on('data', (bytes: Buffer) => {
        said += bytes.toString();
        const found = /at (http:\S+\/) /.exec(said)?.[1];
        if (found !== undefined) resolve(found);
      });
    });
  }

  async stop(): Promise<void> {
    const child = this.#process;
    if (child === null || child.exitCode !== null) return;
    const ended = new Promise((resolve) => child.once('exit', resolve));
    child.kill('SIGTERM');
    await ended;
  }

  async ask<T>(method: string, path: string, body?: BodyInit, type = 'application/json') {
    const response = await fetch(`${this.url}api/${path}`, {
      method,
      ...(body !== undefined && { body, headers: { 'content-type': type } }),
    });
    if (!response.ok) throw new Error(await response.text());
    return (await response.json()) as T;
  }

  post = <T>(path: string, body: unknown): Promise<T> =>
    this.ask<T>('POST', path, JSON.stringify(body));

  /** A shipped recording, as though it had been practised here. */
  async practised(name: string): Promise<void> {
    const bytes = readFileSync(join(root, 'recordings', `${name}.zip`));
    await this.ask('POST', 'import', new Uint8Array(bytes), 'application/zip');
  }

  /** Fetches anew what the coach says. */
  refresh = (): Promise<CoachLink> => this.post('coach/consent', { send: true, older: true });

  link = (right: (link: CoachLink) => boolean): Promise<CoachLink> =>
    vi.waitFor(
      async () => {
        const link = await this.ask<CoachLink>('GET', 'coach');
        if (!right(link)) throw new Error(JSON.stringify(link).slice(0, 500));
        return link;
      },
      { timeout: 30_000, interval: 100 },
    );
}

let hub: RunningHub;
let carla: Person;
let bram: Person;
let ines: Person;
let otto: Person;
const computers = [new Computer(), new Computer()] as const;
beforeAll(async () => {
  hub = await startHub();
  await Promise.all(computers.map((computer) => computer.start()));
});
afterAll(async () => {
  await Promise.all(computers.map((computer) => computer.stop()));
  await hub.end();
  for (const { data } of computers) rmSync(data, { recursive: true, force: true });
});

async function invited(by: Person, role: Invite['role'], name: string, login: string) {
  const { data } = await by.ask<NewInvite>('POST', 'invites', { role, name });
  const code = data.url.split('/').at(-1) ?? '';
  return new Person(hub.url).enter(`invitation/${code}`, { name, login, password: PASSWORD });
}

const sessionsOf = async (who: Person, student: Person) =>
  (await who.get<HubSessionList>(`students/${student.me.id}/sessions`)).sessions;

describe('two coaches, two students, their computers and the hub', () => {
  it('come together: set up, invited, joined, paired', async () => {
    const code = hub.said.join(' ').match(/[A-Z0-9]{5}-[A-Z0-9]{5}/)?.[0] ?? '';
    const own = { clubName: 'Fernhill', name: 'Carla', login: 'carla', password: PASSWORD };
    carla = await new Person(hub.url).enter('setup', { code, ...own });
    bram = await invited(carla, 'coach', 'Bram', 'bram');
    ines = await invited(carla, 'student', 'Ines', 'ines');
    otto = await invited(bram, 'student', 'Otto', 'otto');
    for (const [student, computer] of [
      [ines, computers[0]],
      [otto, computers[1]],
    ] as const) {
      const { data } = await student.ask<PairingCode>('POST', 'me/pairing');
      await computer.post('coach/connect', {
        ...data,
        machine: 'Garage',
        expiresMs: undefined,
        qr: undefined,
      });
    }
    await computers[0].link(({ connection }) => connection?.coach === 'Carla');
    await computers[1].link(({ connection }) => connection?.coach === 'Bram');
  });

  it('a practice arrives by itself once the student agrees, at the own coach alone', async () => {
    await computers[0].practised('right-mixed');
    await computers[1].practised('left-mixed');
    expect(await sessionsOf(carla, ines)).toEqual([]);
    await Promise.all(computers.map((computer) => computer.refresh()));
    for (const computer of computers)
      await computer.link(({ sessions }) => sessions.some(({ state }) => state === 'sent'));
    await vi.waitFor(
      async () => {
        const [row] = await sessionsOf(carla, ines);
        expect(row?.summary).toMatchObject({ analysed: true, passed: 6, scored: 11 });
      },
      { timeout: 60_000, interval: 250 },
    );
    const theirs = async (coach: Person): Promise<string[]> =>
      (await coach.get<StudentList>('students')).students.map(({ name }) => name);
    expect(await theirs(carla)).toEqual(['Ines']);
    expect(await theirs(bram)).toEqual(['Otto']);
    expect((await bram.ask('GET', `students/${ines.me.id}/sessions`)).status).toBe(404);
    expect((await otto.ask('GET', `students/${ines.me.id}/sessions`)).status).toBe(404);
  });

  it('the coach reviews and comments, the student reads it at home and answers', async () => {
    const [row] = await sessionsOf(carla, ines);
    const id = row?.summary.id ?? '';
    await carla.ask('POST', `sessions/${id}/comments`, { text: 'Hold until the tick.', index: 4 });
    await carla.ask('PUT', `sessions/${id}/reviewed`, { reviewed: true });
    await computers[0].refresh();
    const { inbox } = await computers[0].link(({ unread }) => unread === 1);
    const comment = inbox?.threads[0]?.comments[0];
    expect(comment).toMatchObject({ text: 'Hold until the tick.', by: 'Carla', index: 4 });
    const { clientId } = inbox!.threads[0]!;
    const reply = { clientId, text: 'It felt slow.', index: 4, replyTo: comment!.id };
    await computers[0].post('coach/comments', reply);
    await computers[0].link(({ outbox }) => outbox.length === 0);
    const { comments } = await carla.get<HubSession>(`sessions/${id}`);
    expect(comments.map(({ text, byRole }) => [byRole, text])).toEqual([
      ['coach', 'Hold until the tick.'],
      ['student', 'It felt slow.'],
    ]);
    const { students } = await carla.get<StudentList>('students');
    expect(students[0]?.needs[0]?.code).toBe('unanswered');
  });

  it('the coach changes the plan, and it reaches the student’s computer; what was practised stays judged by the old one', async () => {
    const targets = { ...DEFAULT_PLAN.targets, holdS: { min: 1.7 } };
    const { data } = await carla.ask<PlanVersion>('POST', `students/${ines.me.id}/plans`, {
      plan: { ...DEFAULT_PLAN, targets },
      validFromMs: Date.now(),
    });
    expect(data.changes).toEqual(['Hold at the top: at least 1.7 s, was at least 1 s.']);
    await computers[0].refresh();
    await computers[0].link(({ inbox }) => inbox?.plan?.id === data.id);
    await vi.waitFor(async () => {
      const { planReachedMs } = await carla.get<{ planReachedMs: number | null }>(
        `students/${ines.me.id}`,
      );
      expect(planReachedMs).not.toBeNull();
    });
    const [old] = await sessionsOf(carla, ines);
    const { plan } = await carla.get<HubSession>(`sessions/${old?.summary.id}`);
    expect(plan.targets.holdS).toEqual(DEFAULT_PLAN.targets.holdS);
  });
});
