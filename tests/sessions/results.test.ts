import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv } from 'ajv';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ANALYSIS, type AnalysisResult, type JudgedRepetition } from '../../src/analysis/result.ts';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import { analyseSession } from '../../src/sessions/analyseSession.ts';
import { ANALYSIS_SCHEMA, analysisProblem } from '../../src/sessions/analysisSchema.ts';
import {
  readAnalysis,
  readPlan,
  writeAnalysis,
  writePlan,
} from '../../src/sessions/derivatives.ts';
import { repetitionsCsv } from '../../src/sessions/export/repetitionsCsv.ts';
import { NO_MEASURES } from '../../src/swings/repetition.ts';
import { openSession } from '../../src/sessions/openSession.ts';
import { VERSION } from '../../src/sessions/version.ts';
import { scratch, soundFiles, writeTree } from './makeSession.ts';
import { writeSimulated } from './simulated.ts';

const MEASURES = {
  ...NO_MEASURES,
  flexionTopDeg: 1.23456,
  addedFlexionDeg: 2,
  leanChangeDeg: -0.5,
  chestLeadMs: 1e-9,
};

const REPETITIONS: JudgedRepetition[] = [
  {
    kind: 'rehearsal',
    index: 1,
    startS: 1,
    topS: 2,
    endS: 4,
    releaseS: 3,
    armStartS: null,
    catchS: null,
    catchConfidence: 0,
    holdS: 1,
    measures: MEASURES,
    flags: ['catch-assumed', 'together'],
    verdict: { passed: null, checks: [], cue: { code: 'not-scored', text: 'a "b", c' } },
  },
  {
    kind: 'ball',
    index: 2,
    startS: 5,
    topS: 6,
    endS: 8,
    deliveryS: 7,
    impactS: 7.05,
    measures: MEASURES,
    flags: [],
  },
];

const sensorQuality = { rateHz: null, lostPct: 0, gaps: [], saturated: 0, clockResidualMs: null };
const sensorCalibration = { explained: null, spreadDeg: null, squarenessDeg: null };
const RESULT: AnalysisResult = {
  schema: 1,
  session: { id: 'sub-1', hand: 'left', durationS: 9 },
  calibration: {
    accepted: false,
    problems: [],
    chest: sensorCalibration,
    trailArm: sensorCalibration,
  },
  quality: { chest: sensorQuality, trailArm: sensorQuality },
  repetitions: REPETITIONS,
  ledger: { rehearsals: 1, balls: 1, ratio: 1, ballsInMix: 0, entries: 'rb' },
  carryOver: { addedFlexion: null, keptRotation: null },
  warnings: [],
};

describe('The schema of a result', () => {
  it('is JSON Schema draft 7 and holds what the analysis gives', async () => {
    expect(new Ajv({ strict: false }).validateSchema(ANALYSIS_SCHEMA)).toBe(true);
    expect(analysisProblem(RESULT)).toBeNull();
    const folder = join(scratch(), 's');
    await writeSimulated(folder, { seed: 11, script: 'r b p r:missed-catch' });
    const session = await openSession(folder);
    const result = await analyseSession(session, DEFAULT_PLAN);
    await session.close();
    expect(result.repetitions.length).toBe(4);
    expect(analysisProblem(JSON.parse(JSON.stringify(result)))).toBeNull();
  });

  it('refuses what is missing, not finite, too much or unknown, and says where', () => {
    const changed = (change: (copy: Record<string, unknown>) => unknown): string | null => {
      const copy = structuredClone(RESULT) as unknown as Record<string, unknown>;
      change(copy);
      return analysisProblem(copy);
    };
    const first = (copy: Record<string, unknown>) =>
      (copy['repetitions'] as Record<string, unknown>[])[0] as Record<string, unknown>;
    expect(changed((c) => delete c['ledger'])).toMatch(/ledger/);
    expect(changed((c) => Object.assign(c, { extra: 1 }))).toMatch(/additional/);
    expect(changed((c) => Object.assign(first(c), { holdS: NaN }))).not.toBeNull();
    expect(changed((c) => Object.assign(first(c), { flags: ['odd'] }))).not.toBeNull();
    expect(changed((c) => Object.assign(c, { schema: 2 }))).toMatch(/schema/);
    expect(changed((c) => Object.assign(c['session'] as object, { hand: 'both' }))).toMatch(
      /session\/hand/,
    );
  });

  it('takes no other JSON for a result', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        expect(analysisProblem(value)).not.toBeNull();
      }),
    );
  });
});

describe('The CSV of repetitions', () => {
  const lines = [...repetitionsCsv(RESULT)];

  it('has a row each, with empty cells where there is no value', () => {
    expect(lines).toHaveLength(3);
    const [head, rehearsal, ball] = lines.map((l) => l.trim().split(','));
    const cell = (row: string[] | undefined, name: string) => row?.[(head ?? []).indexOf(name)];
    expect(cell(rehearsal, 'flexion_top_deg')).toBe('1.2346');
    expect(cell(rehearsal, 'chest_lead_ms')).toBe('0');
    expect(cell(rehearsal, 'catch_s')).toBe('');
    expect(cell(ball, 'hold_s')).toBe('');
    expect(cell(ball, 'impact_s')).toBe('7.05');
    expect(ball).toHaveLength(head?.length ?? 0);
  });

  it('quotes text as RFC 4180 asks', () => {
    expect(lines[1]).toContain(',"a ""b"", c",');
  });
});

describe('What is kept beside a session', () => {
  it('is its plan and its result', async () => {
    const folder = writeTree(soundFiles());
    const before = await openSession(folder);
    expect(await readPlan(before.files)).toEqual(DEFAULT_PLAN);
    expect(await readAnalysis(before.files)).toBeNull();
    await before.close();
    const plan = { ...DEFAULT_PLAN, name: 'Mine', note: 'ä → b' };
    await writePlan(folder, plan);
    await writeAnalysis(folder, RESULT);
    const after = await openSession(folder);
    expect(await readPlan(after.files)).toEqual(plan);
    const madeBy = { version: VERSION, analysis: ANALYSIS, events: after.events.length };
    expect(await readAnalysis(after.files)).toEqual({ ...RESULT, madeBy });
    await after.close();
  });

  it('is a cache as far as the result goes, but a broken plan is refused', async () => {
    const folder = writeTree(soundFiles());
    await writePlan(folder, DEFAULT_PLAN);
    const kept = join(folder, 'derivatives/stillcatch');
    writeFileSync(join(kept, 'analysis.json'), '{"schema":1}');
    writeFileSync(join(kept, 'plan.json'), '{"volume":{"perWeek":"many"}}');
    const session = await openSession(folder);
    expect(await readAnalysis(session.files)).toBeNull();
    await expect(readPlan(session.files)).rejects.toThrow(
      /plan\.json: is not a plan: volume\.perWeek/,
    );
    await session.close();
    rmSync(kept, { recursive: true });
    expect(readFileSync(join(folder, 'README'), 'utf8')).toBe('A test.\n');
  });
});
