import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import type { AnalysisResult, JudgedRepetition } from '../../../src/analysis/result.ts';
import { DEFAULT_PLAN } from '../../../src/coaching/plan.ts';
import { differences } from '../../../src/hub/analysis/differences.ts';
import { analyseSession } from '../../../src/sessions/analyseSession.ts';
import { withSession } from '../../../src/streaming/reviewing.ts';

const RECORDING = fileURLToPath(new URL('../../../recordings/right-mixed.zip', import.meta.url));
const SAME = { here: '1.0.0', there: '1.0.0', labelled: false };

describe('how the hub differs from the student', () => {
  let result: AnalysisResult;
  beforeAll(async () => {
    result = await withSession(RECORDING, (session) => analyseSession(session, DEFAULT_PLAN));
  });

  const changed = (
    index: number,
    change: (r: JudgedRepetition) => JudgedRepetition,
  ): AnalysisResult => ({
    ...result,
    repetitions: result.repetitions.map((r) => (r.index === index ? change(r) : r)),
  });

  it('is nothing where both are the same, or the student sent no result', () => {
    expect(differences(result, result, { ...SAME, there: '0.9.0' })).toEqual([]);
    expect(differences(result, null, SAME)).toEqual([]);
  });

  it('is nothing below what is shown', () => {
    const near = changed(1, (r) => ({
      ...r,
      measures: { ...r.measures, addedFlexionDeg: (r.measures.addedFlexionDeg ?? 0) + 0.01 },
    }));
    expect(differences(result, near, SAME)).toEqual([]);
  });

  it('names a measure that moved and the version', () => {
    const moved = changed(1, (r) => ({
      ...r,
      measures: { ...r.measures, addedFlexionDeg: (r.measures.addedFlexionDeg ?? 0) - 3 },
    }));
    const said = differences(result, moved, { ...SAME, there: '0.9.0' });
    expect(said).toHaveLength(2);
    expect(said[0]).toMatch(
      /differs in one repetition, most in one with \+?(-?\d+)° here and \+?(-?\d+)° there/,
    );
    expect(said[1]).toBe("Why: the student's computer has version 0.9.0, this hub 1.0.0.");
  });

  it('names repetitions that only one side has, and the ledger', () => {
    const first = result.repetitions.find((r) => r.kind === 'rehearsal')!;
    const fewer = {
      ...result,
      repetitions: result.repetitions.filter((r) => r !== first),
      ledger: { ...result.ledger, rehearsals: 1, entries: 'r' },
    };
    const said = differences(result, fewer, { ...SAME, labelled: true });
    expect(said[0]).toBe(`Repetitions found here only: ${first.index}.`);
    expect(said[1]).toMatch(/^Count here: \d+ rehearsals/);
    expect(said[2]).toBe('Why: the coach has corrected repetitions here.');
  });

  it('names a verdict that is another, and the plan where its targets are others', () => {
    const judged = result.repetitions.find((r) => r.kind === 'rehearsal')!;
    const other = changed(judged.index, (r) =>
      r.kind !== 'rehearsal'
        ? r
        : {
            ...r,
            verdict: {
              ...r.verdict,
              passed: r.verdict.passed === true ? false : true,
              checks: r.verdict.checks.map((c) => ({ ...c, target: { min: 99 } })),
            },
          },
    );
    const said = differences(result, other, SAME);
    expect(said[0]).toMatch(/^Repetition \d+ is (not )?passed here and (not )?passed on/);
    expect(said[1]).toBe('Why: the plans have different targets.');
  });
});
