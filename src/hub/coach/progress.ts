import type { FastifyInstance } from 'fastify';
import Type from 'typebox';
import type { Db } from '../db/open.ts';
import { type ComparedSession, comparePeriods } from '../../coaching/comparePeriods.ts';
import { type UncountedSession, practiceCounts, uncounted } from '../../coaching/notCounted.ts';
import type {
  HubProgress,
  Period,
  PeriodComparison,
  ProgressSession,
} from '../../streaming/hubContract/students.ts';
import type { MeasureSpreads } from '../../sessions/store/spreads.ts';
import type { SpreadsView } from '../../streaming/sessionsContract.ts';
import type { HubContext } from '../context.ts';
import { config, one, typed } from '../parts/api.ts';
import { countsIn } from './counting.ts';
import { lessonsOf } from './lessons.ts';
import { planVersions } from './planVersions.ts';
import { uncountedSessions } from './uncounted.ts';

const READER = config({ who: 'student-or-coach', of: 'student' });

async function sessionsOf(db: Db, studentId: string): Promise<ProgressSession[]> {
  const rows = await db
    .selectFrom('session')
    .selectAll()
    .where('studentId', '=', studentId)
    .where('analysed', '=', 1)
    .where(countsIn('session'))
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

const uncountedOf = async (db: Db, studentId: string): Promise<readonly UncountedSession[]> =>
  (await uncountedSessions(db, { studentId })).get(studentId) ?? [];

interface Sessions {
  readonly period: Period;
  readonly compared: readonly ComparedSession[];
}

async function sessionsIn(
  db: Db,
  studentId: string,
  fromMs: number,
  toMs: number,
  others: readonly UncountedSession[],
): Promise<Sessions> {
  const rows = await db
    .selectFrom('session')
    .select(['rehearsals', 'balls', 'scored', 'passed', 'spreads', 'carryOver', 'planNumber'])
    .where('studentId', '=', studentId)
    .where('analysed', '=', 1)
    .where(countsIn('session'))
    .where('startedMs', '>=', fromMs)
    .where('startedMs', '<', toMs)
    .execute();
  const numbers = new Set(rows.flatMap(({ planNumber }) => planNumber ?? []));
  return {
    period: {
      fromMs,
      toMs,
      sessions: rows.length,
      rehearsals: rows.reduce((n, r) => n + r.rehearsals, 0),
      balls: rows.reduce((n, r) => n + r.balls, 0),
      notCounted: practiceCounts(uncounted(others), fromMs - 1, toMs - 1).notCounted,
      planNumbers: [...numbers].sort((x, y) => x - y),
    },
    compared: rows.map(({ scored, passed, spreads, carryOver }) => ({
      ...(JSON.parse(spreads) as MeasureSpreads),
      scored,
      passed,
      carryOver: JSON.parse(carryOver) as ComparedSession['carryOver'],
    })),
  };
}

/** Months of one student, and two periods beside each other. */
export function progress(api: FastifyInstance, { db }: HubContext): void {
  typed(api).get(
    '/students/:studentId/progress',
    { config: READER, schema: { params: one('student') } },
    async ({ params: { studentId = '' } }): Promise<HubProgress> => ({
      sessions: await sessionsOf(db, studentId),
      notCounted: await uncountedOf(db, studentId),
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
    async ({ params: { studentId = '' }, query }): Promise<PeriodComparison> => {
      const others = await uncountedOf(db, studentId);
      const a = await sessionsIn(db, studentId, query.aFromMs, query.aToMs, others);
      const b = await sessionsIn(db, studentId, query.bFromMs, query.bToMs, others);
      return { a: a.period, b: b.period, ...comparePeriods(a.compared, b.compared) };
    },
  );
}
