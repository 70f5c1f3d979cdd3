import { describe, expect, it } from 'vitest';
import { finish, result, start, step } from '../../src/analysis/analysis.ts';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import type { ImuSample } from '../../src/sensors/sample.ts';
import { simulateSession } from '../../src/sensors/sources/synthetic/index.ts';

type Sensor = ImuSample['sensor'];

/** Four good rehearsals; the sensors named are silent from the second's top on, for so long. */
function afterSilence(seed: number, silent: readonly Sensor[], silentS: number) {
  const hand = seed % 2 === 0 ? 'right' : 'left';
  const session = simulateSession({ seed, hand, script: 'r r r r', radio: { lostShare: 0 } });
  const fromS = (session.truth.repetitions[1]?.topS ?? 0) - 0.2;
  const lost = (s: ImuSample) =>
    silent.includes(s.sensor) && s.timeS > fromS && s.timeS < fromS + silentS;
  const state = start({ hand, plan: DEFAULT_PLAN });
  const ignore = (): void => {};
  for (const event of session.events) step(state, { kind: 'event', event }, ignore);
  const samples = session.packets.flatMap((p) => p.samples).sort((a, b) => a.timeS - b.timeS);
  for (const sample of samples) if (!lost(sample)) step(state, { kind: 'sample', sample }, ignore);
  finish(state, ignore);
  return result(state, 'x').repetitions.filter((r) => r.kind === 'rehearsal');
}

describe('after sensors were silent in the middle of a rehearsal', () => {
  it.each<[string, readonly Sensor[], number]>([
    ['both, 2.3 s', ['chest', 'trailArm'], 2.3],
    ['the chest, 1.6 s', ['chest'], 1.6],
    ['the arm, 3 s', ['trailArm'], 3],
    ['both, 0.6 s', ['chest', 'trailArm'], 0.6],
  ])('a good rehearsal is never judged a bad one (%s)', (_what, silent, silentS) => {
    for (const seed of [3, 4]) {
      const found = afterSilence(seed, silent, silentS);
      const failed = found.filter((r) => r.verdict.passed === false);
      expect(failed.map((r) => [seed, r.index, r.flags, r.verdict.cue.text])).toEqual([]);
      // and the practice goes on: the first and the last two are scored as ever
      expect(found.filter((r) => r.verdict.passed === true).length, `seed ${seed}`).toBe(3);
    }
  });
});

type Moment = 'backswing' | 'top' | 'hold' | 'release' | 'catch';

const made = new Map<string, ReturnType<typeof analysedBefore>>();
/** Three repetitions, analysed up to just before the second begins. */
function beforeSecond(seed: number, script: string) {
  const key = `${seed} ${script}`;
  const known = made.get(key) ?? analysedBefore(seed, script);
  made.set(key, known);
  return known;
}

function analysedBefore(seed: number, script: string) {
  const hand = seed % 2 === 0 ? 'right' : 'left';
  const session = simulateSession({ seed, hand, script, radio: { lostShare: 0 } });
  const second = session.truth.repetitions[1];
  if (second === undefined) throw new Error('not the script that was asked for');
  const state = start({ hand, plan: DEFAULT_PLAN });
  for (const event of session.events) step(state, { kind: 'event', event }, () => {});
  const samples = session.packets.flatMap((p) => p.samples).sort((a, b) => a.timeS - b.timeS);
  const from = samples.findIndex((s) => s.timeS > second.startS - 1);
  for (const sample of samples.slice(0, from)) step(state, { kind: 'sample', sample }, () => {});
  return { before: JSON.stringify(state), rest: samples.slice(from), second };
}

/** Good rehearsals, and when things happen in the second. */
function untilSecond(seed: number) {
  const { before, rest, second } = beforeSecond(seed, 'r r r');
  if (second.kind !== 'rehearsal') throw new Error('not the script that was asked for');
  const at: Record<Moment, number> = {
    backswing: second.topS - 0.5,
    top: second.topS - 0.1,
    hold: second.topS + 0.4,
    release: second.chestOnsetS - 0.1,
    catch: (second.catchS ?? second.endS) - 0.15,
  };
  return { before, rest, at };
}

describe('a rehearsal that the signal cuts off', () => {
  const MOMENTS: readonly Moment[] = ['backswing', 'top', 'hold', 'release', 'catch'];
  const SENSORS: readonly (readonly Sensor[])[] = [['chest'], ['trailArm'], ['chest', 'trailArm']];

  it.each([11, 12])(
    'stands among the others, not scored, wherever and however long (golfer %i)',
    (seed) => {
      const { before, rest, at } = untilSecond(seed);
      const lengths = [0.3, 0.7, 1.2, 2, 3];
      const wrong: unknown[] = [];
      MOMENTS.forEach((moment, m) =>
        SENSORS.forEach((silent, k) => {
          const silentS = lengths[(m + 2 * k + seed) % lengths.length] ?? 1;
          const lost = (s: ImuSample) =>
            silent.includes(s.sensor) && s.timeS > at[moment] && s.timeS < at[moment] + silentS;
          const state = JSON.parse(before) as ReturnType<typeof start>;
          for (const sample of rest)
            if (!lost(sample)) step(state, { kind: 'sample', sample }, () => {});
          finish(state, () => {});
          const { repetitions } = result(state, 'x');
          const verdicts = repetitions.map((r) =>
            r.kind === 'rehearsal' ? r.verdict.passed : r.kind,
          );
          const flagged = repetitions.map((r) => r.flags.includes('gap'));
          const seen = JSON.stringify([verdicts, flagged]);
          if (seen !== '[[true,null,true],[false,true,false]]')
            wrong.push([moment, silent, silentS, seen]);
        }),
      );
      expect(wrong).toEqual([]);
    },
  );

  it('says why, shows no number of it, and can be said to have been a ball', () => {
    const { before, rest, at } = untilSecond(11);
    const state = JSON.parse(before) as ReturnType<typeof start>;
    const lost = (s: ImuSample) => s.timeS > at.top && s.timeS < at.top + 3;
    const mark = (onsetS: number) =>
      ({ type: 'mark-ball', onsetS, durationS: 0, value: null }) as const;
    for (const sample of rest) if (!lost(sample)) step(state, { kind: 'sample', sample }, () => {});
    finish(state, () => {});
    const [, cut] = result(state, 'x').repetitions;
    expect(cut).toMatchObject({ kind: 'rehearsal', flags: ['gap', 'not-seen'] });
    expect(cut?.kind === 'rehearsal' && cut.verdict).toMatchObject({
      passed: null,
      cue: { code: 'not-scored', text: expect.stringContaining('signal lost') as string },
    });
    expect(cut?.kind === 'rehearsal' && cut.verdict.checks.every((c) => c.value === null)).toBe(
      true,
    );
    step(
      state,
      { kind: 'event', event: mark(((cut?.startS ?? 0) + (cut?.endS ?? 0)) / 2) },
      () => {},
    );
    finish(state, () => {});
    expect(result(state, 'x').repetitions[1]).toMatchObject({ kind: 'ball' });
  });

  it('is not invented where the signal goes while nobody swings', () => {
    const session = simulateSession({ seed: 13, script: 'r waggle r', radio: { lostShare: 0 } });
    const [one, two] = session.truth.repetitions;
    const samples = session.packets.flatMap((p) => p.samples).sort((a, b) => a.timeS - b.timeS);
    const [fromS = 0, toS = 0] = [one?.endS, two?.startS];
    const gaps = [0.2, 0.5, 0.8].map((share) => fromS + share * (toS - fromS));
    const state = start({ hand: session.hand, plan: DEFAULT_PLAN });
    for (const event of session.events) step(state, { kind: 'event', event }, () => {});
    for (const sample of samples)
      if (!gaps.some((g) => sample.timeS > g && sample.timeS < g + 0.6))
        step(state, { kind: 'sample', sample }, () => {});
    finish(state, () => {});
    expect(result(state, 'x').repetitions).toHaveLength(2);
  });
});

describe('a swing at a ball that the signal cuts off', () => {
  const SEEDS = [11, 12];
  /** The second of three, with these sensors silent from `fromS` before its delivery on, for so long. */
  function cut(
    seed: number,
    word: string,
    silent: readonly Sensor[],
    beforeS: number,
    forS: number,
  ) {
    const { before, rest, second } = beforeSecond(seed, `r ${word} r`);
    const fromS = ('deliveryS' in second ? second.deliveryS : second.topS) - beforeS;
    const lost = (s: ImuSample) =>
      silent.includes(s.sensor) && s.timeS > fromS && s.timeS < fromS + forS;
    const state = JSON.parse(before) as ReturnType<typeof start>;
    for (const sample of rest) if (!lost(sample)) step(state, { kind: 'sample', sample }, () => {});
    finish(state, () => {});
    const { repetitions, ledger } = result(state, 'x');
    expect(repetitions.map((r) => r.kind === 'rehearsal')).toEqual([true, expect.anything(), true]);
    return { second, told: repetitions[1], ledger };
  }

  it.each([0.7, 2, 3])(
    'is a ball where the arm felt its blow while the chest was silent (%f s)',
    (forS) => {
      for (const seed of SEEDS) {
        const { second, told, ledger } = cut(seed, 'b', ['chest'], 0.3, forS);
        expect(told).toMatchObject({ kind: 'ball', flags: ['gap', 'not-seen'] });
        const impactS = (told?.kind === 'ball' && told.impactS) || 0;
        expect(Math.abs(impactS - (second.kind === 'ball' ? second.impactS : 1))).toBeLessThan(
          0.02,
        );
        expect(ledger.entries).toBe('rbr');
      }
    },
  );

  it('is no rehearsal where the signal went in a fast swing that had not held', () => {
    for (const seed of SEEDS) {
      const { told, ledger } = cut(seed, 'b', ['chest', 'trailArm'], 0.08, 0.7);
      expect(told).toMatchObject({ kind: 'practiceSwing', flags: ['gap', 'not-seen'] });
      expect(ledger.entries).toBe('rr');
    }
  });

  it.each([0.05, 0.1, 0.3, 1.2])(
    'may have been one where only the arm was silent at the blow: it is said (%f s)',
    (forS) => {
      for (const seed of SEEDS) {
        const { told } = cut(seed, 'b', ['trailArm'], -0.02, forS);
        expect(told?.kind).toBe('practiceSwing');
        expect(told?.flags).toContain('impact-not-seen');
      }
    },
  );

  it('is not said of a practice swing that was all seen', () => {
    const { told } = cut(12, 'p', [], 0, 0);
    expect(told?.kind).toBe('practiceSwing');
    expect(told?.flags).toEqual([]);
  });
});
