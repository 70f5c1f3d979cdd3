import { mkdir, open, rename } from 'node:fs/promises';
import { dirname } from 'node:path';
import { planKey } from '../../streaming/sessionsViews.ts';
import { newId } from '../access/secrets.ts';
import { wake } from '../analysis/requeue.ts';
import type { HubContext } from '../context.ts';
import { NOT_ANALYSED } from '../db/notAnalysed.ts';
import type { Db } from '../db/open.ts';
import type { SessionTable } from '../db/tables.ts';
import { removeSessionFiles, sessionPaths } from '../sessionPaths.ts';
import type { Looked } from './look.ts';
import { looked } from './looking.ts';

/** A whole zip that has come. */
export interface Incoming {
  readonly studentId: string;
  /** `null`: by mail; it is called by what it holds, as the student's service does. */
  readonly clientId: string | null;
  readonly sha256: string;
  readonly bytes: number;
  readonly path: string;
}

export interface TakenIn {
  readonly sessionId: string;
  /** The recording was here before, under this id of the student's. */
  readonly sameAs: string | null;
}

/**
 * Checks the zip, moves it to its place and enters the session and its analysis to come, all or nothing.
 * A recording that the student sent before is kept once.
 * @throws SessionError in words where the zip is no sound session; it is left where it was.
 */
export async function takeIn(context: HubContext, incoming: Incoming): Promise<TakenIn> {
  const about = await looked(context, incoming.path);
  const there = await sameRecording(context.db, incoming.studentId, about.content);
  if (there !== null) return there;
  const sessionId = newId();
  const paths = sessionPaths(context.places, incoming.studentId, sessionId);
  await mkdir(paths.folder, { recursive: true, mode: 0o700 });
  await synced(incoming.path);
  await rename(incoming.path, paths.zip);
  await synced(dirname(paths.zip));
  try {
    const row = await newRow(context, incoming, about, sessionId);
    await enter(context, row);
  } catch (error) {
    await removeSessionFiles(paths);
    const other = await sameRecording(context.db, incoming.studentId, about.content);
    if (other !== null) return other;
    throw error;
  }
  wake(context);
  return { sessionId, sameAs: null };
}

async function sameRecording(db: Db, studentId: string, content: string): Promise<TakenIn | null> {
  const row = await db
    .selectFrom('session')
    .select(['id', 'clientId'])
    .where('studentId', '=', studentId)
    .where('content', '=', content)
    .executeTakeFirst();
  return row === undefined ? null : { sessionId: row.id, sameAs: row.clientId };
}

/** Written to the disk, not only to its cache: a file, or the names in a folder. */
async function synced(path: string): Promise<void> {
  const file = await open(path, 'r');
  try {
    await file.sync();
  } finally {
    await file.close();
  }
}

async function enter({ db, now }: HubContext, row: SessionTable): Promise<void> {
  await db.transaction().execute(async (transaction) => {
    await transaction.insertInto('session').values(row).execute();
    await transaction
      .insertInto('job')
      .values({ sessionId: row.id, queuedMs: now(), tries: 0 })
      .execute();
    await transaction
      .updateTable('upload')
      .set({ sessionId: row.id })
      .where('studentId', '=', row.studentId)
      .where('clientId', '=', row.clientId)
      .execute();
  });
}

async function newRow(
  { db, now }: HubContext,
  { studentId, clientId, sha256, bytes }: Incoming,
  looked: Looked,
  id: string,
): Promise<SessionTable> {
  const { content, name, hand, simulated, startedMs, plan, notes } = looked;
  return {
    ...NOT_ANALYSED,
    reviewedMs: null,
    reviewedBy: null,
    reviewedIn: null,
    ...notes,
    noteEditedMs: null,
    id,
    studentId,
    clientId: clientId ?? content,
    sha256,
    content,
    bytes,
    receivedMs: now(),
    name,
    hand,
    simulated: simulated ? 1 : 0,
    startedMs: startedMs ?? now(),
    plan: JSON.stringify(plan),
    planNumber: await numberOf(db, studentId, planKey(plan)),
  };
}

/** Which of the student's plans it was done under; `null` where it is none of the coach's. */
async function numberOf(db: Db, studentId: string, key: string): Promise<number | null> {
  const plans = await db
    .selectFrom('plan')
    .select(['number', 'plan'])
    .where('studentId', '=', studentId)
    .orderBy('number', 'desc')
    .execute();
  const found = plans.find(
    ({ plan }) => planKey(JSON.parse(plan) as Parameters<typeof planKey>[0]) === key,
  );
  return found?.number ?? null;
}
