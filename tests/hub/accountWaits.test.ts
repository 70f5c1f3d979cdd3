import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { AccountWaits } from '../../src/hub/people/accountWaits.ts';
import { newPasswordHash } from '../../src/hub/people/passwords.ts';
import { type TestHub, testHub } from './testHub.ts';

describe('tries at one account', () => {
  it('are at most a hundred an hour, and nobody waits longer than 40 s', () => {
    let nowMs = 0;
    const waits = new AccountWaits(() => nowMs);
    let taken = 0;
    for (; nowMs < 3_600_000; nowMs += 100) {
      const waitMs = waits.take('sam');
      if (waitMs === 0) taken += 1;
      expect(waitMs).toBeLessThanOrEqual(40_000);
    }
    expect(taken).toBeGreaterThan(80);
    expect(taken).toBeLessThanOrEqual(100);
    expect(waits.take('sue'), 'another account').toBe(0);
  });

  it('count from the beginning after the right password, and after an hour of quiet', () => {
    let nowMs = 0;
    const waits = new AccountWaits(() => nowMs);
    const many = (): number[] => Array.from({ length: 7 }, () => waits.take('sam'));
    expect(many()).toEqual([0, 0, 0, 0, 0, 1000, 1000]);
    waits.passed('sam');
    expect(many()).toEqual([0, 0, 0, 0, 0, 1000, 1000]);
    nowMs = 3_600_001;
    expect(many()).toEqual([0, 0, 0, 0, 0, 1000, 1000]);
  });

  it('does not grow with the names that strangers make up', () => {
    const waits = new AccountWaits(() => 0);
    for (let i = 0; i < 6; i++) waits.take('first');
    expect(waits.take('first')).toBeGreaterThan(0);
    for (let i = 0; i < 5001; i++) waits.take(`made up ${i}`);
    expect(waits.take('first'), 'forgotten for the newer ones').toBe(0);
  });
});

describe('signing in while strangers try from many addresses', () => {
  const PASSWORD = 'nine slow tortoises';
  let hub: TestHub;
  beforeAll(async () => {
    hub = await testHub();
    const passwordHash = await newPasswordHash(PASSWORD, 'sam');
    await hub.context.db
      .updateTable('person')
      .set({ passwordHash })
      .where('id', '=', 'sam')
      .execute();
  });
  afterAll(() => hub.close());

  const signIn = (password: string, remoteAddress: string, cookie = '') =>
    hub.ask(null, {
      method: 'POST',
      url: '/api/login',
      payload: { login: 'sam', password },
      remoteAddress,
      headers: { cookie },
    });

  it('is open for a browser that is known, and has to wait in one that is not', async () => {
    const first = await signIn(PASSWORD, '192.0.2.1');
    expect(first.statusCode).toBe(200);
    const set = [first.headers['set-cookie']].flat().map(String);
    const device = set.find((cookie) => cookie.startsWith('stillcatch-device='));
    expect(device).toMatch(/HttpOnly; SameSite=Strict/);
    const cookie = device?.split(';')[0] ?? '';
    const told = [];
    for (let i = 0; i < 12; i++) told.push((await signIn('a guess', `198.51.100.${i}`)).statusCode);
    expect(told.slice(0, 5)).toEqual([403, 403, 403, 403, 403]);
    expect(told.at(-1)).toBe(429);
    const elsewhere = await signIn(PASSWORD, '203.0.113.9');
    expect(elsewhere.statusCode).toBe(429);
    expect(Number(elsewhere.headers['retry-after'])).toBeLessThanOrEqual(40);
    expect((await signIn(PASSWORD, '203.0.113.10', cookie)).statusCode).toBe(200);
    // it opens nothing by itself
    const alone = await hub.ask(null, { url: '/api/me', headers: { cookie } });
    expect(alone.statusCode).toBe(401);
  });
});
