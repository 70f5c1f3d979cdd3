import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type PainClosed,
  type SessionSigns,
  openPain,
  openWarnings,
} from '../../src/coaching/concerns.ts';

const QUIET = { painFreeMs: null, reviewedMs: null };

/** A session on the day that its id says. */
const signs = (day: number, own: Partial<SessionSigns> = {}): SessionSigns => ({
  sessionId: `s${day}`,
  startedMs: day,
  receivedMs: day,
  reviewed: false,
  underPlan: true,
  painBefore: null,
  painAfter: null,
  warnings: [],
  ...own,
});
const pain = (all: readonly SessionSigns[], closed: readonly PainClosed[] = []) =>
  openPain(all, QUIET, closed);

describe('pain', () => {
  it('is open from four of ten, from a rise of two, or with a warning of it', () => {
    expect(pain([signs(1, { painBefore: 3, painAfter: 3 })])).toBeNull();
    expect(pain([signs(1, { painBefore: 4 })])?.sessionId).toBe('s1');
    expect(pain([signs(1, { painBefore: 1, painAfter: 3 })])?.sessionId).toBe('s1');
    expect(pain([signs(1, { warnings: ['missed'] })])).toBeNull();
    expect(pain([signs(1, { warnings: ['pain-now', 'red-flag'], painAfter: 2 })])).toEqual({
      sessionId: 's1',
      startedMs: 1,
      warning: 'red-flag',
      rating: 2,
      sessions: 1,
    });
  });

  it('stays when its session is reviewed', () => {
    expect(pain([signs(1, { painAfter: 6, reviewed: true })])?.rating).toBe(6);
  });

  it('ends with a later session that is free of it, not with one in which nobody asked', () => {
    const hurt = signs(1, { painAfter: 6 });
    expect(pain([hurt, signs(2)])?.sessionId).toBe('s1');
    expect(pain([hurt, signs(2, { warnings: ['missed'] })])?.sessionId).toBe('s1');
    expect(pain([hurt, signs(2, { painAfter: 1, warnings: ['missed'] })])).toBeNull();
    expect(pain([hurt, signs(2, { painAfter: 1 }), signs(3, { painAfter: 5 })])).toMatchObject({
      sessionId: 's3',
      sessions: 1,
    });
    expect(pain([signs(0, { painAfter: 0 }), hurt])?.sessionId).toBe('s1');
    expect(openPain([hurt], { ...QUIET, painFreeMs: 2 }, [])).toBeNull();
    expect(openPain([hurt], { ...QUIET, painFreeMs: 0 }, [])).not.toBeNull();
  });

  it('ends with the word of the coach, who knew what had come by then and nothing else', () => {
    const hurt = signs(3, { painAfter: 6 });
    const closed = { throughMs: 3, atMs: 4 };
    expect(pain([hurt], [closed])).toBeNull();
    expect(pain([hurt, signs(5, { painAfter: 4 })], [closed])?.sessionId).toBe('s5');
    const late = signs(2, { painAfter: 7, receivedMs: 5 });
    expect(pain([hurt, late], [closed])?.sessionId).toBe('s2');
  });
});

describe('another warning', () => {
  const warned = (day: number, own: Partial<SessionSigns> = {}) =>
    signs(day, { warnings: ['missed'], ...own });

  it('is one of its kind with the newest session that has it, pain apart', () => {
    const all = [warned(1), warned(2), signs(3, { warnings: ['volume', 'pain-now'] })];
    expect(openWarnings(all, QUIET).map((w) => [w.id, w.sessionId])).toEqual([
      ['volume', 's3'],
      ['missed', 's2'],
    ]);
  });

  it('fades after a later session that was reviewed under the plan of now and is without it', () => {
    const open = (...later: SessionSigns[]) =>
      openWarnings([warned(1), ...later], QUIET).some((w) => w.id === 'missed');
    expect(open(signs(2))).toBe(true);
    expect(open(signs(2, { reviewed: true, underPlan: false }))).toBe(true);
    expect(open(signs(0, { reviewed: true }))).toBe(true);
    expect(open(signs(2, { reviewed: true }))).toBe(false);
    expect(open(signs(2, { reviewed: true, warnings: ['volume'] }))).toBe(false);
    expect(openWarnings([warned(1)], { reviewedMs: 2 })).toEqual([]);
  });

  it('is seen once its own session was reviewed; one that was not is shown before it', () => {
    expect(openWarnings([warned(1, { reviewed: true })], QUIET)[0]).toMatchObject({ seen: true });
    expect(openWarnings([warned(1), warned(2, { reviewed: true })], QUIET)[0]).toMatchObject({
      sessionId: 's1',
      seen: false,
    });
  });
});

describe('reviewing', () => {
  const rating = fc.option(fc.integer({ min: 0, max: 10 }));
  const day = fc.record({
    painBefore: rating,
    painAfter: rating,
    warnings: fc.subarray(['missed', 'volume', 'pain-now', 'red-flag'] as const),
  });

  it('never changes whether pain is open', () => {
    fc.assert(
      fc.property(fc.array(day, { maxLength: 6 }), fc.array(fc.boolean()), (days, reviewed) => {
        const before = days.map((own, i) => signs(i, own));
        const after = before.map((s, i) => ({ ...s, reviewed: reviewed[i] ?? false }));
        expect(pain(after)).toEqual(pain(before));
      }),
    );
  });
});
