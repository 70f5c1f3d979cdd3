import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type AttentionFacts,
  NEED_CODES,
  type Placed,
  attention,
  compareAttention,
} from '../../src/coaching/attention.ts';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';

const DAY_MS = 86_400_000;
const NOW = 1000 * DAY_MS;

const facts = (own: Partial<AttentionFacts> = {}): AttentionFacts => ({
  nowMs: NOW,
  joinedMs: 0,
  plan: DEFAULT_PLAN,
  pain: null,
  warnings: [],
  unreviewed: 0,
  questions: [],
  lastPracticeMs: NOW - DAY_MS,
  balls: 0,
  ballsInMix: 0,
  week: 100,
  fortnight: 200,
  unknown: 0,
  simulated: 0,
  recent: [],
  ...own,
});
const codes = (own: Partial<AttentionFacts>): string[] =>
  attention(facts(own)).map(({ code }) => code);

const hurt = (rating: number): NonNullable<AttentionFacts['pain']> => ({
  sessionId: `s${rating}`,
  startedMs: rating,
  warning: null,
  rating,
  sessions: 1,
});
const warned = (day: number, seen: boolean): AttentionFacts['warnings'][number] => ({
  id: 'missed',
  sessionId: `s${day}`,
  startedMs: day,
  seen,
});
const hold = (medians: readonly number[]): AttentionFacts['recent'] =>
  medians.map((median) => ({ rehearsals: { holdS: { count: 8, median } } }));

describe('why a student needs a look', () => {
  it('nothing, where the plan is kept and all was looked at', () => {
    expect(attention(facts())).toEqual([
      { code: 'none', text: 'Practises as planned.', weight: 0 },
    ]);
  });

  it('pain and warnings with the very session, in words; a warning that was seen comes last', () => {
    const all = facts({ pain: hurt(6), warnings: [warned(3, false), warned(2, true)], week: 201 });
    const [pain, warning, volume, seen] = attention(all);
    expect(pain).toMatchObject({ code: 'pain', sessionId: 's6', text: 'Rated pain 6 of 10.' });
    expect(warning).toMatchObject({ code: 'warning', sessionId: 's3', atMs: 3 });
    expect(warning?.text).toBe('Two of five catches missed.');
    expect(volume?.code).toBe('volume');
    expect(seen).toMatchObject({ code: 'seen-warning', sessionId: 's2' });
    const urgent = { ...hurt(2), warning: 'red-flag' as const, rating: null, sessions: 2 };
    expect(attention(facts({ pain: urgent }))[0]?.text).toBe(
      'Reported a sign that can need urgent care. Sessions with pain that are open: 2.',
    );
  });

  it('a question, quoted, with what an answer goes to', () => {
    const question = { sessionId: 's1', atMs: 1, answerTo: 'note', text: 'More balls?' };
    expect(attention(facts({ questions: [question] }))[0]).toMatchObject({
      code: 'unanswered',
      quote: 'More balls?',
      answerTo: 'note',
      sessionId: 's1',
    });
  });

  it('balls out of the mix, with how many', () => {
    expect(attention(facts({ balls: 10, ballsInMix: 4 }))[0]?.text).toBe(
      '4 of 10 balls after enough rehearsals (2 to 1), last 14 days.',
    );
    expect(codes({ balls: 10, ballsInMix: 8 })).toEqual(['none']);
    expect(codes({ balls: 4, ballsInMix: 0 })).toEqual(['none']);
  });

  it('too much, too little, or nothing at all', () => {
    expect(attention(facts({ week: 201 }))[0]?.text).toMatch(/^201 repetitions in 7 days/);
    expect(codes({ fortnight: 99 })).toEqual(['volume']);
    expect(codes({ fortnight: 0, joinedMs: NOW - 5 * DAY_MS, lastPracticeMs: null })).toEqual([
      'none',
    ]);
    expect(attention(facts({ fortnight: 0, lastPracticeMs: NOW - 12 * DAY_MS }))[0]?.text).toBe(
      'No practice for 12 days.',
    );
  });

  it('never too little while a session is not analysed, nor no practice beside a simulated one', () => {
    expect(codes({ fortnight: 0, unknown: 1 })).toEqual(['none']);
    const never = { lastPracticeMs: null, simulated: 2 };
    const joined = (days: number) => ({ ...never, joinedMs: NOW - days * DAY_MS });
    expect(attention(facts(joined(5)))[0]?.text).toBe('Only simulated sessions so far.');
    expect(attention(facts(joined(12)))[0]?.text).toBe(
      'Joined 12 days ago, only simulated sessions so far.',
    );
  });

  it('drift: three sessions outside the target after three to six inside, with how many', () => {
    const [need] = attention(facts({ recent: hold([0.7, 0.6, 0.8, 1.2, 1.3, 1.1]) }));
    expect(need?.code).toBe('drift');
    expect(need?.text).toBe(
      'Hold at the top: 0.7 s in the last 3 sessions (24 rehearsals), target at least 1 s; 1.2 s in the 3 before (24).',
    );
    expect(codes({ recent: hold([0.7, 0.6, 0.8, 1.2, 1.3]) })).toEqual(['none']);
    expect(codes({ recent: hold([0.7, 0.6, 0.8, 0.7, 0.7, 0.7]) })).toEqual(['none']);
    expect(codes({ recent: hold([0.6, 0.5, 0.6, 0.9, 0.9, 0.9]) })).toEqual(['drift']);
    expect(codes({ recent: hold([1.2, 0.6, 1.2, 1.2, 1.3, 1.1]) })).toEqual(['none']);
  });
});

const small = fc.integer({ min: 0, max: 3 });
const anyFacts = fc
  .record({
    pain: fc.option(fc.integer({ min: 0, max: 10 }).map(hurt)),
    unreviewed: small,
    questions: fc.array(
      small.map((atMs) => ({ sessionId: 'q', atMs, answerTo: 'note', text: 'Why?' })),
      { maxLength: 2 },
    ),
    warnings: fc.array(
      fc.tuple(small, fc.boolean()).map(([n, seen]) => warned(n, seen)),
      {
        maxLength: 3,
      },
    ),
    balls: fc.integer({ min: 0, max: 20 }),
    week: fc.integer({ min: 0, max: 300 }),
    fortnight: fc.integer({ min: 0, max: 600 }),
    lastPracticeMs: fc.option(fc.integer({ min: 0, max: NOW })),
    recent: fc
      .array(
        fc.integer({ min: 0, max: 300 }).map((n) => n / 100),
        { maxLength: 9 },
      )
      .map(hold),
  })
  .map(facts);
const anyPlaced = fc.record({
  id: fc.string({ minLength: 1, maxLength: 2 }),
  name: fc.constantFrom('Ada', 'Bo'),
  needs: anyFacts.map(attention),
});

describe('the order of students', () => {
  it('has needs in the order of need, never none of them, each with a line', () => {
    fc.assert(
      fc.property(anyFacts, (some) => {
        const needs = attention(some);
        const ranks = needs.map(({ code }) => NEED_CODES.indexOf(code));
        expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
        expect(needs.length).toBeGreaterThan(0);
        expect(needs.every(({ text }) => text.length > 0 && !/NaN|undefined|null/.test(text))).toBe(
          true,
        );
      }),
    );
  });

  it('is total and the same whatever the order before', () => {
    fc.assert(
      fc.property(fc.uniqueArray(anyPlaced, { selector: (p) => p.id, maxLength: 12 }), (all) => {
        const sorted = [...all].sort(compareAttention);
        expect([...all].reverse().sort(compareAttention)).toEqual(sorted);
        for (const [i, a] of sorted.entries())
          for (const b of sorted.slice(i + 1)) expect(compareAttention(a, b)).toBeLessThan(0);
      }),
    );
  });

  it('puts pain before everything else', () => {
    fc.assert(
      fc.property(anyPlaced, anyPlaced, (a, b) => {
        const hurts = (p: Placed): boolean => p.needs[0]?.code === 'pain';
        if (hurts(a) && !hurts(b)) expect(compareAttention(a, b)).toBeLessThan(0);
      }),
    );
  });
});
