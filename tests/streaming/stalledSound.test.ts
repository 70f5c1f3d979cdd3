import fc from 'fast-check';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import type { AnalysisOutput } from '../../src/analysis/contract.ts';
import type { JudgedRepetition, WarningId } from '../../src/coaching/judgement.ts';
import { DEFAULT_PLAN, type Plan } from '../../src/coaching/plan.ts';
import { isPraised, sessionCount } from '../../src/coaching/sessionCount.ts';
import { warningOf } from '../../src/coaching/warnings.ts';
import { soundDesk } from '../../src/dashboard/sound/desk.ts';
import { toneLengthMs } from '../../src/dashboard/sound/tones.ts';
import { en } from '../../src/dashboard/strings/en.ts';
import type { Measures } from '../../src/swings/repetition.ts';
import { frame, phase, rehearsal } from '../practice/scripted.ts';
import { join, pass, play, sleeps } from './stallingPage.ts';

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

/** Rehearsals only, so that nothing but verdicts and warnings is to be said. */
const PLAN: Plan = { ...DEFAULT_PLAN, stage: 'movement' };
const EVERY_S = 5;
const END_S = 21;

/** Faults with different cues, so that the words of one repetition are not those of the next. */
const FAULTS: readonly { readonly holdS?: number; readonly measures?: Partial<Measures> }[] = [
  { holdS: 0.5 },
  { measures: { turnTowardTargetDeg: 10 } },
  { measures: { keptRotationDeg: -40 } },
];

interface Done {
  readonly repetition: JudgedRepetition & { readonly kind: 'rehearsal' };
  readonly caughtMs: number;
  readonly tone: 'passed' | 'notPassed';
  /** `null`: the tone is enough. */
  readonly words: string | null;
}

/** What is due after each repetition, without any stall. */
function practised(passes: readonly boolean[]): readonly Done[] {
  return passes.map((passed, i) => {
    const catchS = 3.4 + EVERY_S * i;
    const fault = passed ? {} : FAULTS[i % FAULTS.length];
    const repetition = rehearsal(i + 1, { catchS, endS: catchS + 0.2, ...fault }, PLAN);
    if (repetition.kind !== 'rehearsal') throw new Error('no rehearsal');
    const entries = passes.slice(0, i + 1).map((p) => ({ kind: 'rehearsal', passed: p }) as const);
    const count = sessionCount(entries, PLAN);
    const next = { next: 'rehearsal', toGo: null, ballTooEarly: false } as const;
    const praise =
      count.inARow > 1 ? en.count.rowSpoken(count.inARow) : repetition.verdict.cue.text;
    const words =
      passed && !isPraised(count, next) ? null : passed ? praise : repetition.verdict.cue.text;
    return { repetition, caughtMs: catchS * 1000, tone: passed ? 'passed' : 'notPassed', words };
  });
}

function scriptOf(
  done: readonly Done[],
  warnings: readonly { readonly id: WarningId; readonly atS: number }[],
): [number, AnalysisOutput][] {
  const swings = done.flatMap(({ repetition, caughtMs }): [number, AnalysisOutput][] => {
    const atS = caughtMs / 1000;
    return [
      [atS - 2.3, phase('address', atS - 2.3)],
      [atS - 1.9, phase('backswing', atS - 1.9)],
      [atS - 1.5, phase('top', atS - 1.5, 0.3)],
      [atS - 0.7, phase('top', atS - 1.5, 1.1)],
      [atS - 0.4, phase('released', atS - 0.4)],
      [atS, phase('caught', atS)],
      [atS + 0.6, { kind: 'repetition', repetition, others: [] }],
      [atS + 1.6, phase('waiting', atS + 1.6)],
    ];
  });
  const raised = warnings.map(({ id, atS }): [number, AnalysisOutput] => [
    atS,
    { kind: 'warning', warning: warningOf(id, atS) },
  ]);
  const frames = Array.from({ length: END_S * 5 }, (_, i): [number, AnalysisOutput] => [
    i / 5,
    frame(i / 5, i, 30),
  ]);
  return [...swings, ...raised, ...frames];
}

interface Heard {
  readonly atMs: number;
  readonly what: 'tone' | 'words';
  readonly name: string;
  /** Words that were said to their end. */
  whole: boolean;
}

/** The true desk with a loudspeaker that writes down what it was given. */
function listener(thread: () => ReturnType<typeof join>['thread'], speechMs: number) {
  const heard: Heard[] = [];
  const startMs = performance.now();
  const atMs = (): number => performance.now() - startMs;
  let cut: () => void = () => undefined;
  const desk = soundDesk({
    tones: {
      play: (name) => {
        heard.push({ atMs: atMs(), what: 'tone', name, whole: true });
        return toneLengthMs(name);
      },
    },
    speaker: {
      speak: (name) =>
        new Promise((resolve) => {
          const said: Heard = { atMs: atMs(), what: 'words', name, whole: false };
          heard.push(said);
          let over = false;
          cut = () => {
            over = true;
            resolve();
          };
          setTimeout(() => {
            said.whole = !over;
            thread().run(resolve);
          }, speechMs);
        }),
      cancel: () => cut(),
    },
    settings: () => ({ muted: false, volume: 1, rate: 1 }),
    caption: () => undefined,
    later: (callback, ms) => thread().later(callback, ms),
    now: () => performance.now(),
  });
  return { desk, heard };
}

const WITHIN_MS = 3000;
const IDS: readonly WarningId[] = ['missed', 'own-range', 'volume'];

const cases = fc.record({
  passes: fc.array(fc.boolean(), { minLength: 3, maxLength: 4 }),
  asleep: sleeps(END_S),
  speechMs: fc.integer({ min: 500, max: 2600 }),
  warningsMs: fc.array(fc.integer({ min: 500, max: 20_000 }), { minLength: 0, maxLength: 3 }),
});

/** What was heard of a repetition is its own, in time, once; and nothing but this, warnings and the ticks of a phase. */
function check(done: readonly Done[], heard: readonly Heard[], texts: readonly string[]) {
  const verdicts = heard.filter(
    ({ what, name }) =>
      (what === 'tone' && (name === 'passed' || name === 'notPassed')) ||
      (what === 'words' && !texts.includes(name)),
  );
  let newest = 0;
  let spoken = 0;
  verdicts.forEach(({ atMs, what, name }, i) => {
    const own = done.find(({ caughtMs }) => atMs >= caughtMs && atMs <= caughtMs + WITHIN_MS);
    expect(own, `${name} at ${atMs} belongs to no catch`).toBeDefined();
    if (own === undefined) return;
    const { index } = own.repetition;
    if (what === 'tone') {
      expect(name, `tone at ${atMs}`).toBe(own.tone);
      expect(index, `tone at ${atMs}`).toBeGreaterThan(newest);
      newest = index;
    } else {
      expect(name, `words at ${atMs}`).toBe(own.words);
      expect([verdicts[i - 1]?.what, newest], `before the words at ${atMs}`).toEqual([
        'tone',
        index,
      ]);
      spoken += 1;
    }
  });
  const others = heard.filter((h) => !verdicts.includes(h) && !texts.includes(h.name));
  for (const { atMs, name } of others) {
    const near = (fromMs: number): boolean =>
      done.some(({ caughtMs }) => Math.abs(atMs - caughtMs - fromMs) <= 700);
    const truth = { listening: near(-2300), holdReached: near(-700), warning: texts.length > 0 };
    expect(truth[name as keyof typeof truth], `${name} at ${atMs}`).toBe(true);
  }
  for (const text of texts) {
    const said = heard.filter(({ name, whole }) => name === text && whole);
    expect(said.length, text).toBeGreaterThanOrEqual(1);
  }
  return { tones: newest === 0 ? 0 : verdicts.length - spoken, spoken };
}

it('hears of each repetition its own tone and cue or nothing, in order, nothing else, and every warning', async () => {
  const total = { cases: 0, tones: 0, spoken: 0, silent: 0, snapshots: 0, warnings: 0 };
  await fc.assert(
    fc.asyncProperty(cases, async ({ passes, asleep, speechMs, warningsMs }) => {
      const done = practised(passes);
      const warnings = warningsMs.map((ms, i) => ({ id: IDS[i] ?? 'missed', atS: ms / 1000 }));
      const { desk, heard } = listener(() => joined.thread, speechMs);
      const joined = join(scriptOf(done, warnings), (state) => desk.take(state), { plan: PLAN });
      await play(joined, END_S, asleep);
      await pass(3 * 4000);
      const texts = warnings.map(({ id }) => warningOf(id, 0).text);
      const { tones, spoken } = check(done, heard, texts);
      total.cases += 1;
      total.tones += tones;
      total.spoken += spoken;
      total.silent += done.length - tones;
      total.snapshots += (joined.got['snapshot'] ?? 0) - 1;
      total.warnings += texts.length;
      await joined.end();
    }),
    { numRuns: 500 },
  );
  // The stalls were long enough to matter, and most was heard all the same.
  expect(total.cases).toBe(500);
  expect(total.snapshots).toBeGreaterThan(200);
  expect(total.silent).toBeGreaterThan(50);
  expect(total.tones).toBeGreaterThan(total.silent);
  expect(total.spoken).toBeGreaterThan(200);
  expect(total.warnings).toBeGreaterThan(300);
}, 900_000);
