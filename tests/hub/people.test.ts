import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type TestHub, testHub } from './testHub.ts';

let hub: TestHub;
beforeAll(async () => {
  hub = await testHub();
});
afterAll(() => hub.close());

type Answer = Awaited<ReturnType<TestHub['ask']>>;
const post = (who: string | null, url: string, payload: object = {}): Promise<Answer> =>
  hub.ask(who, { method: 'POST', url, payload });
const message = (answer: Answer): string =>
  answer.json<{ error: { message: string } }>().error.message;
const cookieOf = (answer: Answer): string => String(answer.headers['set-cookie']).split(';')[0]!;

async function invite(who: string, payload: object): Promise<string> {
  const made = await post(who, '/api/invites', payload);
  expect(made.statusCode).toBe(201);
  return made.json<{ url: string }>().url.split('/').at(-1)!;
}

const OWN = { name: 'Nell Abara', login: 'Nell', password: 'a rather long one' };

describe('an invitation', () => {
  it('is taken once, and the student is the coach’s who invited, under a first plan', async () => {
    const code = await invite('carl', { role: 'student', name: 'Nell' });
    const shown = await hub.ask(null, { url: `/api/invitation/${code}` });
    expect(shown.json()).toMatchObject({ invitedBy: 'Carl', role: 'student', name: 'Nell' });
    const joined = await post(null, `/api/invitation/${code}`, { ...OWN, hand: 'left' });
    expect(joined.json()).toMatchObject({ role: 'student', login: 'nell' });
    expect(String(joined.headers['set-cookie'])).toMatch(/HttpOnly.*SameSite=Strict/);
    const { id } = joined.json<{ id: string }>();
    const plan = await hub.context.db
      .selectFrom('plan')
      .selectAll()
      .where('studentId', '=', id)
      .executeTakeFirstOrThrow();
    expect(plan).toMatchObject({ number: 1, byId: 'carl' });
    const again = await post(null, `/api/invitation/${code}`, { ...OWN, login: 'other' });
    expect(again.statusCode).toBe(404);
    expect(message(again)).toMatch(/used/);
  });

  it('runs out, is taken back by its maker only, and makes a coach only for an owner', async () => {
    const code = await invite('olga', { role: 'coach', name: 'Bram' });
    const [{ id }] = (await hub.ask('olga', { url: '/api/invites' })).json<[{ id: string }]>();
    expect(
      (await hub.ask('carl', { method: 'DELETE', url: `/api/invites/${id}` })).statusCode,
    ).toBe(404);
    hub.clock.ms += 15 * 86_400_000;
    expect((await hub.ask(null, { url: `/api/invitation/${code}` })).statusCode).toBe(404);
    expect((await post('carl', '/api/invites', { role: 'coach', name: 'X' })).statusCode).toBe(403);
  });

  it('for a student who is here gives a new way in and ends the old one', async () => {
    const code = await invite('carl', { role: 'student', name: 'Sam', studentId: 'sam' });
    const before = await hub.ask('sam', { url: '/api/me' });
    expect(before.statusCode).toBe(200);
    const joined = await post(null, `/api/invitation/${code}`, { ...OWN, login: 'sam' });
    expect(joined.json()).toMatchObject({ id: 'sam' });
    const theirs = { role: 'student', name: 'Tom', studentId: 'tom' };
    expect((await post('carl', '/api/invites', theirs)).statusCode).toBe(404);
  });

  it('refuses a short password, a taken name and unknown fields', async () => {
    const code = await invite('carl', { role: 'student', name: 'Pia' });
    const url = `/api/invitation/${code}`;
    expect((await post(null, url, { ...OWN, password: 'short' })).statusCode).toBe(400);
    expect((await post(null, url, { ...OWN, role: 'owner' })).statusCode).toBe(400);
    expect((await post(null, url, { ...OWN, login: 'SUE' })).statusCode).toBe(409);
  });
});

describe('signing in', () => {
  it('gives a new cookie each time, whatever cookie came along', async () => {
    const at = { login: 'nell', password: OWN.password };
    const first = await post(null, '/api/login', at);
    expect(first.statusCode).toBe(200);
    const planted = cookieOf(first);
    const second = await hub.ask(null, {
      method: 'POST',
      url: '/api/login',
      payload: at,
      headers: { cookie: planted, 'x-csrf-token': first.json<{ csrf: string }>().csrf },
    });
    expect(cookieOf(second)).not.toBe(planted);
    const old = await hub.ask(null, { url: '/api/me', headers: { cookie: planted } });
    expect(old.statusCode).toBe(401);
  });

  it('says the same for a wrong name and a wrong password, and no more after ten tries', async () => {
    const said = new Set<string>();
    let last = 0;
    for (let i = 0; i < 12; i++) {
      const answer = await post(null, '/api/login', {
        login: i % 2 === 0 ? 'nell' : 'nobody',
        password: 'not the right one',
      });
      last = answer.statusCode;
      if (last === 403) said.add(message(answer));
    }
    expect([...said]).toHaveLength(1);
    expect(last).toBe(429);
  });

  it('a change of the password signs out every other place, and needs the one until now', async () => {
    const wrong = { current: 'something else', next: 'a new long password' };
    const answer = await post('sue', '/api/me/password', wrong);
    expect(answer.statusCode).toBe(403);
  });
});

describe('a computer', () => {
  it('is paired by a code once, soon, and unpaired by student or coach', async () => {
    const { code } = (await post('sue', '/api/me/pairing')).json<{ code: string }>();
    const typed = code.toLowerCase().replace('-', ' ');
    const paired = await post(null, '/api/pair', { code: typed, machine: 'Garage' });
    expect(paired.json()).toMatchObject({ student: 'Sue', coach: 'Carl' });
    expect((await post(null, '/api/pair', { code, machine: 'Other' })).statusCode).toBe(403);
    const url = '/api/students/sue/machines';
    const [newest] = (await hub.ask('carl', { url })).json<{ id: string; name: string }[]>();
    expect(newest).toMatchObject({ name: 'Garage' });
    expect((await hub.ask('olga', { url })).statusCode).toBe(404);
    const gone = await hub.ask('sue', { method: 'DELETE', url: `/api/machines/${newest!.id}` });
    expect(gone.statusCode).toBe(204);
    const late = (await post('sue', '/api/me/pairing')).json<{ code: string }>();
    hub.clock.ms += 11 * 60_000;
    const refused = await post(null, '/api/pair', { code: late.code, machine: 'Late' });
    expect(message(refused)).toMatch(/has expired/);
  });
});

describe('the club', () => {
  it('is the owner’s: moves a student by name, locks a coach out, and writes it down', async () => {
    expect((await hub.ask('carl', { url: '/api/club' })).statusCode).toBe(403);
    const moved = await hub.ask('olga', {
      method: 'PUT',
      url: '/api/students/sue/coach',
      payload: { coachId: 'olga' },
    });
    expect(moved.statusCode).toBe(204);
    expect((await hub.ask('carl', { url: '/api/students/sue/machines' })).statusCode).toBe(404);
    const locked = await hub.ask('olga', {
      method: 'PATCH',
      url: '/api/coaches/carl',
      payload: { active: false },
    });
    expect(locked.statusCode).toBe(204);
    const own = { method: 'PATCH', url: '/api/coaches/olga', payload: { active: false } } as const;
    expect((await hub.ask('olga', own)).statusCode).toBe(409);
    const log = (await hub.ask('olga', { url: '/api/log' })).json<{ act: string }[]>();
    expect(log.map(({ act }) => act).slice(0, 2)).toEqual(['lock-out', 'move']);
  });
});
