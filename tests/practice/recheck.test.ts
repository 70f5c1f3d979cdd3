import { describe, expect, it } from 'vitest';
import * as analysis from '../../src/analysis/analysis.ts';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import { type LivePractice, livePractice } from '../../src/practice/livePractice.ts';
import type { PracticeView } from '../../src/practice/view.ts';
import { SyntheticSource } from '../../src/sensors/sources/synthetic/index.ts';
import { analyseSession } from '../../src/sessions/analyseSession.ts';
import { readPlan, writePlan } from '../../src/sessions/derivatives.ts';
import { writeKnown } from '../../src/sessions/knownCalibration.ts';
import { openSession, requireCalibration } from '../../src/sessions/openSession.ts';
import { createSessionWriter } from '../../src/sessions/write/sessionWriter.ts';
import { bidsValidator, validate } from '../sessions/bidsValidator.ts';
import { scratch } from '../sessions/makeSession.ts';
import { handTimers } from './handTimers.ts';
import { type Turn, turned } from './turned.ts';

const WELL = {
  clubConfirmed: true,
  historyConfirmed: true,
  warmedUp: true,
  redFlag: false,
  pain: 1,
  signs: [],
} as const;

type Kept = NonNullable<ReturnType<LivePractice['calibrated']>>;

function day(kept: Kept | null, seed = 5, turn: Turn | null = null) {
  const clock = handTimers();
  const plain = new SyntheticSource({ seed, prompted: true, timers: clock.timers });
  const practice = livePractice({
    practiceId: 'd',
    source: turn === null ? plain : turned(plain, turn),
    chain: analysis,
    settings: {
      hand: 'right',
      plan: DEFAULT_PLAN,
      emitFrames: true,
      ...(kept && { known: kept.fits }),
    },
    now: clock.now,
    guided: true,
    ...(kept && { knownOf: kept.sensors }),
  });
  const signals: Parameters<Parameters<typeof practice.signals.subscribe>[0] & object>[0][] = [];
  practice.signals.subscribe((s) => signals.push(s));
  practice.start();
  practice.obey({ type: 'safety', answers: WELL });
  practice.obey({ type: 'next' });
  clock.pass(2500);
  const until = (done: (view: PracticeView) => boolean, mostS = 90): number => {
    const from = clock.now();
    for (let s = 0; s < mostS && !done(practice.view()); s += 0.1) clock.pass(100);
    expect(done(practice.view()), JSON.stringify(practice.view().guide)).toBe(true);
    return (clock.now() - from) / 1000;
  };
  return { practice, until, signals };
}

async function firstDay(): Promise<Kept> {
  const { practice, until } = day(null);
  practice.obey({ type: 'next' });
  until((v) => v.stage === 'range');
  await practice.stop();
  return practice.calibrated()!;
}

const isJudged = (v: PracticeView): boolean => v.calibration.quality !== null;

describe('a returning student', { timeout: 600_000 }, () => {
  it('starts from the kept calibration after a short check, and the recording alone gives the same', async ({
    skip,
  }) => {
    const kept = await firstDay();
    const { practice, until, signals } = day(kept);
    expect(practice.obey({ type: 'recheck' })).toBeNull();
    expect(practice.view().guide).toMatchObject({ part: 'recheck', step: 'recheckStand', of: 3 });
    const took = until((v) => v.stage === 'range');
    // the movements and the words before each of them
    expect(took).toBeLessThan(20);
    expect(practice.view().calibration.quality).toMatchObject({ accepted: true, problems: [] });
    practice.obey({ type: 'next' });
    until((v) => v.stage === 'practice');
    until((v) => v.strip.length >= 3, 120);
    practice.obey({ type: 'finish' });
    const live = practice.result('s')!;
    await practice.stop();
    expect(practice.calibrated()).toBeNull();

    const folder = scratch();
    const header = { subject: '1', session: '1', hand: 'right', startedAt: null } as const;
    const writer = await createSessionWriter(folder, header, { flushEveryMs: 0 });
    for (const s of signals) {
      if (s.kind === 'event') writer.event(s.event);
      if (s.kind === 'samples') s.batch.forEach((sample) => writer.sample(sample));
    }
    await writer.close();
    await writeKnown(folder, practice.known!);
    await writePlan(folder, practice.view().plan);
    const session = await openSession(folder);
    requireCalibration(session);
    const plan = await readPlan(session.files);
    expect(plan.ownRange.flexionDeg).toBeGreaterThan(50);
    const again = await analyseSession(session, plan);
    await session.close();
    expect(again.calibration).toMatchObject({ accepted: true });
    expect(again.ledger).toEqual(live.ledger);
    expect(again.warnings.map((w) => w.id)).toEqual(live.warnings.map((w) => w.id));
    expect(again.repetitions.length).toBe(live.repetitions.length);
    live.repetitions.forEach((r, i) => {
      const other = again.repetitions[i]!;
      expect([other.kind, other.index]).toEqual([r.kind, r.index]);
      expect(other.topS).toBeCloseTo(r.topS, 3);
      expect(other.measures.addedFlexionDeg ?? 0).toBeCloseTo(r.measures.addedFlexionDeg ?? 0, 1);
      // the guide's events come a packet after their end, so the headings differ by a little
      const turnDeg = (other.measures.turnTopDeg ?? 0) - (r.measures.turnTopDeg ?? 0);
      expect(Math.abs(turnDeg)).toBeLessThan(0.3);
    });
    const validator = await bidsValidator();
    if (validator === null) return void skip('the official validator cannot be had');
    expect((await validate(validator, folder)).errors).toEqual([]);
  });

  it.each([
    ['chest', 'chest sensor'],
    ['trailArm', 'trail arm sensor'],
  ] as const)('is told that the %s has moved, and calibrates in full', async (sensor, words) => {
    const kept = await firstDay();
    for (const axis of [
      { x: 1, y: 0, z: 0 },
      { x: 0, y: 1, z: 0 },
      { x: 0, y: 0, z: 1 },
    ]) {
      const { practice, until } = day(kept, 5, { sensor, axis, deg: 25 });
      practice.obey({ type: 'recheck' });
      until(isJudged);
      const { accepted, problems } = practice.view().calibration.quality!;
      expect(accepted).toBe(false);
      expect(problems.map((p) => p.code)).toEqual(['mounting-moved']);
      expect(problems[0]!.message).toMatch(
        new RegExp(`^The ${words} has moved by about 2\\d degrees`),
      );
      expect(practice.view().stage).toBe('calibrate');
      expect(practice.obey({ type: 'next' })).toBeNull();
      until((v) => v.stage === 'range');
      expect(practice.view().calibration.quality!.accepted).toBe(true);
      await practice.stop();
    }
  });

  it('with other sensors is asked for the whole calibration', async () => {
    const kept = await firstDay();
    const { practice } = day(kept, 6);
    expect(practice.obey({ type: 'recheck' })).toBe(
      'The chest sensor is not the one used in the earlier calibration. Do the full calibration.',
    );
    expect(practice.view().stage).toBe('check');
    const anew = day(null);
    expect(anew.practice.obey({ type: 'recheck' })).toMatch(/^No earlier calibration/);
    await practice.stop();
    await anew.practice.stop();
  });
});
