import type { FastifyInstance } from 'fastify';
import Type from 'typebox';
import type { Db } from '../db/open.ts';
import { TARGET_MEASURES, type TargetMeasure } from '../../coaching/plan.ts';
import { seededRandom } from '../../math/random.ts';
import { median, percentile } from '../../math/stats.ts';
import type {
  Comparison,
  HubProgress,
  MeasureDifference,
  ProgressSession,
  Stretch,
} from '../../streaming/hubContract/students.ts';
import type { SpreadView, SpreadsView } from '../../streaming/sessionsContract.ts';
import type { HubContext } from '../context.ts';
import { config, one, typed } from '../parts/api.ts';
import { lessonsOf } from './lessons.ts';
import { planVersions } from './planVersions.ts';

/** Every value of a session by kind and measure, as the table keeps them. */
type Pooled = Readonly<
  Record<'rehearsals' | 'balls', Partial<Record<TargetMeasure, readonly number[]>>>
>;

const READER = config({ who: 'student-or-coach', of: 'student' });
const FEWEST = 5;
const DRAWS = 1000;

async function sessionsOf(db: Db, studentId: string): Promise<ProgressSession[]> {
  const rows = await db
    .selectFrom('session')
    .selectAll()
    .where('studentId', '=', studentId)
    .where('analysed', '=', 1)
    .orderBy('startedMs')
    .execute();
  return rows.map((row) => {
    const spreads = JSON.parse(row.spreads) as { rehearsals: SpreadsView; balls: SpreadsView };
    return {
      id: row.id,
      startedMs: row.startedMs,
      simulated: row.simulated === 1,
      rehearsals: spreads.rehearsals,
      balls: spreads.balls,
      rehearsalCount: row.rehearsals,
      ballCount: row.balls,
      ballsInMix: row.ballsInMix,
      scored: row.scored,
      passed: row.passed,
      warnings: row.warnings,
      painBefore: row.painBefore,
      painAfter: row.painAfter,
      planNumber: row.planNumber,
      carryOver: JSON.parse(row.carryOver) as ProgressSession['carryOver'],
    };
  });
}

interface Pool {
  readonly stretch: Stretch;
  readonly pooled: readonly Pooled[];
}

async function poolOf(db: Db, studentId: string, fromMs: number, toMs: number): Promise<Pool> {
  const rows = await db
    .selectFrom('session')
    .select(['rehearsals', 'balls', 'pooled'])
    .where('studentId', '=', studentId)
    .where('analysed', '=', 1)
    .where('startedMs', '>=', fromMs)
    .where('startedMs', '<', toMs)
    .execute();
  return {
    stretch: {
      fromMs,
      toMs,
      sessions: rows.length,
      rehearsals: rows.reduce((n, r) => n + r.rehearsals, 0),
      balls: rows.reduce((n, r) => n + r.balls, 0),
    },
    pooled: rows.map((r) => JSON.parse(r.pooled) as Pooled),
  };
}

function spreadOf(values: readonly number[]): SpreadView | null {
  if (values.length === 0) return null;
  const [low, middle, high] = [0.25, 0.5, 0.75].map((p) => percentile(values, p) ?? 0);
  return { count: values.length, low: low!, median: middle!, high: high! };
}

/** Median of b less median of a, with the middle 95 % of resampling both (percentile bootstrap, Efron and Tibshirani 1993). */
export function differenceOf(
  a: readonly number[],
  b: readonly number[],
): MeasureDifference['difference'] {
  if (a.length < FEWEST || b.length < FEWEST) return null;
  const chance = seededRandom(a.length * 1009 + b.length);
  const draw = (values: readonly number[]): number =>
    median(values.map(() => values[Math.floor(chance() * values.length)]!)) ?? 0;
  const drawn = Array.from({ length: DRAWS }, () => draw(b) - draw(a));
  return {
    value: (median(b) ?? 0) - (median(a) ?? 0),
    low: percentile(drawn, 0.025) ?? 0,
    high: percentile(drawn, 0.975) ?? 0,
  };
}

function compared(a: Pool, b: Pool): MeasureDifference[] {
  const values = ({ pooled }: Pool, kind: 'rehearsals' | 'balls', m: TargetMeasure) =>
    pooled.flatMap((one) => one[kind][m] ?? []);
  return (['rehearsals', 'balls'] as const).flatMap((kind) =>
    TARGET_MEASURES.map((measure) => {
      const [x, y] = [values(a, kind, measure), values(b, kind, measure)];
      return { measure, kind, a: spreadOf(x), b: spreadOf(y), difference: differenceOf(x, y) };
    }),
  );
}

/** Months of one student, and two stretches of time beside each other. */
export function progress(api: FastifyInstance, { db }: HubContext): void {
  typed(api).get(
    '/students/:studentId/progress',
    { config: READER, schema: { params: one('student') } },
    async ({ params: { studentId = '' } }): Promise<HubProgress> => ({
      sessions: await sessionsOf(db, studentId),
      plans: await planVersions(db, studentId),
      lessons: await lessonsOf(db, studentId),
    }),
  );
  const ms = Type.Number({ minimum: 0 });
  typed(api).get(
    '/students/:studentId/compare',
    {
      config: READER,
      schema: {
        params: one('student'),
        querystring: Type.Object({ aFromMs: ms, aToMs: ms, bFromMs: ms, bToMs: ms }),
      },
    },
    async ({ params: { studentId = '' }, query }): Promise<Comparison> => {
      const a = await poolOf(db, studentId, query.aFromMs, query.aToMs);
      const b = await poolOf(db, studentId, query.bFromMs, query.bToMs);
      return { a: a.stretch, b: b.stretch, measures: compared(a, b) };
    },
  );
}
