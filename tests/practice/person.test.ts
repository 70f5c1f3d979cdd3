import { mkdirSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import { personFile } from '../../src/main/personFile.ts';
import {
  NOBODY,
  personView,
  planFor,
  volumeHistory,
  withEnd,
  withNote,
  withSession,
} from '../../src/practice/person.ts';

const DAY = 86_400_000;
const NOW = Date.UTC(2026, 4, 31, 10);
const session = (daysAgo: number, repetitions: number) => ({
  startedMs: NOW - daysAgo * DAY,
  repetitions,
  painBefore: 1,
  painAfter: null,
  note: '',
});

describe('what is known of a student', () => {
  it('is nothing at first: the history is asked for', () => {
    expect(personView(NOBODY)).toEqual({
      firstUse: true,
      about: {},
      painBefore: null,
      lastSession: null,
    });
  });

  it('counts this week and the four before it', () => {
    const sessions = [
      session(30, 40),
      session(20, 50),
      session(9, 60),
      session(3, 25),
      session(1, 30),
    ];
    const history = volumeHistory({ ...NOBODY, sessions }, NOW);
    expect(history).toEqual({ thisWeek: 55, weeksBefore: [40, 0, 50, 60] });
  });

  it('knows no usual before there were four weeks', () => {
    const sessions = [session(9, 60), session(3, 25)];
    expect(volumeHistory({ ...NOBODY, sessions }, NOW).weeksBefore).toEqual([60]);
  });

  it('keeps a session from its start and its end when it comes', () => {
    const begun = withSession(NOBODY, session(0, 0));
    expect(personView(begun)).toMatchObject({ firstUse: false, painBefore: 1 });
    const end = { repetitions: 12, painAfter: 2, note: 'good' };
    const ended = withEnd(begun, end, { flexionDeg: 70 });
    expect(ended.sessions).toEqual([{ ...session(0, 12), painAfter: 2, note: 'good' }]);
    expect(planFor(DEFAULT_PLAN, ended).ownRange).toEqual({ flexionDeg: 70 });
    const coached = { ...DEFAULT_PLAN, ownRange: { flexionDeg: 60 } };
    expect(planFor(coached, ended).ownRange).toEqual({ flexionDeg: 60 });
  });
});

describe('a note that was edited later', () => {
  const named = { ...session(2, 10), sessionId: 'a', note: 'old' };
  const person = { ...NOBODY, sessions: [named, session(1, 12)] };
  const edited = (id: string, startedMs: number, simulated = false) =>
    withNote(person, { id, startedMs, note: 'new', simulated });
  const noteOf = (id: string, startedMs: number) =>
    edited(id, startedMs).sessions.map(({ note }) => note);

  it('goes to the session of its name, else to the one that began then, else nowhere', () => {
    expect(noteOf('a', 0)).toEqual(['new', '']);
    expect(noteOf('b', NOW - DAY + 60_000)).toEqual(['old', 'new']);
    expect(noteOf('b', NOW - 2 * DAY)).toEqual(['old', '']);
    expect(edited('b', NOW - 1.5 * DAY)).toBe(person);
    expect(edited('b', NOW - DAY, true)).toBe(person);
    const kept = { id: 'a', startedMs: NOW, note: 'new', simulated: false };
    expect(withNote(NOBODY, kept)).toBe(NOBODY);
  });

  it('leaves the ratings, by which the next day is judged', () => {
    const [changed] = edited('a', 0).sessions;
    expect(changed).toEqual({ ...named, note: 'new' });
  });
});

describe('the file of a student', () => {
  const file = () => join(mkdtempSync(join(tmpdir(), 'stillcatch-')), 'deep', 'person.json');
  const silent = (): void => undefined;

  it('begins with nobody and remembers', () => {
    const path = file();
    const store = personFile(path, silent);
    expect(store.read()).toEqual(NOBODY);
    store.write(withSession(NOBODY, session(0, 3)));
    expect(personFile(path, silent).read().sessions).toHaveLength(1);
  });

  it.each([
    ['{', /is not JSON/],
    ['{"schema":2}', /damaged/],
    ['[]', /damaged/],
    ['', /is not JSON/],
  ])('refuses %j with a sentence and leaves it as it is', (text, why) => {
    const path = join(mkdtempSync(join(tmpdir(), 'stillcatch-')), 'person.json');
    writeFileSync(path, text);
    expect(() => personFile(path, silent)).toThrow(why);
    expect(readFileSync(path, 'utf8')).toBe(text);
  });

  it('goes on where the disk takes nothing, and says so once for each try', () => {
    const path = join(mkdtempSync(join(tmpdir(), 'stillcatch-')), 'person.json');
    mkdirSync(`${path}.new`);
    const said: string[] = [];
    const store = personFile(path, (sentence) => said.push(sentence));
    store.write(withSession(NOBODY, session(0, 3)));
    expect(store.read().sessions).toHaveLength(1);
    expect(said).toHaveLength(1);
    expect(said[0]).toContain('could not be written');
  });
});
