import { describe, expect, it } from 'vitest';
import type { TargetMeasure } from '../../../../src/coaching/plan.ts';
import { simulateSession } from '../../../../src/sensors/sources/synthetic/index.ts';
import { trulyFailed } from '../../../bench/accuracyVerdicts.ts';

type Session = ReturnType<typeof simulateSession>;
type Truth = Session['truth']['repetitions'][number];

const OWN: Record<string, TargetMeasure> = {
  'short-hold': 'holdS',
  'arms-first': 'chestLeadMs',
  'losing-lean': 'leanChangeDeg',
  'losing-rotation': 'keptRotationDeg',
  'missed-catch': 'releaseToCatchMs',
};
const SCRIPT = `r*3 ${Object.keys(OWN)
  .map((f) => `r:${f}*2`)
  .join(' ')}`;
const sessions = Array.from({ length: 40 }, (_, seed) =>
  simulateSession({ seed, script: SCRIPT, rateHz: 1 }),
);
const all = sessions.flatMap((s) => s.truth.repetitions);
const of = (fault: string | null): Truth[] =>
  all.filter((r) => r.kind === 'rehearsal' && r.fault === fault);

describe('rehearsals, judged on exact truth by the default plan', () => {
  it('good ones pass every target', () => {
    expect(of(null)).toHaveLength(120);
    for (const r of of(null)) expect(trulyFailed(r)).toEqual([]);
  });

  it.each(Object.entries(OWN))('%s fails its own measure and no other', (fault, measure) => {
    expect(of(fault)).toHaveLength(80);
    for (const r of of(fault)) expect(trulyFailed(r)).toEqual([measure]);
  });
});
