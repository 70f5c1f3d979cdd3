import { rm } from 'node:fs/promises';
import { join } from 'node:path';
import type { Readable } from 'node:stream';
import { SessionError } from '../../sessions/sessionError.ts';
import { Refused, sentenceOf } from '../../streaming/apiErrors.ts';
import {
  MAX_UPLOAD_BYTES,
  type UploadRequest,
  type UploadState,
} from '../../streaming/hubContract/machine.ts';
import type { HubContext } from '../context.ts';
import type { UploadTable } from '../db/tables.ts';
import { type Exclusive, exclusive } from './exclusive.ts';
import { append, bytesOf, sha256Of } from './staging.ts';
import { takeIn } from './takeIn.ts';

/** Of one student's session on the way. */
export interface UploadName {
  readonly studentId: string;
  readonly clientId: string;
}

/** Uploads of all students. Whatever several senders of one session do, they do it one after the other. */
export interface Uploads {
  announce(name: UploadName, request: UploadRequest): Promise<UploadState>;
  state(name: UploadName): Promise<UploadState>;
  /** @throws OffsetRefused where `offset` is not what has come */
  take(name: UploadName, offset: number, body: Readable): Promise<UploadState>;
}

/** Carries the facts with which the sender goes on. */
export class OffsetRefused extends Refused {
  readonly state: UploadState;

  constructor(state: UploadState) {
    super(409, 'offset', `The hub has ${state.received} bytes of it: go on from there.`);
    this.state = state;
  }
}

/** Sessions that one student may have under way; a choice. */
const MOST_OPEN = 40;
/** Files that are checked and moved at the same time: each needs memory and a core. */
const FINISHING = 1;

export function uploadsOf(context: HubContext): Uploads {
  const alone = exclusive();
  const desk: Desk = { context, finishing: exclusive(FINISHING) };
  const lineOf = ({ studentId, clientId }: UploadName): string => `${studentId}/${clientId}`;
  return {
    announce: (name, request) => alone(lineOf(name), () => announce(desk, name, request)),
    state: (name) => alone(lineOf(name), async () => stateOf(desk, await known(desk, name))),
    take: (name, offset, body) => alone(lineOf(name), () => take(desk, name, offset, body)),
  };
}

interface Desk {
  readonly context: HubContext;
  readonly finishing: Exclusive;
}

export const stagingPath = (
  { places }: Pick<HubContext, 'places'>,
  { studentId, clientId }: UploadName,
): string => join(places.uploads, `${studentId}-${clientId}.part`);

async function find({ context }: Desk, { studentId, clientId }: UploadName) {
  return context.db
    .selectFrom('upload')
    .selectAll()
    .where('studentId', '=', studentId)
    .where('clientId', '=', clientId)
    .executeTakeFirst();
}

async function known(desk: Desk, name: UploadName): Promise<UploadTable> {
  const row = await find(desk, name);
  if (row !== undefined) return row;
  throw new Refused(404, 'not-announced', 'This upload was not announced. Announce it first.');
}

async function stateOf({ context }: Desk, upload: UploadTable): Promise<UploadState> {
  const { bytes, sessionId, clientId } = upload;
  if (sessionId === null)
    return { received: await bytesOf(stagingPath(context, upload)), bytes, complete: false };
  const kept = await context.db
    .selectFrom('session')
    .select('clientId')
    .where('id', '=', sessionId)
    .executeTakeFirst();
  const done = { received: bytes, bytes, complete: true };
  return kept === undefined || kept.clientId === clientId
    ? done
    : { ...done, sameAs: kept.clientId };
}

async function announce(desk: Desk, name: UploadName, wanted: UploadRequest): Promise<UploadState> {
  if (wanted.bytes > MAX_UPLOAD_BYTES)
    throw new Refused(
      413,
      'too-large',
      `At most ${MAX_UPLOAD_BYTES / 2 ** 20} MB per session; this one has ${Math.ceil(wanted.bytes / 2 ** 20)} MB.`,
    );
  const there = await find(desk, name);
  if (there === undefined) return begin(desk, name, wanted);
  if (there.sha256 === wanted.sha256 && there.bytes === wanted.bytes) return settle(desk, there);
  if (there.sessionId !== null)
    throw new Refused(422, 'exists', 'A different session with this name is already on the hub.');
  await forget(desk, name);
  return begin(desk, name, wanted);
}

async function begin(desk: Desk, name: UploadName, wanted: UploadRequest): Promise<UploadState> {
  const { db, now } = desk.context;
  const earlier = await earlierSession(desk, name, wanted.sha256);
  const open = await db
    .selectFrom('upload')
    .select((eb) => eb.fn.countAll<number>().as('count'))
    .where('studentId', '=', name.studentId)
    .where('sessionId', 'is', null)
    .executeTakeFirstOrThrow();
  if (Number(open.count) >= MOST_OPEN)
    throw new Refused(429, 'too-many', 'Too many uploads at once. Finish some first.');
  await rm(stagingPath(desk.context, name), { force: true });
  const row = { ...name, ...wanted, createdMs: now(), sessionId: earlier };
  await db.insertInto('upload').values(row).execute();
  return stateOf(desk, row);
}

/** Came by mail under this name, or was sent under another: the very same file. */
async function earlierSession(
  { context }: Desk,
  { studentId }: UploadName,
  sha256: string,
): Promise<string | null> {
  const row = await context.db
    .selectFrom('session')
    .select('id')
    .where('studentId', '=', studentId)
    .where('sha256', '=', sha256)
    .executeTakeFirst();
  return row?.id ?? null;
}

async function forget({ context }: Desk, { studentId, clientId }: UploadName): Promise<void> {
  await rm(stagingPath(context, { studentId, clientId }), { force: true });
  await context.db
    .deleteFrom('upload')
    .where('studentId', '=', studentId)
    .where('clientId', '=', clientId)
    .execute();
}

async function take(
  desk: Desk,
  name: UploadName,
  offset: number,
  body: Readable,
): Promise<UploadState> {
  try {
    const upload = await known(desk, name);
    const state = await stateOf(desk, upload);
    if (state.complete) return state;
    if (offset !== state.received) throw new OffsetRefused(state);
    await append(body, stagingPath(desk.context, name), offset, upload.bytes);
    return await settle(desk, upload);
  } finally {
    body.resume(); // what comes after a refusal is let go by, so that the answer gets out
  }
}

/** Where it stands; where all has come, it becomes a session. */
async function settle(desk: Desk, upload: UploadTable): Promise<UploadState> {
  const state = await stateOf(desk, upload);
  if (state.complete || state.received < upload.bytes) return state;
  return desk.finishing('', () => finish(desk, upload));
}

async function finish(desk: Desk, upload: UploadTable): Promise<UploadState> {
  const { context } = desk;
  const path = stagingPath(context, upload);
  const { studentId, clientId, sha256, bytes } = upload;
  if ((await sha256Of(path)) !== sha256) {
    await rm(path, { force: true });
    throw new Refused(422, 'hash', 'Upload damaged (wrong SHA-256). Send it again from the start.');
  }
  const taken = await takeIn(context, { studentId, clientId, sha256, bytes, path }).catch(
    async (error: unknown) => {
      if (!(error instanceof SessionError)) throw error;
      await forget(desk, upload);
      throw new Refused(422, error.code, sentenceOf(error));
    },
  );
  if (taken.sameAs !== null) await pointTo(desk, upload, taken.sessionId);
  return stateOf(desk, { ...upload, sessionId: taken.sessionId });
}

async function pointTo({ context }: Desk, upload: UploadTable, sessionId: string): Promise<void> {
  await rm(stagingPath(context, upload), { force: true });
  await context.db
    .updateTable('upload')
    .set({ sessionId })
    .where('studentId', '=', upload.studentId)
    .where('clientId', '=', upload.clientId)
    .execute();
}
