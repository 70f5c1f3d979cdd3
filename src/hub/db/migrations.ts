import { type ColumnDefinitionBuilder, type Kysely, type Migration, Migrator, sql } from 'kysely';
import { type OldEntry, takeOver } from '../log/oldLog.ts';
import type { HubTables } from './tables.ts';

type Schema = Kysely<unknown>;
type Form = 'text' | 'text?' | 'number' | 'number?';

/** Columns of one table; `?` may be null. The first is the primary key unless `key` is given. */
interface TableForm {
  readonly columns: Readonly<Record<string, Form>>;
  readonly key?: readonly [string, string];
  /** Columns that point to another table's id; rows go with the row that they point to. */
  readonly owners?: Readonly<Record<string, string>>;
  readonly unique?: readonly (readonly string[])[];
  readonly indexes?: readonly (readonly string[])[];
}

const FIRST: Readonly<Record<string, TableForm>> = {
  club: { columns: { id: 'number', name: 'text', demo: 'number' } },
  person: {
    columns: {
      id: 'text',
      role: 'text',
      name: 'text',
      login: 'text?',
      passwordHash: 'text?',
      active: 'number',
      createdMs: 'number',
      coachId: 'text?',
      hand: 'text',
    },
    owners: { coachId: 'person' },
    unique: [['login']],
    indexes: [['coachId']],
  },
  signin: {
    columns: {
      tokenHash: 'text',
      personId: 'text',
      csrf: 'text',
      createdMs: 'number',
      lastSeenMs: 'number',
      expiresMs: 'number',
    },
    owners: { personId: 'person' },
    indexes: [['personId']],
  },
  invite: {
    columns: {
      id: 'text',
      codeHash: 'text',
      role: 'text',
      name: 'text',
      byId: 'text',
      createdMs: 'number',
      expiresMs: 'number',
      usedMs: 'number?',
      personId: 'text?',
    },
    owners: { byId: 'person', personId: 'person' },
    unique: [['codeHash']],
  },
  pairing: {
    columns: { codeHash: 'text', studentId: 'text', expiresMs: 'number', usedMs: 'number?' },
    owners: { studentId: 'person' },
  },
  machine: {
    columns: {
      id: 'text',
      studentId: 'text',
      name: 'text',
      tokenHash: 'text',
      pairedMs: 'number',
      lastSeenMs: 'number?',
      revokedMs: 'number?',
    },
    owners: { studentId: 'person' },
    unique: [['tokenHash']],
    indexes: [['studentId']],
  },
  session: {
    columns: {
      id: 'text',
      studentId: 'text',
      clientId: 'text',
      sha256: 'text',
      content: 'text?',
      bytes: 'number',
      receivedMs: 'number',
      name: 'text',
      hand: 'text',
      simulated: 'number',
      startedMs: 'number',
      durationS: 'number?',
      analysed: 'number',
      version: 'text?',
      problem: 'text?',
      rehearsals: 'number',
      scored: 'number',
      passed: 'number',
      balls: 'number',
      practiceSwings: 'number',
      ballsInMix: 'number',
      ledger: 'text',
      warnings: 'number',
      painBefore: 'number?',
      painAfter: 'number?',
      note: 'text',
      plan: 'text',
      planNumber: 'number?',
      spreads: 'text',
      carryOver: 'text',
      differences: 'text',
      reviewedMs: 'number?',
      reviewedBy: 'text?',
    },
    owners: { studentId: 'person' },
    unique: [
      ['studentId', 'clientId'],
      ['studentId', 'content'],
    ],
    indexes: [
      // All that the list of students counts: it is answered from the index alone.
      [
        'studentId',
        'startedMs',
        'reviewedMs',
        'analysed',
        'rehearsals',
        'balls',
        'ballsInMix',
        'warnings',
        'painBefore',
        'painAfter',
        'id',
      ],
    ],
  },
  warning: {
    columns: {
      sessionId: 'text',
      position: 'number',
      warningId: 'text',
      atS: 'number',
      text: 'text',
    },
    key: ['sessionId', 'position'],
    owners: { sessionId: 'session' },
  },
  job: {
    columns: { sessionId: 'text', queuedMs: 'number', tries: 'number' },
    owners: { sessionId: 'session' },
  },
  upload: {
    columns: {
      studentId: 'text',
      clientId: 'text',
      sha256: 'text',
      bytes: 'number',
      createdMs: 'number',
      sessionId: 'text?',
    },
    key: ['studentId', 'clientId'],
    owners: { studentId: 'person', sessionId: 'session' },
  },
  comment: {
    columns: {
      id: 'text',
      sessionId: 'text',
      authorId: 'text',
      atMs: 'number',
      text: 'text',
      repIndex: 'number?',
      momentS: 'number?',
      replyTo: 'text?',
    },
    owners: { sessionId: 'session', authorId: 'person' },
    indexes: [
      ['sessionId', 'atMs'],
      ['authorId', 'sessionId', 'atMs'],
    ],
  },
  relabel: {
    columns: {
      sessionId: 'text',
      repIndex: 'number',
      kind: 'text',
      originalKind: 'text',
      atS: 'number',
      byId: 'text',
      atMs: 'number',
    },
    key: ['sessionId', 'repIndex'],
    owners: { sessionId: 'session' },
  },
  clip: {
    columns: {
      id: 'text',
      sessionId: 'text',
      byId: 'text',
      name: 'text',
      type: 'text',
      bytes: 'number',
      createdMs: 'number',
      startS: 'number?',
      view: 'text?',
    },
    owners: { sessionId: 'session' },
    indexes: [['sessionId']],
  },
  plan: {
    columns: {
      id: 'text',
      studentId: 'text',
      number: 'number',
      plan: 'text',
      validFromMs: 'number',
      createdMs: 'number',
      byId: 'text',
      reachedMs: 'number?',
    },
    owners: { studentId: 'person' },
    unique: [['studentId', 'number']],
  },
  template: {
    columns: { id: 'text', coachId: 'text', name: 'text', plan: 'text' },
    owners: { coachId: 'person' },
    indexes: [['coachId']],
  },
  block: {
    columns: { id: 'text', coachId: 'text', title: 'text', text: 'text' },
    owners: { coachId: 'person' },
    indexes: [['coachId']],
  },
  lesson: {
    columns: { id: 'text', studentId: 'text', atMs: 'number', text: 'text' },
    owners: { studentId: 'person' },
    indexes: [['studentId']],
  },
};

const TYPES = { text: 'text', number: 'double precision' } as const;
/** Flags and counts come back as whole numbers either way; SQLite keeps them small. */
const typeOf = (form: Form) => TYPES[form.replace('?', '') as 'text' | 'number'];

async function createTable(db: Schema, name: string, form: TableForm): Promise<void> {
  const { columns, key, owners = {}, unique = [], indexes = [] } = form;
  const [first] = Object.keys(columns);
  let table = db.schema.createTable(name);
  for (const [column, kind] of Object.entries(columns))
    table = table.addColumn(column, typeOf(kind), (c) => {
      let built: ColumnDefinitionBuilder = kind.endsWith('?') ? c : c.notNull();
      if (key === undefined && column === first) built = built.primaryKey();
      const owner = owners[column];
      return owner === undefined ? built : built.references(`${owner}.id`).onDelete('cascade');
    });
  if (key !== undefined) table = table.addPrimaryKeyConstraint(`${name}Key`, [...key] as never[]);
  for (const group of unique)
    table = table.addUniqueConstraint(`${name}By${group.join('')}`, [...group] as never[]);
  await table.execute();
  for (const group of indexes)
    await db.schema
      .createIndex(`${name}Of${group.slice(0, 3).join('')}`)
      .on(name)
      .columns([...group])
      .execute();
}

async function first(db: Schema): Promise<void> {
  for (const [name, form] of Object.entries(FIRST)) await createTable(db, name, form);
  await db.schema
    .createTable('audit')
    .addColumn('id', 'integer', (c) => c.primaryKey().autoIncrement())
    .addColumn('atMs', 'double precision', (c) => c.notNull())
    .addColumn('who', 'text')
    .addColumn('act', 'text', (c) => c.notNull())
    .addColumn('what', 'text', (c) => c.notNull())
    .addColumn('address', 'text', (c) => c.notNull())
    .execute();
}

const PAIN_CLOSING: TableForm = {
  columns: {
    id: 'text',
    studentId: 'text',
    sessionId: 'text',
    throughMs: 'number',
    reason: 'text',
    byId: 'text',
    atMs: 'number',
    reopenedMs: 'number?',
  },
  owners: { studentId: 'person' },
  indexes: [['studentId']],
};

/** Closed pain, sessions reviewed together, answers to notes. */
async function attentionColumns(db: Schema): Promise<void> {
  await createTable(db, 'painClosing', PAIN_CLOSING);
  await db.schema.alterTable('session').addColumn('reviewedIn', 'text').execute();
  await db.schema
    .alterTable('comment')
    .addColumn('onNote', 'double precision', (c) => c.notNull().defaultTo(0))
    .execute();
  // The list of students counts with these two as well.
  const [counted = []] = FIRST['session']?.indexes ?? [];
  await db.schema.dropIndex(`sessionOf${counted.slice(0, 3).join('')}`).execute();
  await db.schema
    .createIndex('sessionCounted')
    .on('session')
    .columns([...counted, 'planNumber', 'simulated'])
    .execute();
  await sql`create index sessionWithSigns on session (studentId) where warnings > 0 or painBefore >= 4 or painAfter >= 2`.execute(
    db,
  );
  await sql`create index sessionAsking on session (studentId, startedMs) where instr(note, '?') > 0`.execute(
    db,
  );
}

/** What was kept of each session pooled other repetitions: all count as analysed by an older version, and are analysed anew. */
async function analysedAnew(db: Schema): Promise<void> {
  await sql`update session set version = 'older' where version is not null`.execute(db);
}

/** Analyses that failed say why, and wait where they failed too often. */
async function deadJobs(db: Schema): Promise<void> {
  for (const [name, type] of [
    ['problem', 'text'],
    ['failedMs', 'double precision'],
    ['deadIn', 'text'],
  ] as const)
    await db.schema.alterTable('job').addColumn(name, type).execute();
}

/** A note that was edited after it had come says so. */
async function editedNotes(db: Schema): Promise<void> {
  await db.schema.alterTable('session').addColumn('noteEditedMs', 'double precision').execute();
}

/**
 * The log holds numbers instead of names, and nothing of it can be changed any more. Of the entries until now stays
 * when, what and from where; whom they named only where that is still somebody's one name.
 */
async function logOfNumbers(db: Schema): Promise<void> {
  await sql`create table log (id integer primary key autoincrement, atMs double precision not null, byNumber integer,
    act text not null, about text not null, hash text not null)`.execute(db);
  await sql`create table logAddress (logId integer primary key, address text not null)`.execute(db);
  await sql`create table logged (number integer primary key autoincrement, kind text not null, ref text, role text,
    unique (kind, ref))`.execute(db);
  const { rows } = await sql<OldEntry>`select * from audit order by id`.execute(db);
  await takeOver(db as Kysely<HubTables>, rows);
  await sql`drop table audit`.execute(db);
  for (const act of ['update', 'delete'])
    await sql`create trigger ${sql.raw(`logNo${act}`)} before ${sql.raw(act)} on log
      begin select raise(abort, 'the log is only added to'); end`.execute(db);
}

const DEVICE: TableForm = {
  columns: { tokenHash: 'text', personId: 'text', createdMs: 'number' },
  owners: { personId: 'person' },
  indexes: [['personId']],
};

/** In the order of their names; one that has been released is never changed. */
const MIGRATIONS: Readonly<Record<string, Migration>> = {
  '001-hub': { up: first },
  '002-attention': { up: attentionColumns },
  '003-pools': { up: analysedAnew },
  '004-dead-jobs': { up: deadJobs },
  '005-edited-notes': { up: editedNotes },
  '006-log': { up: logOfNumbers },
  '007-devices': { up: (db: Schema) => createTable(db, 'device', DEVICE) },
};

export const hubMigrator = (db: Kysely<HubTables>): Migrator =>
  new Migrator({ db, provider: { getMigrations: () => Promise.resolve(MIGRATIONS) } });

/** Brings the hub's database to this version's form. @throws Error in words where it was written by a newer one. */
export async function migrateHub(db: Kysely<HubTables>): Promise<void> {
  const { error } = await hubMigrator(db).migrateToLatest();
  if (error === undefined) return;
  const text = error instanceof Error ? error.message : JSON.stringify(error);
  throw new Error(
    /previously executed migration .* is missing/.test(text)
      ? 'The hub was written by a newer Stillcatch: install that version or a later one.'
      : `The hub's database cannot be brought up to date (${text}).`,
  );
}
