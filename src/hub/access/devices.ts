import type { FastifyReply, FastifyRequest } from 'fastify';
import { hashOf, newToken } from '../../streaming/secrets.ts';
import { type HubContext, isSecure } from '../context.ts';
import type { Db } from '../db/open.ts';
import { deviceCookieName, setCookie } from './cookies.ts';

/** The longest that browsers keep a cookie, from memory. */
const KEPT_DAYS = 400;

/** The hash by which a browser is known where this person signed in from it before, else `null`. It lets nobody in. */
export async function knownDevice(
  context: HubContext,
  request: FastifyRequest,
  personId: string,
): Promise<string | null> {
  const token = request.cookies[deviceCookieName(isSecure(context.settings))];
  if (token === undefined) return null;
  const row = await context.db
    .selectFrom('device')
    .select('tokenHash')
    .where('tokenHash', '=', hashOf(token))
    .where('personId', '=', personId)
    .executeTakeFirst();
  return row?.tokenHash ?? null;
}

/** From now on this browser is known for this person. */
export async function rememberDevice(
  context: HubContext,
  reply: FastifyReply,
  personId: string,
): Promise<void> {
  const token = newToken();
  await context.db
    .insertInto('device')
    .values({ tokenHash: hashOf(token), personId, createdMs: context.now() })
    .execute();
  setCookie(context, reply, deviceCookieName, token, KEPT_DAYS);
}

export async function forgetDevices(db: Db, personId: string): Promise<void> {
  await db.deleteFrom('device').where('personId', '=', personId).execute();
}
