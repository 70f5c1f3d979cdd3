import { existsSync, readFileSync, readdirSync, statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { finish, result, start, step } from '../../src/analysis/analysis.ts';
import type { AnalysisResult, JudgedRepetition } from '../../src/analysis/result.ts';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import { openSession } from '../../src/sessions/openSession.ts';
import type { Expected, ExpectedRepetition } from './expected.ts';
import { SHIPPED } from './sessions.ts';

const RECORDINGS = fileURLToPath(new URL('../../recordings/', import.meta.url));

async function analyse(zip: string): Promise<AnalysisResult> {
  const session = await openSession(zip);
  try {
    expect(session.header.simulated).toBe(true);
    const state = start({ hand: session.header.hand, plan: DEFAULT_PLAN });
    const ignore = (): void => {};
    for await (const batch of session.inputs()) for (const i of batch) step(state, i, ignore);
    finish(state, ignore);
    return result(state, session.header.id);
  } finally {
    await session.close();
  }
}

type FoundRehearsal = Extract<JudgedRepetition, { kind: 'rehearsal' }>;

/** What is off by more than the tolerance, in words. */
function off(what: string, found: number | null, truth: number | null, most: number): string[] {
  if (found === null && truth === null) return [];
  if (found !== null && truth !== null && Math.abs(found - truth) <= most) return [];
  return [`${what}: found ${found} for ${truth}, allowed ${most}`];
}

/** What does not need the instant of the catch. */
const AT_TOP = ['flexionTopDeg', 'turnTopDeg', 'elevationTopDeg', 'externalRotationTopDeg'];

function offInRehearsal(found: FoundRehearsal, truth: ExpectedRepetition, e: Expected): string[] {
  const { timesS, holdS, measures } = e.tolerances;
  const timed = [
    ...off('start', found.startS, truth.startS, timesS.startS),
    ...off('release', found.releaseS, truth.releaseS, timesS.releaseS),
    ...off('arm start', found.armStartS, truth.armStartS, timesS.armStartS),
    ...off('hold', found.holdS, truth.holdS, holdS),
  ];
  const measured = Object.entries(measures)
    .filter(([name]) => !truth.shockLost || AT_TOP.includes(name))
    .flatMap(([name, tolerance]) => {
      const key = name as keyof typeof found.measures;
      return off(name, found.measures[key], truth.measures[key], tolerance);
    });
  if (truth.shockLost) return [...timed, ...measured];
  const failed = found.verdict.checks.filter((c) => c.passed === false).map((c) => c.measure);
  const [a, b] = [[...failed].sort().join(' '), [...(truth.failed ?? [])].sort().join(' ')];
  return [
    ...timed,
    ...measured,
    ...off('catch', found.catchS, truth.catchS, timesS.catchS),
    ...(a === b ? [] : [`failed targets: found [${a}] for [${b}]`]),
  ];
}

function offIn(found: JudgedRepetition, truth: ExpectedRepetition, e: Expected): string[] {
  const at = `${truth.kind} ${truth.fault ?? ''} at ${truth.topS.toFixed(2)} s: `;
  const top = off('top', found.topS, truth.topS, e.tolerances.timesS.topS);
  if (truth.kind !== 'rehearsal' || found.kind !== 'rehearsal') return top.map((s) => at + s);
  const rest = truth.gap ? offInGap(found) : offInRehearsal(found, truth, e);
  return [...top, ...rest].map((s) => at + s);
}

const offInGap = (found: FoundRehearsal): string[] => [
  ...(found.flags.includes('gap') ? [] : ['a gap is not flagged']),
  ...(found.verdict.passed === null ? [] : ['scored in spite of a gap']),
];

describe.each(SHIPPED.map((s) => s.name))('the shipped recording %s', async (name) => {
  const expected: Expected = JSON.parse(
    readFileSync(`${RECORDINGS}${name}.expected.json`, 'utf8'),
  );
  const found = await analyse(`${RECORDINGS}${name}.zip`);

  it('is calibrated as expected, for the right hand', () => {
    expect(found.session.hand).toBe(expected.hand);
    expect(found.calibration.accepted).toBe(expected.calibrationAccepted);
  });

  it('holds the expected repetitions and no other, in order', () => {
    expect(found.repetitions.map((r) => r.kind)).toEqual(expected.repetitions.map((r) => r.kind));
    expect(found.ledger.entries).toBe(expected.entries);
    for (const [kind, n] of Object.entries(expected.counts)) {
      expect(found.repetitions.filter((r) => r.kind === kind)).toHaveLength(n);
    }
  });

  it('gives each its times, measures and verdict', () => {
    const wrong = expected.repetitions.flatMap((truth, i) => {
      const r = found.repetitions[i];
      return r ? offIn(r, truth, expected) : [`repetition ${i + 1} is missing`];
    });
    expect(wrong).toEqual([]);
  });
});

describe('the shipped recordings', () => {
  it('are small, and each has its expected results', () => {
    const zips = readdirSync(RECORDINGS).filter((f) => f.endsWith('.zip'));
    expect(zips).toHaveLength(SHIPPED.length);
    const bytes = zips.reduce((sum, f) => sum + statSync(`${RECORDINGS}${f}`).size, 0);
    expect(bytes).toBeLessThan(10e6);
    for (const f of zips) {
      expect(existsSync(`${RECORDINGS}${f.replace('.zip', '.expected.json')}`)).toBe(true);
    }
  });
});
