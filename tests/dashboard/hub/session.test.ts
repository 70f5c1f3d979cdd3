import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { JudgedRepetition } from '../../../src/coaching/judgement.ts';
import { unfit } from '../../../src/dashboard/hub/session/fit.ts';
import { lineUp, pairsOf } from '../../../src/dashboard/hub/session/lineUp.ts';
import {
  commentCounts,
  pinOf,
  repetitionAt,
  threadsOf,
} from '../../../src/dashboard/hub/session/threads.ts';
import type { Comment } from '../../../src/streaming/hubContract/review.ts';

const comment = (id: string, atMs: number, more: Partial<Comment> = {}): Comment => ({
  id,
  by: 'Carl',
  byRole: 'coach',
  mine: true,
  atMs,
  text: id,
  index: null,
  momentS: null,
  replyTo: null,
  onNote: false,
  ...more,
});

const repetitions = [
  { index: 1, startS: 10, endS: 14 },
  { index: 2, startS: 15, endS: 19 },
] as unknown as readonly JudgedRepetition[];

describe('comments', () => {
  it('stand in threads, an answer to an answer in the same one', () => {
    const threads = threadsOf([
      comment('c', 3, { replyTo: 'b' }),
      comment('a', 1),
      comment('b', 2, { replyTo: 'a' }),
      comment('d', 4),
    ]);
    expect(threads.map(({ root, replies }) => [root.id, ...replies.map((r) => r.id)])).toEqual([
      ['a', 'b', 'c'],
      ['d'],
    ]);
  });

  it('lose no answer when what it answers is gone', () => {
    expect(threadsOf([comment('b', 2, { replyTo: 'gone' })])).toHaveLength(1);
  });

  it('lose nothing however they answer each other', () => {
    const any = fc.array(
      fc.record({ atMs: fc.integer({ min: 0, max: 50 }), to: fc.integer({ min: -1, max: 9 }) }),
      { maxLength: 10 },
    );
    fc.assert(
      fc.property(any, (rows) => {
        const all = rows.map(({ atMs, to }, i) =>
          comment(`${i}`, atMs, { replyTo: to < 0 || to === i ? null : `${to}` }),
        );
        fc.pre(
          rows.every((r, i) => rows[r.to] === undefined || rows[r.to]!.atMs < r.atMs || r.to === i),
        );
        const kept = threadsOf(all).reduce((n, { replies }) => n + 1 + replies.length, 0);
        expect(kept).toBe(all.length);
      }),
    );
  });

  it('on a moment hang on the repetition that is shown then', () => {
    expect(repetitionAt(repetitions, 12)?.index).toBe(1);
    expect(repetitionAt(repetitions, 14.4)?.index).toBe(1);
    expect(repetitionAt(repetitions, 15.1)?.index).toBe(2);
    expect(repetitionAt(repetitions, 40)).toBeNull();
    expect(pinOf({ index: null, momentS: 12 }, repetitions)).toBe(1);
    expect(pinOf({ index: 7, momentS: null }, repetitions)).toBe(7);
  });

  it('are counted on each repetition with their answers', () => {
    const threads = threadsOf([
      comment('a', 1, { index: 2 }),
      comment('b', 2, { replyTo: 'a' }),
      comment('c', 3),
    ]);
    expect([...commentCounts(threads, repetitions)]).toEqual([[2, 2]]);
  });
});

describe('a film', () => {
  it('is lined up by one moment exactly and by three with their mean', () => {
    expect(lineUp([{ clipS: 2, sessionS: 62.5 }])).toEqual({ startS: 60.5, spreadMs: 0 });
    const three = lineUp(pairsOf([1, 2, 3], [61, 62.03, 62.97]));
    expect(three?.startS).toBeCloseTo(60, 9);
    expect(three?.spreadMs).toBeCloseTo(60, 6);
    expect(lineUp([])).toBeNull();
  });

  it('takes marks in pairs and leaves out those without a partner', () => {
    expect(pairsOf([1, 2, 3], [11])).toEqual([{ clipS: 1, sessionS: 11 }]);
  });

  it('of another kind or size is refused with the reason', () => {
    expect(unfit({ type: 'video/quicktime', size: 1 })).toMatch(/mp4 and webm/);
    expect(unfit({ type: 'video/mp4', size: 201 * 1024 * 1024 })).toMatch(/200 MB/);
    expect(unfit({ type: 'video/webm', size: 1000 })).toBeNull();
  });
});
