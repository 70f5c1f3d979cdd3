import { describe, expect, it } from 'vitest';
import * as analysis from '../../src/analysis/analysis.ts';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import { livePractice } from '../../src/practice/livePractice.ts';
import type { PersonView, PracticeView, Stage } from '../../src/practice/view.ts';
import { SyntheticSource } from '../../src/sensors/sources/synthetic/index.ts';
import { handTimers } from './handTimers.ts';

const NEW: PersonView = { firstUse: true, painBefore: null, lastSession: null };
const WELL = {
  clubConfirmed: true,
  historyConfirmed: true,
  warmedUp: true,
  redFlag: false,
  pain: 1,
  signs: [],
} as const;

function guided(seed = 5, hand: 'left' | 'right' = 'right', person = NEW, fault?: 'swapped') {
  const clock = handTimers();
  const source = new SyntheticSource({
    seed,
    hand,
    prompted: true,
    timers: clock.timers,
    ...(fault && { calibrationFault: fault }),
  });
  const practice = livePractice({
    practiceId: 'g',
    source,
    chain: analysis,
    settings: { hand, plan: DEFAULT_PLAN, emitFrames: true },
    now: clock.now,
    guided: true,
    person,
  });
  practice.start();
  const until = (done: (view: PracticeView) => boolean, mostS = 90): void => {
    for (let s = 0; s < mostS && !done(practice.view()); s += 0.1) clock.pass(100);
    expect(done(practice.view()), JSON.stringify(practice.view().guide)).toBe(true);
  };
  const at = (stage: Stage) => (view: PracticeView) => view.stage === stage;
  return { practice, clock, until, at };
}

describe('the guided start with a simulated student who does as asked', () => {
  it('leads from the safety check to the practice', async () => {
    const { practice, until, at, clock } = guided();
    expect(practice.view().stage).toBe('safety');
    expect(practice.obey({ type: 'safety', answers: WELL })).toBeNull();
    expect(practice.view().stage).toBe('strap');
    expect(practice.view().source.state).toBe('starting');
    practice.obey({ type: 'next' });
    expect(practice.view().stage).toBe('check');
    clock.pass(3000);
    practice.obey({ type: 'next' });
    until(at('range'));
    expect(practice.view().calibration.quality?.accepted).toBe(true);
    expect(practice.view().calibration.steps.map((s) => s.type)).toEqual([
      'calibration-stand',
      'calibration-bow',
      'calibration-armRaise',
      'calibration-stand',
    ]);
    practice.obey({ type: 'next' });
    until(at('address'));
    const { ownRange } = practice.view();
    // what the simulated student is made to show: 92-104, 60-75, 24-32 and 24-32 deg
    expect(ownRange.externalRotationDeg).toBeGreaterThan(86);
    expect(ownRange.externalRotationDeg).toBeLessThan(110);
    expect(ownRange.flexionDeg).toBeGreaterThan(57);
    expect(ownRange.flexionDeg).toBeLessThan(78);
    expect(ownRange.lateralTrailDeg).toBeGreaterThan(21);
    expect(ownRange.lateralLeadDeg).toBeGreaterThan(21);
    until(at('practice'));
    until((view) => view.strip.length >= 2);
    expect(practice.view().strip[0]?.kind).toBe('rehearsal');
    await practice.stop();
  });

  it.each(['left', 'right'] as const)(
    'accepts the calibration of ten %s-handed students',
    async (hand) => {
      for (let seed = 1; seed <= 10; seed++) {
        const { practice, until, clock } = guided(seed, hand);
        practice.obey({ type: 'safety', answers: WELL });
        practice.obey({ type: 'next' });
        clock.pass(2500);
        expect(practice.obey({ type: 'next' }), `seed ${seed}`).toBeNull();
        const statuses = new Set<string | undefined>();
        until((view) => {
          statuses.add(view.guide?.status);
          return view.calibration.quality !== null;
        });
        expect(statuses, `seed ${seed}`).not.toContain('swapped');
        expect(practice.view().calibration.quality, `seed ${seed}`).toMatchObject({
          accepted: true,
        });
        await practice.stop();
      }
    },
  );

  it.each(['left', 'right'] as const)(
    'says that the sensors are swapped when the wrong one moves, %s-handed, and begins again when asked',
    async (hand) => {
      const { practice, until, clock } = guided(5, hand, NEW, 'swapped');
      practice.obey({ type: 'safety', answers: WELL });
      practice.obey({ type: 'next' });
      clock.pass(2500);
      practice.obey({ type: 'next' });
      until((view) => view.guide?.status === 'swapped', 30);
      expect(practice.view().guide).toMatchObject({ step: 'bow', count: 0 });
      practice.obey({ type: 'again' });
      expect(practice.view().guide).toMatchObject({ step: 'stand', status: 'asked' });
      await practice.stop();
    },
  );

  it('may be calibrated again, which begins from its first step', async () => {
    const { practice, until, at, clock } = guided();
    practice.obey({ type: 'safety', answers: WELL });
    practice.obey({ type: 'next' });
    clock.pass(2500);
    practice.obey({ type: 'next' });
    until((view) => view.guide?.step === 'armRaise');
    practice.obey({ type: 'again' });
    expect(practice.view().guide).toMatchObject({ step: 'stand', index: 0 });
    until(at('range'));
    practice.obey({ type: 'skip' });
    until(at('practice'));
    practice.obey({ type: 'again' });
    expect(practice.view().stage).toBe('calibrate');
    until(at('range'));
    expect(practice.view().calibration.quality?.accepted).toBe(true);
    await practice.stop();
  });

  it('ends with a summary of what was measured', async () => {
    const { practice, until, at, clock } = guided();
    practice.obey({ type: 'safety', answers: WELL });
    practice.obey({ type: 'next' });
    clock.pass(2500);
    practice.obey({ type: 'next' });
    until(at('range'));
    practice.obey({ type: 'skip' });
    until((view) => view.strip.filter((e) => e.kind === 'rehearsal').length >= 3, 200);
    expect(practice.obey({ type: 'finish' })).toBeNull();
    const { summary, stage } = practice.view();
    expect(stage).toBe('after');
    expect(summary?.summary.rehearsals).toBeGreaterThanOrEqual(3);
    expect(summary?.best?.top).not.toBeNull();
    expect(summary?.best?.address).not.toBeNull();
    expect(practice.obey({ type: 'close', pain: 4, signs: [], note: 'fine' })).toBeNull();
    expect(practice.view().stage).toBe('over');
    // from 1 to 4: two more than at the start
    expect(practice.view().warnings.map((w) => w.id)).toContain('pain-now');
    await practice.stop();
  });
});

describe('the safety check', () => {
  const start = (change: Partial<typeof WELL> | object, person = NEW) => {
    const { practice } = guided(5, 'right', person);
    const refusal = practice.obey({ type: 'safety', answers: { ...WELL, ...change } });
    return { refusal, view: practice.view() };
  };

  it('wants club and space confirmed each time, and the history at first', () => {
    expect(start({ clubConfirmed: false }).refusal).toMatch(/^Clear 3 m around you/);
    expect(start({ historyConfirmed: false }).refusal).toMatch(/ask a licensed professional/);
    expect(start({ clubConfirmed: false }).view.stage).toBe('safety');
  });

  it('goes on without a warm-up, but says so', () => {
    const { view } = start({ warmedUp: false });
    expect(view.stage).toBe('strap');
    expect(view.warnings.map((w) => w.id)).toEqual(['warm-up']);
  });

  it('stops at a red flag, at a pain over 5 and at a pain that is sharp', () => {
    for (const change of [{ redFlag: true }, { pain: 6 }, { signs: ['sharp'] }]) {
      const { view } = start(change);
      expect(view.stage).toBe('stopped');
      expect(view.warnings[0]?.text).toMatch(/^(This can need urgent care|Stop now)/);
    }
  });

  it('says that a pain has not settled', () => {
    const { view } = start({ pain: 3 }, { firstUse: false, painBefore: 1, lastSession: null });
    expect(view.warnings.map((w) => w.id)).toContain('pain-next-day');
  });
});
