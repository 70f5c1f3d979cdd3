import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type TestHub, testHub } from './testHub.ts';

let hub: TestHub;
beforeEach(async () => {
  hub = await testHub();
});
afterEach(() => hub.close());

type Answer = Awaited<ReturnType<TestHub['ask']>>;
const post = (who: string | null, url: string, payload: object = {}): Promise<Answer> =>
  hub.ask(who, { method: 'POST', url, payload });

async function invite(who: string, payload: object): Promise<string> {
  const made = await post(who, '/api/invites', payload);
  expect(made.statusCode).toBe(201);
  return made.json<{ url: string }>().url.split('/').at(-1)!;
}

const OWN = { name: 'Nell Abara', login: 'Nell', password: 'a rather long one' };

it('a computer that was not used for 180 days has to be paired anew', async () => {
  const inbox = { url: '/api/machine/inbox' };
  hub.clock.ms += 179 * 86_400_000;
  expect((await hub.ask('sam:machine', inbox)).statusCode).toBe(200);
  hub.clock.ms += 179 * 86_400_000;
  expect((await hub.ask('sam:machine', inbox)).statusCode, 'it was used meanwhile').toBe(200);
  hub.clock.ms += 180 * 86_400_000;
  expect((await hub.ask('sam:machine', inbox)).statusCode).toBe(401);
});

describe('an invitation', () => {
  it('for a student who is here ends with the coach who made it', async () => {
    const code = await invite('carl', { role: 'student', name: 'Sam', studentId: 'sam' });
    const move = (coachId: string): Promise<Answer> =>
      hub.ask('olga', { method: 'PUT', url: '/api/students/sam/coach', payload: { coachId } });
    expect((await move('olga')).statusCode).toBe(204);
    const url = `/api/invitation/${code}`;
    expect((await hub.ask(null, { url })).statusCode).toBe(404);
    expect((await post(null, url, { ...OWN, login: 'sam' })).statusCode).toBe(404);
    expect((await move('carl')).statusCode).toBe(204);
    expect((await hub.ask(null, { url })).statusCode, 'it does not come back either').toBe(404);
  });

  it('made by a coach who was locked out is good no more, whoever is let in again', async () => {
    const code = await invite('carl', { role: 'student', name: 'Una' });
    const lock = (active: boolean): Promise<Answer> =>
      hub.ask('olga', { method: 'PATCH', url: '/api/coaches/carl', payload: { active } });
    expect((await lock(false)).statusCode).toBe(204);
    expect((await lock(true)).statusCode).toBe(204);
    expect((await hub.ask(null, { url: `/api/invitation/${code}` })).statusCode).toBe(404);
  });

  it('renewed ends every sign-in, computer, code and other invitation of the student', async () => {
    const other = await invite('carl', { role: 'student', name: 'Sam', studentId: 'sam' });
    const code = await invite('carl', { role: 'student', name: 'Sam', studentId: 'sam' });
    const pairing = (await post('sam', '/api/me/pairing')).json<{ code: string }>();
    const cookie = (await hub.headersOf('sam'))['cookie']!;
    const inbox = { url: '/api/machine/inbox' };
    expect((await hub.ask('sam:machine', inbox)).statusCode).toBe(200);
    expect((await post(null, `/api/invitation/${code}`, { ...OWN, login: 'sam' })).statusCode).toBe(
      200,
    );
    expect((await hub.ask('sam:machine', inbox)).statusCode).toBe(401);
    expect((await hub.ask(null, { url: '/api/me', headers: { cookie } })).statusCode).toBe(401);
    expect((await hub.ask(null, { url: `/api/invitation/${other}` })).statusCode).toBe(404);
    const late = await post(null, '/api/pair', { code: pairing.code, machine: 'Old' });
    expect(late.statusCode).toBe(403);
  });

  it('is not spent where two take one sign-in name at the same time', async () => {
    const codes = [
      await invite('carl', { role: 'student', name: 'Vera' }),
      await invite('carl', { role: 'student', name: 'Wim' }),
    ];
    const own = { ...OWN, login: 'twin' };
    const both = await Promise.all(codes.map((code) => post(null, `/api/invitation/${code}`, own)));
    expect(both.map(({ statusCode }) => statusCode).sort()).toEqual([200, 409]);
    const second = codes[both.findIndex(({ statusCode }) => statusCode === 409)]!;
    const again = await post(null, `/api/invitation/${second}`, { ...own, login: 'twin2' });
    expect(again.statusCode).toBe(200);
  });

  it('that two take at the same time makes one account', async () => {
    const code = await invite('carl', { role: 'student', name: 'Xeni' });
    const both = await Promise.all(
      ['xeni', 'xenia'].map((login) => post(null, `/api/invitation/${code}`, { ...OWN, login })),
    );
    expect(both.map(({ statusCode }) => statusCode).sort()).toEqual([200, 404]);
  });
});
