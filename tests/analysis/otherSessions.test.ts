import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { finish, result, start, step } from '../../src/analysis/analysis.ts';
import type { AnalysisOutput } from '../../src/analysis/contract.ts';
import type { AnalysisResult } from '../../src/analysis/result.ts';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import { wrapDeg } from '../../src/math/angle.ts';
import { openSession } from '../../src/sessions/openSession.ts';

const SHARED = join(import.meta.dirname, '../../../shared/datasets');
const OTHERS = join(SHARED, 'simulated-sessions');
const TENNIS = join(SHARED, 'tennis-mocap-virtual-imu');

async function analyse(
  path: string,
  onOutput: (o: AnalysisOutput) => void = () => {},
): Promise<AnalysisResult> {
  const session = await openSession(path);
  const state = start({ hand: session.header.hand, plan: DEFAULT_PLAN, emitFrames: true });
  for await (const batch of session.inputs())
    for (const input of batch) step(state, input, onOutput);
  finish(state, onOutput);
  await session.close();
  return result(state, session.header.id);
}

interface OtherTruth {
  repetitions: {
    kind: 'rehearsal' | 'ball';
    top: number;
    chestOnset: number;
    armOnset: number;
    catch: number;
    impact: number;
    hold: number;
    measures?: Record<string, number>;
  }[];
}

/** Twice the design's bounds at the 95th percentile: here each single value counts. */
const BOUND: Record<string, number> = {
  turnTowardTargetDeg: 4,
  keptRotationDeg: 6,
  elevationTopDeg: 4,
  externalRotationTopDeg: 6,
};
const OTHER_BOUND = 2;

describe.skipIf(!existsSync(OTHERS))(
  'sessions of another simulator (skipped without ../shared)',
  () => {
    it.each(['s11', 's12', 's13'])(
      '%s: the repetitions, their times and measures',
      async (name) => {
        const truth = JSON.parse(
          readFileSync(join(OTHERS, 'truth', `${name}.json`), 'utf8'),
        ) as OtherTruth;
        const found = await analyse(join(OTHERS, `${name}.zip`));
        expect(found.calibration.accepted).toBe(true);
        const counted = found.repetitions.filter((r) => r.kind !== 'practiceSwing');
        expect(counted.map((r) => r.kind)).toEqual(truth.repetitions.map((r) => r.kind));
        counted.forEach((r, i) => {
          const t = truth.repetitions[i];
          if (!t) return;
          expect(Math.abs(r.topS - t.top)).toBeLessThan(0.03);
          if (r.kind === 'ball') expect(Math.abs(r.impactS! - t.impact)).toBeLessThan(0.02);
          if (r.kind !== 'rehearsal') return;
          expect(Math.abs(r.releaseS - t.chestOnset)).toBeLessThan(0.025);
          expect(Math.abs((r.armStartS ?? NaN) - t.armOnset)).toBeLessThan(0.025);
          expect(Math.abs((r.catchS ?? NaN) - t.catch)).toBeLessThan(0.015);
          for (const [key, value] of Object.entries(t.measures ?? {})) {
            const got = r.measures[key as keyof typeof r.measures] ?? NaN;
            expect(Math.abs(got - value), `${name} ${r.index} ${key}`).toBeLessThan(
              BOUND[key] ?? OTHER_BOUND,
            );
          }
        });
      },
    );
  },
);

const COLUMNS = [
  'flexionDeg',
  'lateralDeg',
  'leanDeg',
  'turnDeg',
  'elevationDeg',
  'externalRotationDeg',
] as const;
type Column = (typeof COLUMNS)[number];
/** Mean over the sessions of the RMSE in the motion phase, deg. */
const LIMIT: Record<Column, number> = {
  flexionDeg: 1.2,
  lateralDeg: 1.2,
  leanDeg: 1.2,
  turnDeg: 1,
  elevationDeg: 2,
  externalRotationDeg: 4,
};

type Row = Record<string, number>;

function readTruth(name: string): { rows: Row[]; motion: [number, number] } {
  const [head = '', ...lines] = readFileSync(join(TENNIS, 'truth', `${name}.csv`), 'utf8')
    .trim()
    .split('\n');
  const keys = head.split(',');
  const row = (line: string): Row =>
    Object.fromEntries(
      line.split(',').map((v, i): [string, number] => [keys[i] ?? '', v === '' ? NaN : Number(v)]),
    );
  const { phases } = JSON.parse(readFileSync(join(TENNIS, 'truth', `${name}.json`), 'utf8')) as {
    phases: { motion: [number, number] };
  };
  return { rows: lines.map(row), motion: phases.motion };
}

describe.skipIf(!existsSync(TENNIS))(
  'virtual sensors on tennis players (doi 10.1007/978-3-319-52277-7_38; skipped without ../shared)',
  () => {
    const sessions = [
      'p13_forehand',
      'p13_serve',
      'p14_smash',
      'p15_backhand',
      'p16_backhandVolley',
      'p16_forehandVolley',
    ];
    const rmse: Record<Column, number[]> = {
      flexionDeg: [],
      lateralDeg: [],
      leanDeg: [],
      turnDeg: [],
      elevationDeg: [],
      externalRotationDeg: [],
    };

    it.each(sessions)('%s: calibrated, no rehearsal and no ball in it', async (name) => {
      const { rows, motion } = readTruth(name);
      const squares = COLUMNS.map((): number[] => []);
      const found = await analyse(join(TENNIS, `${name}.zip`), (o) => {
        if (o.kind !== 'frame' || o.frame.gap) return;
        const { timeS } = o.frame;
        if (timeS < motion[0] || timeS > motion[1]) return;
        COLUMNS.forEach((column, k) => {
          const off = difference(rows, timeS, column, o.angles[column]);
          if (off !== null) squares[k]?.push(off * off);
        });
      });
      expect(found.calibration.accepted).toBe(true);
      expect(found.repetitions.filter((r) => r.kind !== 'practiceSwing')).toEqual([]);
      COLUMNS.forEach((column, k) => {
        const s = squares[k] ?? [];
        expect(s.length).toBeGreaterThan(500);
        rmse[column].push(Math.sqrt(s.reduce((a, b) => a + b, 0) / s.length));
      });
    });

    it.each(COLUMNS)('%s follows the optical truth', (column) => {
      const values = rmse[column];
      expect(values).toHaveLength(sessions.length);
      expect(values.reduce((a, b) => a + b, 0) / values.length).toBeLessThanOrEqual(LIMIT[column]);
    });
  },
);

/** Our angle less the truth's at the same time (100 Hz, interpolated), modulo 360; `null` where either has none. */
function difference(rows: Row[], timeS: number, column: Column, got: number | null): number | null {
  const at = Math.floor(timeS * 100);
  const [a, b] = [rows[at], rows[at + 1]];
  if (!a || !b || got === null) return null;
  if (column === 'externalRotationDeg' && !(a['valid'] && b['valid'])) return null;
  const from = a[column] ?? NaN;
  const truth = from + (timeS * 100 - at) * wrapDeg((b[column] ?? NaN) - from);
  const off = wrapDeg(got - truth);
  return Number.isFinite(off) ? off : null;
}
