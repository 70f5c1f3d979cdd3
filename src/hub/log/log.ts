import type { FastifyRequest } from 'fastify';
import type { LogAct } from '../../streaming/hubContract/log.ts';
import type { HubContext } from '../context.ts';
import type { Db } from '../db/open.ts';
import { append } from './chain.ts';
import { type LoggedKind, numberOf } from './numbers.ts';

/** What an entry is about: things by their ids here, by their numbers in the log; never a name or what somebody typed. */
export interface About {
  readonly person?: string;
  readonly coach?: string;
  readonly session?: string;
  readonly machine?: string;
  readonly invite?: string;
  /** Of the one who is invited or joins. */
  readonly role?: 'coach' | 'student';
  readonly repetition?: number;
  readonly sessions?: number;
  readonly format?: string;
  /** A coach who is let in again, or locked out. */
  readonly letIn?: boolean;
  /** By the computer itself, everywhere else, everything of somebody. */
  readonly how?: 'itself' | 'elsewhere' | 'everything';
}

const KINDS = {
  person: 'person',
  coach: 'person',
  session: 'session',
  machine: 'machine',
  invite: 'invite',
} as const satisfies Partial<Record<keyof About, LoggedKind>>;

const isThing = (key: string): key is keyof typeof KINDS => key in KINDS;

async function numbered(db: Db, about: About): Promise<Record<string, string | number | boolean>> {
  const entries: Record<string, string | number | boolean> = {};
  for (const [key, value] of Object.entries(about))
    entries[key] = isThing(key) ? await numberOf(db, KINDS[key], String(value)) : value;
  return entries;
}

/**
 * Writes down who did what; what is written is never changed.
 * @param entering id of who is known from now on, where the request itself came from nobody
 */
export async function note(
  { db, now }: HubContext,
  request: FastifyRequest,
  act: LogAct,
  about: About = {},
  entering: string | null = null,
): Promise<void> {
  const by = entering ?? (request.actor?.kind === 'person' ? request.actor.id : null);
  await db.transaction().execute(async (t) => {
    const id = await append(t, {
      atMs: now(),
      byNumber: by === null ? null : await numberOf(t, 'person', by),
      act,
      about: JSON.stringify(await numbered(t, about)),
    });
    await t.insertInto('logAddress').values({ logId: id, address: request.ip }).execute();
  });
}
