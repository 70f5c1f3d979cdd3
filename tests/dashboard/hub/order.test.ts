import { describe, expect, it } from 'vitest';
import {
  grouped,
  narrowed,
  needCounts,
  nextToReview,
  openAtFirst,
  stepped,
} from '../../../src/dashboard/hub/needs/order.ts';
import { ALL_COUNTED } from '../../../src/coaching/notCounted.ts';
import type { NeedCode } from '../../../src/coaching/attention.ts';
import type { StudentRow } from '../../../src/streaming/hubContract/students.ts';

const student = (
  name: string,
  codes: readonly NeedCode[],
  nextSessionId: string | null = null,
): StudentRow => ({
  id: name,
  name,
  hand: 'right',
  needs: codes.map((code) => {
    return { code, text: code, sessionId: null, atMs: null, quote: null, answerTo: null };
  }),
  calm: 0,
  unreviewed: nextSessionId === null ? 0 : 1,
  lastPracticeMs: null,
  weekRehearsals: 0,
  weekBalls: 0,
  weekNotCounted: ALL_COUNTED,
  simulatedSessions: 0,
  nextSessionId,
});

const students = [
  student('Zoë Hallgarth', ['pain', 'unreviewed'], 's1'),
  student('Ander Okoye', ['unreviewed'], 's2'),
  student('Mara Lind', ['none']),
];
const names = (rows: readonly StudentRow[]): string[] => rows.map(({ name }) => name);

describe('the list of students', () => {
  it('is narrowed by any of the needs, not only the first', () => {
    expect(names(narrowed(students, { need: 'unreviewed', name: '' }))).toEqual([
      'Zoë Hallgarth',
      'Ander Okoye',
    ]);
    expect(names(narrowed(students, { need: 'none', name: '' }))).toEqual(['Mara Lind']);
  });

  it('finds a name in any case, without its accents, by any part', () => {
    expect(names(narrowed(students, { need: null, name: ' zoe hall ' }))).toEqual([
      'Zoë Hallgarth',
    ]);
    expect(names(narrowed(students, { need: 'none', name: 'zoe' }))).toEqual([]);
  });

  it('counts needs in their order and leaves out those that nobody has', () => {
    expect([...needCounts(students)]).toEqual([
      ['pain', 1],
      ['unreviewed', 2],
      ['none', 1],
    ]);
  });

  it('is grouped: who needs a coach, small things, all well; folded where it does not fit', () => {
    const more = [student('Piet', ['mix', 'drift']), student('Ute', ['unanswered']), ...students];
    const groups = grouped(more);
    expect(names(groups.coach)).toEqual(['Ute', 'Zoë Hallgarth']);
    expect(names(groups.small)).toEqual(['Piet', 'Ander Okoye']);
    expect(names(groups.well)).toEqual(['Mara Lind']);
    expect(openAtFirst(groups, false)).toEqual(['coach', 'small', 'well']);
    const many = Array.from({ length: 21 }, (_, i) => student(`s${i}`, ['mix']));
    expect(openAtFirst(grouped([...more, ...many]), false)).toEqual(['coach']);
    expect(openAtFirst(grouped([...more, ...many]), true)).toEqual(['coach', 'small', 'well']);
    expect(openAtFirst(grouped(many), false)).toEqual(['small']);
  });

  it('goes on to the next session, never to the one that is open', () => {
    expect(nextToReview(students)).toBe('s1');
    expect(nextToReview(students, 's1')).toBe('s2');
    expect(nextToReview([students[1]!], 's2')).toBeNull();
  });

  it('is walked from either end and stops at both', () => {
    const ids = ['a', 'b', 'c'];
    expect(stepped(ids, null, 1)).toBe('a');
    expect(stepped(ids, null, -1)).toBe('c');
    expect(stepped(ids, 'b', 1)).toBe('c');
    expect(stepped(ids, 'c', 1)).toBe('c');
    expect(stepped(ids, 'a', -1)).toBe('a');
    expect(stepped([], null, 1)).toBeNull();
  });
});
