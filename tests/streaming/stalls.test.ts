import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { AnalysisOutput } from '../../src/analysis/contract.ts';
import type { PracticeView } from '../../src/streaming/contract.ts';
import { LIVE_ONLY } from '../../src/streaming/secondScreen/liveOnly.ts';
import type { Lens } from '../../src/streaming/feed.ts';
import { ball, frame, phase, rehearsal } from '../practice/scripted.ts';
import { type Joined, join, pass, play, sleeps } from './stallingPage.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

const END_S = 12;

/** Swings one after another, and at last nothing at all: what is missed then comes with no later message. */
const SCRIPT: [number, AnalysisOutput][] = [
  ...Array.from({ length: 4 }, (_, i): [number, AnalysisOutput][] => {
    const atS = 1 + 2 * i;
    const repetition = i % 3 === 2 ? ball(i + 1) : rehearsal(i + 1);
    return [
      [atS, phase('address', atS)],
      [atS + 0.5, phase('top', atS + 0.5, 0.4)],
      [atS + 1, phase('caught', atS + 1)],
      [atS + 1.2, { kind: 'repetition', repetition, others: [] }],
    ];
  }).flat(),
  ...Array.from({ length: 40 }, (_, i): [number, AnalysisOutput] => [i / 5, frame(i / 5, i, 30)]),
].sort(([a], [b]) => (a as number) - (b as number)) as [number, AnalysisOutput][];

/** Of the curve both keep what is in its window; the page cuts what is older only when more comes. */
const newest = (view: PracticeView): unknown => ({ ...view, curve: view.curve.timeS.slice(-100) });

const shownBy = ({ practice }: Joined, lens?: Lens): PracticeView => {
  const view = structuredClone(practice.view()) as PracticeView;
  return lens === undefined ? view : lens.show(view);
};

describe('A page that stands still now and then', () => {
  it.each([
    ['the main page', undefined],
    ['the second screen', LIVE_ONLY],
  ] as const)(
    'shows what the service knows within a second of waking: %s',
    async (_who, lens) => {
      let cases = 0;
      await fc.assert(
        fc.asyncProperty(sleeps(END_S), fc.boolean(), async (asleep, endsAsleep) => {
          const joined = join(SCRIPT, undefined, { lens });
          const all = endsAsleep ? [...asleep, { fromMs: 6500, toMs: END_S * 1000 }] : asleep;
          await play(joined, END_S, all);
          // The service goes on, but nothing of it changes any more.
          await joined.practice.stop();
          joined.thread.wake();
          await pass(1000);
          expect(newest(joined.state().view!)).toEqual(
            JSON.parse(JSON.stringify(newest(shownBy(joined, lens)))),
          );
          await joined.end();
          cases += 1;
        }),
        { numRuns: 150 },
      );
      expect(cases).toBe(150);
    },
    600_000,
  );

  it('gets one snapshot for each time it was passed over, not one for each confirmation', async () => {
    const joined = join(SCRIPT);
    await play(joined, 8, [{ fromMs: 1000, toMs: 6000 }]);
    await pass(500);
    expect(joined.got['snapshot']).toBe(2);
    await joined.end();
  });
});

describe('A service that is gone', () => {
  it('is noticed within two seconds though its socket stays open, and a page that slept blames nobody', async () => {
    const joined = join(SCRIPT);
    await play(joined, 3, []);
    await joined.practice.stop();
    await pass(20_000);
    // Nothing changes, but the service is there.
    expect(joined.state().connection).toBe('live');
    joined.thread.sleep();
    await pass(5000);
    joined.thread.wake();
    await pass(1);
    expect(joined.state().connection).toBe('live');
    joined.freeze();
    let lostMs = 0;
    while (joined.state().connection === 'live' && lostMs < 5000) {
      await pass(10);
      lostMs += 10;
    }
    expect(lostMs).toBeLessThanOrEqual(2000);
    expect(joined.state().view).not.toBeNull();
    joined.thaw();
    await pass(600);
    expect(joined.state().connection).toBe('live');
    await joined.end();
  });
});
