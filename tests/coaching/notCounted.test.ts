import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type CountedSession,
  NOT_COUNTED,
  lastPractice,
  practiceCounts,
  standingOf,
  unknownSessions,
  weekCounts,
  whyNotCounted,
} from '../../src/coaching/notCounted.ts';

const DAY_MS = 86_400_000;
const READ = { simulated: false, recording: false, analysed: true, problem: null };

const session = (
  day: number,
  repetitions: number,
  notCounted: CountedSession['notCounted'] = null,
) => ({
  startedMs: day * DAY_MS,
  repetitions,
  notCounted,
});

describe('why a session is not counted', () => {
  it.each([
    [{}, null],
    [{ analysed: false }, 'analysing'],
    [{ analysed: false, recording: true }, 'recording'],
    [{ analysed: false, problem: 'no calibration' }, 'failed'],
    [{ problem: 'the newer analysis failed' }, null],
    [{ simulated: true }, 'simulated'],
    [{ simulated: true, analysed: false }, 'simulated'],
    [{ watched: true }, 'simulated'],
  ])('%j: %j', (change, why) => {
    expect(whyNotCounted({ ...READ, ...change })).toBe(why);
  });

  it('a demonstration club counts its simulated sessions, once they are analysed', () => {
    expect(whyNotCounted({ ...READ, simulated: true }, true)).toBeNull();
    expect(whyNotCounted({ ...READ, simulated: true, analysed: false }, true)).toBe('analysing');
  });
});

describe('what was done', () => {
  it('is a number only where a session was counted', () => {
    const waiting = weekCounts([session(9, 0, 'analysing'), session(1, 20)], 10 * DAY_MS);
    expect(waiting).toMatchObject({ sessions: 0, repetitions: 0, notCounted: { analysing: 1 } });
    expect(standingOf(waiting)).toBe('unknown');
    expect(standingOf(weekCounts([session(9, 0)], 10 * DAY_MS))).toBe('counted');
    expect(standingOf(weekCounts([session(9, 0, 'simulated')], 10 * DAY_MS))).toBe('simulated');
    expect(standingOf(weekCounts([session(9, 0, 'failed')], 10 * DAY_MS))).toBe('unknown');
    expect(standingOf(weekCounts([session(1, 20)], 10 * DAY_MS))).toBe('none');
  });

  it('last time is the newest practice, counted or not, and never a simulated one', () => {
    const [old, waiting, simulated] = [
      session(1, 20),
      session(2, 0, 'analysing'),
      session(3, 9, 'simulated'),
    ];
    expect(lastPractice([old, waiting, simulated])).toBe(waiting);
    expect(lastPractice([simulated])).toBeNull();
  });

  it('never says nothing of a time in which somebody practised, and adds up over times', () => {
    const one = fc.record({
      startedMs: fc.integer({ min: 1, max: 20 * DAY_MS }),
      repetitions: fc.integer({ min: 0, max: 80 }),
      notCounted: fc.constantFrom(null, ...NOT_COUNTED),
    });
    fc.assert(
      fc.property(fc.array(one), fc.integer({ min: 0, max: 20 * DAY_MS }), (all, atMs) => {
        const counts = practiceCounts(all, -Infinity, atMs);
        const after = practiceCounts(all, atMs);
        const practised = lastPractice(all.filter((s) => s.startedMs <= atMs)) !== null;
        expect(['counted', 'unknown'].includes(standingOf(counts))).toBe(practised);
        const whole = practiceCounts(all);
        expect(whole.repetitions).toBe(counts.repetitions + after.repetitions);
        expect(unknownSessions(whole.notCounted)).toBe(
          unknownSessions(counts.notCounted) + unknownSessions(after.notCounted),
        );
        expect(whole.sessions + NOT_COUNTED.reduce((n, why) => n + whole.notCounted[why], 0)).toBe(
          all.length,
        );
      }),
    );
  });
});
