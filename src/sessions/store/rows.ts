import type { Kysely, Transaction } from 'kysely';
import type { AnalysisResult, JudgedRepetition } from '../../analysis/result.ts';
import { isCounted } from '../../coaching/asSaid.ts';
import type { SafetyWarning } from '../../coaching/judgement.ts';
import type { Plan } from '../../coaching/plan.ts';
import type { PracticeNotes } from '../practiceNotes.ts';
import { type MeasureSpreads, NO_SPREADS, spreadsOf } from './spreads.ts';
import type { IndexTables, SessionState, SessionTable } from './tables.ts';

/** One session as the list and the progress show it. */
export interface SessionSummary extends PracticeNotes {
  readonly id: string;
  readonly name: string;
  readonly subject: string;
  readonly hand: 'left' | 'right';
  readonly simulated: boolean;
  readonly startedMs: number;
  readonly durationS: number | null;
  readonly state: SessionState;
  readonly deleted: boolean;
  /** False while an interrupted session waits for its analysis. */
  readonly analysed: boolean;
  /** Why it could not be analysed, in words. */
  readonly problem: string | null;
  readonly rehearsals: number;
  readonly scored: number;
  readonly passed: number;
  readonly balls: number;
  readonly ballsInMix: number;
  readonly ledger: string;
  readonly practiceSwings: number;
  readonly warningCount: number;
  readonly spreads: MeasureSpreads;
  readonly plan: Plan;
}

export interface StoredSession extends SessionSummary {
  readonly repetitions: readonly JudgedRepetition[];
  readonly warnings: readonly SafetyWarning[];
}

export type Db = Kysely<IndexTables> | Transaction<IndexTables>;

/** What is known of a session before it is analysed. */
export type Identity = Pick<
  SessionTable,
  'id' | 'name' | 'subject' | 'hand' | 'startedMs' | 'state' | 'deletedMs'
> & { readonly simulated: boolean; readonly plan: Plan; readonly notes: PracticeNotes };

export function newRow({ simulated, plan, notes, ...identity }: Identity): SessionTable {
  return {
    ...identity,
    ...notes,
    simulated: simulated ? 1 : 0,
    plan: JSON.stringify(plan),
    durationS: null,
    analysed: 0,
    problem: null,
    rehearsals: 0,
    scored: 0,
    passed: 0,
    balls: 0,
    ballsInMix: 0,
    ledger: '',
    spreads: JSON.stringify(NO_SPREADS),
  };
}

/** The columns that follow from a result. */
export function resultColumns(analysis: AnalysisResult) {
  const verdicts = analysis.repetitions
    .filter(isCounted)
    .flatMap((r) => (r.kind === 'rehearsal' ? [r.verdict.passed] : []));
  const { rehearsals, balls, ballsInMix, entries } = analysis.ledger;
  return {
    durationS: analysis.session.durationS,
    analysed: 1,
    problem: null,
    rehearsals,
    scored: verdicts.filter((passed) => passed !== null).length,
    passed: verdicts.filter((passed) => passed === true).length,
    balls,
    ballsInMix,
    ledger: entries,
    spreads: JSON.stringify(spreadsOf(analysis)),
  } satisfies Partial<SessionTable>;
}

export const saveRow = (db: Db, row: SessionTable) =>
  db
    .insertInto('session')
    .values(row)
    .onConflict((conflict) => conflict.column('id').doUpdateSet(row))
    .execute();

/** Replaces a session's repetitions and warnings; to be called in a transaction. */
export async function saveDetails(db: Db, id: string, analysis: AnalysisResult): Promise<void> {
  await db.deleteFrom('repetition').where('sessionId', '=', id).execute();
  await db.deleteFrom('warning').where('sessionId', '=', id).execute();
  const repetitions = analysis.repetitions.map((r, position) => ({
    sessionId: id,
    position,
    kind: r.kind,
    atS: r.topS,
    passed: r.kind === 'rehearsal' ? flag(r.verdict.passed) : null,
    judged: JSON.stringify(r),
  }));
  const warnings = analysis.warnings.map(({ id: warningId, atS, text }, position) => ({
    sessionId: id,
    position,
    warningId,
    atS,
    text,
  }));
  // A statement for each row would hold up whoever waits for this thread.
  for (const rows of inPieces(repetitions))
    await db.insertInto('repetition').values(rows).execute();
  for (const rows of inPieces(warnings)) await db.insertInto('warning').values(rows).execute();
}

/** One statement takes only so many values. */
const ROWS_AT_ONCE = 100;

export function* inPieces<T>(rows: readonly T[]): Generator<readonly T[]> {
  for (let from = 0; from < rows.length; from += ROWS_AT_ONCE)
    yield rows.slice(from, from + ROWS_AT_ONCE);
}

const flag = (value: boolean | null): number | null => (value === null ? null : Number(value));

/** What is counted in the other tables. */
export type Counts = Pick<SessionSummary, 'practiceSwings' | 'warningCount'>;

export function summaryOf(row: SessionTable, counts: Counts): SessionSummary {
  const { deletedMs, simulated, analysed, spreads, plan, ...rest } = row;
  return {
    ...rest,
    ...counts,
    plan: JSON.parse(plan) as Plan,
    deleted: deletedMs !== null,
    simulated: simulated === 1,
    analysed: analysed === 1,
    spreads: JSON.parse(spreads) as MeasureSpreads,
  };
}

export async function loadSession(db: Db, id: string): Promise<StoredSession | null> {
  const row = await db.selectFrom('session').selectAll().where('id', '=', id).executeTakeFirst();
  if (row === undefined) return null;
  const repetitions = await db
    .selectFrom('repetition')
    .select('judged')
    .where('sessionId', '=', id)
    .orderBy('position')
    .execute();
  const warnings = await db
    .selectFrom('warning')
    .select(['warningId as id', 'atS', 'text'])
    .where('sessionId', '=', id)
    .orderBy('position')
    .execute();
  const judged = repetitions.map((r) => JSON.parse(r.judged) as JudgedRepetition);
  const counts = {
    practiceSwings: judged.filter((r) => r.kind === 'practiceSwing').length,
    warningCount: warnings.length,
  };
  return {
    ...summaryOf(row, counts),
    repetitions: judged,
    warnings: warnings as SafetyWarning[],
  };
}
