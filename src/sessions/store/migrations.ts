import { type Kysely, type Migration, Migrator } from 'kysely';
import { carryOver } from '../../coaching/carryOver.ts';
import type { JudgedRepetition } from '../../coaching/judgement.ts';
import { poolsOf } from '../../coaching/pools.ts';
import { SessionError } from '../sessionError.ts';
import { spreadsOf } from './spreads.ts';
import type { IndexTables } from './tables.ts';

type Schema = Kysely<unknown>;

/** In the order of their names; one that has been released is never changed. */
const MIGRATIONS: Readonly<Record<string, Migration>> = {
  '001-sessions': { up: createSessions },
  '002-pools': { up: spreadAnew },
};

/** Repetitions that are not scored are in no pool any more: what was kept of each session is taken anew. */
async function spreadAnew(db: Kysely<unknown>): Promise<void> {
  const index = db as Kysely<IndexTables>;
  const sessions = await index
    .selectFrom('session')
    .select('id')
    .where('analysed', '=', 1)
    .execute();
  for (const { id } of sessions) {
    const rows = await index
      .selectFrom('repetition')
      .select('judged')
      .where('sessionId', '=', id)
      .orderBy('position')
      .execute();
    const repetitions = rows.map((row) => JSON.parse(row.judged) as JudgedRepetition);
    const { rehearsals, balls } = poolsOf(repetitions);
    const spreads = spreadsOf({ repetitions, carryOver: carryOver(rehearsals, balls) });
    await index
      .updateTable('session')
      .set({ spreads: JSON.stringify(spreads) })
      .where('id', '=', id)
      .execute();
  }
}

async function createSessions(db: Schema): Promise<void> {
  await db.schema
    .createTable('session')
    .addColumn('id', 'text', (c) => c.primaryKey())
    .addColumn('name', 'text', (c) => c.notNull())
    .addColumn('subject', 'text', (c) => c.notNull())
    .addColumn('hand', 'text', (c) => c.notNull())
    .addColumn('simulated', 'integer', (c) => c.notNull())
    .addColumn('startedMs', 'double precision', (c) => c.notNull())
    .addColumn('durationS', 'double precision')
    .addColumn('state', 'text', (c) => c.notNull())
    .addColumn('deletedMs', 'double precision')
    .addColumn('analysed', 'integer', (c) => c.notNull())
    .addColumn('problem', 'text')
    .addColumn('rehearsals', 'integer', (c) => c.notNull())
    .addColumn('scored', 'integer', (c) => c.notNull())
    .addColumn('passed', 'integer', (c) => c.notNull())
    .addColumn('balls', 'integer', (c) => c.notNull())
    .addColumn('ballsInMix', 'integer', (c) => c.notNull())
    .addColumn('ledger', 'text', (c) => c.notNull())
    .addColumn('painBefore', 'integer')
    .addColumn('painAfter', 'integer')
    .addColumn('note', 'text', (c) => c.notNull())
    .addColumn('plan', 'text', (c) => c.notNull())
    .addColumn('spreads', 'text', (c) => c.notNull())
    .execute();
  await db.schema.createIndex('sessionByStart').on('session').column('startedMs').execute();
  await db.schema
    .createTable('repetition')
    .addColumn('sessionId', 'text', (c) => c.notNull().references('session.id').onDelete('cascade'))
    .addColumn('position', 'integer', (c) => c.notNull())
    .addColumn('kind', 'text', (c) => c.notNull())
    .addColumn('atS', 'double precision', (c) => c.notNull())
    .addColumn('passed', 'integer')
    .addColumn('judged', 'text', (c) => c.notNull())
    .addPrimaryKeyConstraint('repetitionKey', ['sessionId', 'position'])
    .execute();
  await db.schema
    .createTable('warning')
    .addColumn('sessionId', 'text', (c) => c.notNull().references('session.id').onDelete('cascade'))
    .addColumn('position', 'integer', (c) => c.notNull())
    .addColumn('warningId', 'text', (c) => c.notNull())
    .addColumn('atS', 'double precision', (c) => c.notNull())
    .addColumn('text', 'text', (c) => c.notNull())
    .addPrimaryKeyConstraint('warningKey', ['sessionId', 'position'])
    .execute();
}

/**
 * Brings the index to this version's form.
 * @throws SessionError where it was written by a newer version, or a step fails.
 */
export async function migrate(db: Kysely<IndexTables>): Promise<void> {
  const migrator = new Migrator({
    db,
    provider: { getMigrations: () => Promise.resolve(MIGRATIONS) },
  });
  const { error } = await migrator.migrateToLatest();
  if (error === undefined) return;
  const text = error instanceof Error ? error.message : JSON.stringify(error);
  if (/previously executed migration .* is missing/.test(text))
    throw new SessionError(
      'newer-version',
      'the data folder was written by a newer Stillcatch: install that version or a later one',
    );
  throw new SessionError(
    'index-damaged',
    `the index of sessions cannot be brought up to date (${text})`,
  );
}
