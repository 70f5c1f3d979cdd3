import { describe, expect, it } from 'vitest';
import { studentHost } from '../../src/main/studentHost.ts';
import { nameRefusal } from '../../src/practice/about.ts';
import { practiceHost } from '../../src/practice/host.ts';
import { NOBODY, type Person } from '../../src/practice/person.ts';
import { REFUSALS } from '../../src/practice/refusals.ts';
import { SyntheticSource } from '../../src/sensors/sources/synthetic/index.ts';
import { readCommand } from '../../src/streaming/command.ts';

function student() {
  const kept: { person: Person } = { person: NOBODY };
  const source = () => new SyntheticSource({ seed: 1, prompted: true });
  const host = studentHost({
    first: { source: source(), hand: 'right', kind: 'demo', close: async () => undefined },
    sourceFor: source,
    store: { read: () => kept.person, write: (next) => void (kept.person = next) },
    now: () => 0,
    date: () => 0,
  });
  return { host, kept, about: () => host.current().view().person.about };
}

const GUIDED = { type: 'begin', kind: 'guided', hand: 'left', sensors: 'demo' } as const;

describe('what a student says of themselves', () => {
  it('is kept, shown at once and known to the next practice', async () => {
    const { host, kept, about } = student();
    expect(about()).toEqual({});
    expect(host.obey({ type: 'about', name: '  Kim  ' })).toBeNull();
    expect(host.obey({ type: 'about', hand: 'left' })).toBeNull();
    expect(about()).toEqual({ name: 'Kim', hand: 'left' });
    host.obey({ ...GUIDED, kind: 'demo', hand: 'right' });
    expect(about()).toEqual({ name: 'Kim', hand: 'left' });
    expect(kept.person.about).toEqual({ name: 'Kim', hand: 'left' });
    expect(host.obey({ type: 'about', name: '' })).toBeNull();
    expect(about()).toEqual({ name: '', hand: 'left' });
    await host.stop();
  });

  it('keeps the hand while a practice is under way, and takes the name all the same', async () => {
    const { host, about } = student();
    host.obey(GUIDED);
    expect(about()).toEqual({ hand: 'left' });
    expect(host.obey({ type: 'about', hand: 'right' })).toBe(REFUSALS['hand-later']);
    expect(host.obey({ type: 'about', name: 'Kim' })).toBeNull();
    expect(about()).toEqual({ hand: 'left', name: 'Kim' });
    await host.stop();
  });

  it('refuses a name that is too long or holds control characters, and keeps the former', async () => {
    const { host, about } = student();
    host.obey({ type: 'about', name: 'Kim' });
    expect(nameRefusal('Ö'.repeat(40))).toBeNull();
    expect(host.obey({ type: 'about', name: 'x'.repeat(41) })).toBe(REFUSALS['name-too-long']);
    for (const name of ['a\u0000b', 'a\nb', 'a\u202eb', 'a\u2028b'])
      expect(host.obey({ type: 'about', name }), JSON.stringify(name)).toBe(
        REFUSALS['name-control'],
      );
    expect(about()).toEqual({ name: 'Kim' });
    await host.stop();
  });

  it('is taken from a page only as it should be', () => {
    expect(readCommand({ type: 'about', name: 'Kim', hand: 'left' })).toMatchObject({
      name: 'Kim',
    });
    for (const bad of [{ hand: 'both' }, { name: 7 }, { name: 'x'.repeat(201) }, { age: 3 }])
      expect(typeof readCommand({ type: 'about', ...bad })).toBe('string');
  });

  it('is refused by a service that keeps nothing', () => {
    const { host } = student();
    const bare = practiceHost({ first: host.current() });
    expect(bare.obey({ type: 'about', name: 'Kim' })).toBe(REFUSALS['nobody-kept']);
  });
});
