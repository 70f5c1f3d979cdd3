import { describe, expect, it } from 'vitest';
import { finish, result, start, step } from '../../src/analysis/analysis.ts';
import type { AnalysisInput } from '../../src/analysis/contract.ts';
import { type RepetitionLabel, labelRepetitions } from '../../src/analysis/labels.ts';
import type { AnalysisResult, JudgedRepetition } from '../../src/analysis/result.ts';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import { simulateSession } from '../../src/sensors/sources/synthetic/index.ts';
import { spreadsOf } from '../../src/sessions/store/spreads.ts';
import { inputsOf, withEvent } from './simulated.ts';

// A simulated practice whose truth is known: a practice swing is a ball's movement without the blow.
const OPTIONS = { seed: 31, script: 'r r b r p r b' };
const inputs = inputsOf(OPTIONS);
const { truth } = simulateSession(OPTIONS);

function analysed(
  labels: readonly RepetitionLabel[] = [],
  given: readonly AnalysisInput[] = inputs,
): AnalysisResult {
  const state = start({ hand: 'right', plan: DEFAULT_PLAN });
  for (const input of given) step(state, input, () => undefined);
  finish(state, () => undefined);
  labelRepetitions(state, labels);
  return result(state, 'test');
}

const plain = analysed();
const topOf = (index: number): number => plain.repetitions[index - 1]!.topS;
const at = (r: AnalysisResult, index: number): JudgedRepetition => r.repetitions[index - 1]!;
/** Twice the accuracy aimed for at the 95th percentile. */
const BOUNDS = { addedFlexionDeg: 2, leanChangeDeg: 2, turnTowardTargetDeg: 4, keptRotationDeg: 6 };

describe('a repetition that a person says was of another kind', () => {
  it('is measured between the instants of that kind: a practice swing called a ball as the simulator knows it', () => {
    const swing = at(analysed([{ topS: topOf(5), kind: 'ball' }]), 5);
    const known = truth.repetitions[4]!;
    expect(plain.repetitions[4]!.kind).toBe('practiceSwing');
    if (swing.kind !== 'ball' || known.kind !== 'practiceSwing') throw new Error('kinds');
    expect(Math.abs(swing.deliveryS - known.deliveryS)).toBeLessThan(0.03);
    for (const [name, bound] of Object.entries(BOUNDS)) {
      const key = name as keyof typeof BOUNDS;
      expect(Math.abs(swing.measures[key]! - known.measures[key]!), name).toBeLessThan(bound);
    }
  });

  it('says where something of that kind was not found, and invents no number for it', () => {
    const swing = at(analysed([{ topS: topOf(5), kind: 'ball' }]), 5);
    expect(swing).toMatchObject({ kind: 'ball', impactS: null });
    expect(swing.flags).toEqual(expect.arrayContaining(['impact-not-detected', 'marked-by-hand']));
    const rehearsal = at(analysed([{ topS: topOf(5), kind: 'rehearsal' }]), 5);
    expect(rehearsal).toMatchObject({ kind: 'rehearsal', catchS: null, holdS: 0 });
    expect(rehearsal.measures).toMatchObject({ releaseToCatchMs: null, fallCm: null });
    expect(rehearsal.flags).toContain('catch-not-detected');
  });

  it('keeps what it was found as to be seen', () => {
    const ball = at(analysed([{ topS: topOf(1), kind: 'ball' }]), 1);
    expect(ball.marked).toEqual({ detected: 'rehearsal', ignored: false });
    expect(at(plain, 1).marked).toBeUndefined();
  });

  it('is judged as a rehearsal, and no longer as a ball', () => {
    const changed = analysed([
      { topS: topOf(1), kind: 'ball' },
      { topS: topOf(3), kind: 'rehearsal' },
    ]);
    const [was, is] = [at(changed, 1), at(changed, 3)];
    expect('verdict' in was).toBe(false);
    if (is.kind !== 'rehearsal') throw new Error('kind');
    // A ball has no hold.
    expect(is.verdict.cue.code).toBe('hold-longer');
    expect(changed.ledger.entries).toBe('brrrrb');
  });

  it('goes into the pools of its new kind', () => {
    const counts = (labels: readonly RepetitionLabel[]) => {
      const { rehearsals, balls } = spreadsOf(analysed(labels));
      return [rehearsals.addedFlexionDeg?.count, balls.addedFlexionDeg?.count];
    };
    expect(counts([])).toEqual([4, 2]);
    expect(counts([{ topS: topOf(3), kind: 'rehearsal' }])).toEqual([5, 1]);
    expect(counts([{ topS: topOf(1), kind: 'ball' }])).toEqual([3, 3]);
    expect(counts([{ topS: topOf(3), kind: 'ignored' }])).toEqual([4, 1]);
  });

  it('called a rehearsal and then a ball again has the same numbers as before', () => {
    const back = analysed([
      { topS: topOf(3), kind: 'rehearsal' },
      { topS: topOf(3), kind: 'ball' },
    ]);
    expect(back).toEqual(plain);
  });

  it('is told apart the same way by the student while practising', () => {
    const said = analysed([], withEvent(inputs, 'mark-ball', at(plain, 1).endS + 2));
    const labelled = analysed([{ topS: topOf(1), kind: 'ball' }]);
    expect(said.repetitions).toEqual(labelled.repetitions);
    expect(said.carryOver).toEqual(labelled.carryOver);
  });
});
