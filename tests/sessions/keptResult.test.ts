import { setImmediate } from 'node:timers/promises';
import { describe, expect, it, onTestFinished } from 'vitest';
import * as analysis from '../../src/analysis/analysis.ts';
import type { AnalysisResult } from '../../src/analysis/result.ts';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import { PracticeRecorder } from '../../src/main/recorder.ts';
import { livePractice } from '../../src/practice/livePractice.ts';
import type { PracticeCommand } from '../../src/practice/obey.ts';
import { SyntheticSource } from '../../src/sensors/sources/synthetic/index.ts';
import type { SimulationOptions } from '../../src/sensors/sources/synthetic/options.ts';
import { analyseSession } from '../../src/sessions/analyseSession.ts';
import { readAnalysis, readPlan } from '../../src/sessions/derivatives.ts';
import { openSession } from '../../src/sessions/openSession.ts';
import { openStore } from '../../src/sessions/store/store.ts';
import { readHere } from '../../src/sessions/store/reading.ts';
import { handTimers } from '../practice/handTimers.ts';
import { scratch } from './makeSession.ts';

interface Said {
  readonly atS: number;
  readonly command: PracticeCommand;
}

const ANSWERS = {
  clubConfirmed: true,
  historyConfirmed: true,
  warmedUp: false,
  redFlag: false,
  pain: 1,
  signs: [],
} as const;

interface Practised extends Pick<SimulationOptions, 'seed' | 'hand' | 'script' | 'radio'> {
  readonly said?: readonly Said[];
  readonly untilS: number;
  /** With the guided start, a person who has practised much and is not warmed up. */
  readonly guided?: true;
}

const CLOSE = { type: 'close', pain: 3, signs: [], note: '' } as const;

/** Practises as a service does, in simulated time, and closes the recording. @returns its folder */
async function practised({ said = [], untilS, guided, ...simulated }: Practised): Promise<string> {
  const clock = handTimers();
  const source = new SyntheticSource({
    ...simulated,
    timers: clock.timers,
    ...(guided && { prompted: true }),
  });
  const hand = simulated.hand ?? 'right';
  const practice = livePractice({
    practiceId: 'p',
    source,
    chain: analysis,
    settings: {
      hand,
      plan: DEFAULT_PLAN,
      emitFrames: true,
      ...(guided && { history: { thisWeek: 10_000, weeksBefore: [3, 4] } }),
    },
    now: clock.now,
    ...(guided && { guided, person: { firstUse: false, painBefore: 0, lastSession: null } }),
  });
  const store = await openStore(scratch(), { reading: readHere });
  onTestFinished(() => store.close());
  const recorder = new PracticeRecorder({ store, practice, date: () => new Date() });
  practice.start();
  const commands = [...said];
  for (let s = 0; s < untilS; s += 0.25) {
    clock.pass(250);
    await setImmediate();
    while (commands[0] !== undefined && commands[0].atS <= s) {
      const { command } = commands.shift()!;
      expect(practice.obey(command), JSON.stringify(command)).toBeNull();
    }
  }
  practice.obey({ type: 'finish' });
  await recorder.end();
  practice.obey(CLOSE);
  await recorder.close();
  await practice.stop();
  return store.folderOf(practice.view().keeping!.sessionId!);
}

async function keptAndAgain(folder: string): Promise<[AnalysisResult | null, AnalysisResult]> {
  const session = await openSession(folder);
  onTestFinished(() => session.close());
  const again = await analyseSession(session, await readPlan(session.files));
  return [await readAnalysis(session.files), JSON.parse(JSON.stringify(again)) as AnalysisResult];
}

/** Where two results differ, and how. */
function differing(kept: unknown, again: unknown, path = 'result'): string[] {
  if (typeof kept !== 'object' || typeof again !== 'object' || kept === null || again === null)
    return Object.is(kept, again) ? [] : [`${path}: ${String(kept)}, again ${String(again)}`];
  const keys = new Set([...Object.keys(kept), ...Object.keys(again)]);
  return [...keys].flatMap((key) =>
    differing(
      (kept as Record<string, unknown>)[key],
      (again as Record<string, unknown>)[key],
      `${path}.${key}`,
    ),
  );
}

const command = (atS: number, said: PracticeCommand): Said => ({ atS, command: said });
const LOSSY = { lostShare: 0.03, stallShare: 0.02, longestRun: 4 };
const gap = (fromS: number, toS: number) => ({ gaps: [{ fromS, toS }] });

const PRACTICES: readonly (Practised & { readonly name: string })[] = [
  { name: 'plain', seed: 1, script: 'r r b', untilS: 95 },
  { name: 'left-handed', seed: 2, hand: 'left', script: 'r b r p', untilS: 100 },
  { name: 'with losses', seed: 3, script: 'r r:arms-first b', radio: LOSSY, untilS: 95 },
  {
    name: 'left-handed with losses',
    seed: 4,
    hand: 'left',
    script: 'r b:0.4 r',
    radio: LOSSY,
    untilS: 95,
  },
  {
    name: 'with a gap of the chest',
    seed: 5,
    script: 'r r b r',
    radio: { chest: gap(62, 66), trailArm: {} },
    untilS: 110,
  },
  {
    name: 'with a gap of the arm',
    seed: 6,
    script: 'r r b r',
    radio: { chest: {}, trailArm: gap(58, 64) },
    untilS: 110,
  },
  {
    name: 'with marks',
    seed: 7,
    script: 'r r b p r',
    untilS: 120,
    said: [
      command(75, { type: 'correct', index: 1, kind: 'ball' }),
      command(80, { type: 'undo' }),
      command(80, { type: 'correct', index: 1, kind: 'ignored' }),
      command(119, { type: 'correct', index: 2, kind: 'practiceSwing' }),
    ],
  },
  {
    name: 'with a pause',
    seed: 8,
    script: 'r r walk b r',
    untilS: 120,
    said: [command(67.5, { type: 'pause' }), command(84, { type: 'resume' })],
  },
  {
    name: 'with pain',
    seed: 9,
    hand: 'left',
    script: 'r r b r',
    untilS: 100,
    said: [
      command(62, { type: 'pain', rating: 2, signs: [] }),
      command(75, { type: 'pain', rating: 4, signs: [] }),
    ],
  },
  {
    name: 'with taps',
    seed: 10,
    script: 'r taps idle:5 taps r b',
    untilS: 110,
    said: [command(1, { type: 'double-tap', on: true })],
  },
];

const GUIDED: Practised = {
  seed: 5,
  script: 'r r b',
  guided: true,
  untilS: 190,
  said: [
    command(0, { type: 'safety', answers: ANSWERS }),
    command(0, { type: 'next' }),
    command(4, { type: 'next' }),
    command(70, { type: 'next' }),
    command(185, { type: 'correct', index: 1, kind: 'ball' }),
  ],
};

describe('A practice that was kept', { timeout: 300_000 }, () => {
  it.each(PRACTICES)('is analysed again to the last digit: $name', async (p) => {
    const [kept, again] = await keptAndAgain(await practised(p));
    expect(kept!.repetitions.length).toBeGreaterThan(1);
    expect(differing(kept, again)).toEqual([]);
  });

  it('keeps what was told before the start', async () => {
    const [kept, again] = await keptAndAgain(await practised(GUIDED));
    expect(kept!.repetitions.length).toBeGreaterThan(1);
    const warned = kept!.warnings.map(({ id }) => id);
    expect(warned).toEqual(expect.arrayContaining(['warm-up', 'pain-next-day', 'volume']));
    expect(differing(kept, again)).toEqual([]);
  });
});
