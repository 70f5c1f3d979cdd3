import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Access, type Actor, rule } from '../../src/hub/access/access.ts';
import { type TestHub, testHub } from './testHub.ts';

const person = (id: string, role: 'owner' | 'coach' | 'student'): Actor => ({
  kind: 'person',
  id,
  name: id,
  role,
  csrf: '',
  tokenHash: '',
});
const ACTORS = {
  nobody: null,
  ownCoach: person('c', 'coach'),
  otherCoach: person('d', 'coach'),
  clubOwner: person('o', 'owner'),
  self: person('s', 'student'),
  other: person('t', 'student'),
  machine: { kind: 'machine', id: 'm', studentId: 's' } as Actor,
};
const OWNER = { studentId: 's', coachId: 'c' };

describe('who may use a route', () => {
  it.each<[Access, Partial<Record<keyof typeof ACTORS, true>>]>([
    [
      { who: 'anyone' },
      {
        nobody: true,
        ownCoach: true,
        otherCoach: true,
        clubOwner: true,
        self: true,
        other: true,
        machine: true,
      },
    ],
    [
      { who: 'signed-in' },
      { ownCoach: true, otherCoach: true, clubOwner: true, self: true, other: true },
    ],
    [{ who: 'coach' }, { ownCoach: true, otherCoach: true, clubOwner: true }],
    [{ who: 'owner' }, { clubOwner: true }],
    [{ who: 'student' }, { self: true, other: true }],
    [{ who: 'coach-of', of: 'student' }, { ownCoach: true }],
    [
      { who: 'student-or-coach', of: 'session' },
      { ownCoach: true, self: true },
    ],
    [{ who: 'machine' }, { machine: true }],
  ])('%j', (access, allowed) => {
    for (const [name, actor] of Object.entries(ACTORS))
      expect(rule(access, actor, OWNER) === 'allowed', name).toBe(name in allowed);
  });

  it('hides what is not there and what is another’s in the same way', () => {
    const access: Access = { who: 'coach-of', of: 'session' };
    expect(rule(access, ACTORS.ownCoach, null)).toBe('hidden');
    expect(rule(access, ACTORS.otherCoach, OWNER)).toBe('hidden');
  });
});

describe('the guard', () => {
  let hub: TestHub;
  beforeAll(async () => {
    hub = await testHub();
  });
  afterAll(() => hub.close());

  it('answers an address that is none with a sentence', async () => {
    const answer = await hub.ask('carl', { url: '/api/nowhere' });
    expect(answer.statusCode).toBe(404);
    expect(answer.json()).toEqual({
      error: { code: 'not-found', message: 'Not found.' },
    });
  });
});
