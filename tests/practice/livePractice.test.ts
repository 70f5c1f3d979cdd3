import { describe, expect, it } from 'vitest';
import type { AnalysisOutput } from '../../src/analysis/contract.ts';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import { warningOf } from '../../src/coaching/warnings.ts';
import { type PracticeChange, livePractice } from '../../src/practice/livePractice.ts';
import { HandSource, ball, frame, link, phase, rehearsal, scriptedChain } from './scripted.ts';

function practiceWith(script: readonly (readonly [number, AnalysisOutput])[]) {
  const source = new HandSource();
  const clock = { ms: 0 };
  const practice = livePractice({
    practiceId: 'p1',
    source,
    chain: scriptedChain(script.map(([atS, output]) => ({ atS, output }))),
    settings: { hand: 'right', plan: DEFAULT_PLAN, emitFrames: true },
    now: () => clock.ms,
  });
  const changes: PracticeChange[] = [];
  practice.changes.subscribe((change) => changes.push(change));
  practice.start();
  return { practice, source, clock, changes };
}

describe('a live practice', () => {
  it('starts empty and says that it waits for samples', async () => {
    const { practice } = practiceWith([]);
    expect(practice.view().source.state).toBe('starting');
    expect(practice.view().last).toBeNull();
    await practice.stop();
  });

  it('shows each repetition once, in the strip, the ledger and as the last one', async () => {
    const { practice, source } = practiceWith([
      [1, { kind: 'repetition', others: [], repetition: rehearsal(1) }],
      [2, { kind: 'repetition', others: [], repetition: rehearsal(2, { holdS: 0.4 }) }],
      [3, { kind: 'repetition', others: [], repetition: ball(3) }],
    ]);
    source.packets(4);
    const { strip, ledger, last } = practice.view();
    expect(strip.map(({ kind, passed }) => [kind, passed])).toEqual([
      ['rehearsal', true],
      ['rehearsal', false],
      ['ball', null],
    ]);
    expect(ledger).toMatchObject({ rehearsals: 2, balls: 1, ratio: 2, ballsInMix: 1 });
    expect(last?.index).toBe(3);
    await practice.stop();
  });

  it('says that a ball is due after the asked rehearsals, and when one came early', async () => {
    const { practice, source } = practiceWith([
      [1, { kind: 'repetition', others: [], repetition: rehearsal(1) }],
      [2, { kind: 'repetition', others: [], repetition: rehearsal(2) }],
      [3, { kind: 'repetition', others: [], repetition: ball(3) }],
      [4, { kind: 'repetition', others: [], repetition: ball(4) }],
    ]);
    source.packets(2.5);
    expect(practice.view().ledger).toMatchObject({ next: 'ball', toGo: 1 });
    source.packets(4.5);
    expect(practice.view().ledger).toMatchObject({ next: 'rehearsal', ballTooEarly: true });
    await practice.stop();
  });

  it('lets a person say what a repetition was, and take it back', async () => {
    const { practice, source } = practiceWith([
      [1, { kind: 'repetition', others: [], repetition: rehearsal(1) }],
    ]);
    source.packets(2);
    expect(practice.obey({ type: 'correct', index: 1, kind: 'ball' })).toBeNull();
    expect(practice.view().strip[0]).toMatchObject({ kind: 'ball', corrected: true, passed: null });
    expect(practice.view().ledger).toMatchObject({ rehearsals: 0, balls: 1, canUndo: true });
    expect(practice.obey({ type: 'undo' })).toBeNull();
    expect(practice.view().strip[0]).toMatchObject({ kind: 'rehearsal', passed: true });
    expect(practice.obey({ type: 'undo' })).toMatch(/no correction/i);
    expect(practice.obey({ type: 'correct', index: 9, kind: 'ball' })).toMatch(/no repetition 9/);
    await practice.stop();
  });

  it('keeps a warning until somebody has read it, and stores it after that', async () => {
    const { practice, source, clock } = practiceWith([
      [1, { kind: 'warning', warning: warningOf('missed', 1) }],
    ]);
    source.packets(1);
    source.packets(9);
    expect(practice.view().warnings).toMatchObject([{ id: 'missed', acknowledgedAtS: null }]);
    clock.ms = 500;
    expect(practice.obey({ type: 'acknowledge', id: 'missed' })).toBeNull();
    expect(practice.view().warnings).toMatchObject([{ id: 'missed', acknowledgedAtS: 9.5 }]);
    expect(practice.obey({ type: 'acknowledge', id: 'missed' })).toMatch(/already closed/);
    await practice.stop();
  });

  it('takes the stillness before a swing for the ghost, not one without a swing', async () => {
    const { practice, source } = practiceWith([
      [1, frame(1, 0, 20)],
      [2, phase('address', 2)],
      [2.1, frame(2.1, 0, 35)],
      [3, phase('backswing', 3)],
      [4, phase('waiting', 4)],
      [5, phase('address', 5)],
      [5.1, frame(5.1, 0, 80)],
      [6, phase('waiting', 6)],
    ]);
    source.packets(1);
    const reference = practice.view().addressPose;
    expect(reference).toEqual(practice.view().pose);
    source.packets(3);
    const ghost = practice.view().addressPose;
    expect(ghost).not.toEqual(reference);
    source.packets(6);
    expect(practice.view().addressPose).toEqual(ghost);
    await practice.stop();
  });

  it('keeps the last ten seconds as curves', async () => {
    const script: [number, AnalysisOutput][] = [];
    for (let i = 0; i < 2500; i++) script.push([i / 100, frame(i / 100, i / 100, 30)]);
    const { practice, source } = practiceWith(script);
    for (let i = 1; i <= 250; i++) source.packets(i / 10);
    const { curve } = practice.view();
    const { timeS, turnDeg } = curve;
    expect((timeS.at(-1) ?? 0) - (timeS[0] ?? 0)).toBeLessThanOrEqual(10);
    expect(timeS.length).toBeLessThanOrEqual(600);
    expect(timeS.length).toBeGreaterThan(400);
    expect(turnDeg).toHaveLength(timeS.length);
    await practice.stop();
  });

  it('breaks the curve where a sensor had nothing to say', async () => {
    const gap = frame(1, 10, 30);
    if (gap.kind !== 'frame') throw new Error('not a frame');
    const { practice, source } = practiceWith([
      [1, { ...gap, frame: { ...gap.frame, gap: true } }],
    ]);
    source.packets(1);
    expect(practice.view().curve.turnDeg).toEqual([null]);
    await practice.stop();
  });

  it('puts a mark by hand at the session time of now', async () => {
    const { practice, source, clock } = practiceWith([]);
    const seen: unknown[] = [];
    practice.signals.subscribe((signal) => signal.kind === 'event' && seen.push(signal.event));
    source.packets(7);
    clock.ms = 250;
    practice.obey({ type: 'pause' });
    expect(seen).toEqual([{ type: 'pause', value: null, onsetS: 7.25, durationS: 0 }]);
    await practice.stop();
  });

  it('tells a lost sensor with its reason, and an end with what went wrong', async () => {
    const { practice, source } = practiceWith([]);
    source.packets(1);
    source.listener?.link(link('chest', { state: 'lost', reason: 'out of reach' }));
    expect(practice.view().sensors[0]).toMatchObject({ state: 'lost', reason: 'out of reach' });
    source.listener?.end('the radio went away');
    expect(practice.view().source).toMatchObject({
      state: 'failed',
      reason: 'the radio went away',
    });
    await practice.stop();
    expect(source.stopped).toBe(true);
  });
});
