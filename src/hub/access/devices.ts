import type { FastifyReply, FastifyRequest } from 'fastify';
import { hashOf, newToken } from '../../streaming/secrets.ts';
import { type HubContext, isSecure } from '../context.ts';
import type { Db } from '../db/open.ts';

const KEPT_S = 400 * 86_400;

const cookieOf = (context: HubContext): string =>
  isSecure(context.settings) ? '__Host-stillcatch-device' : 'stillcatch-device';

/** The hash by which a browser is known where this person signed in from it before, else `null`. It lets nobody in. */
export async function knownDevice(
  context: HubContext,
  request: FastifyRequest,
  personId: string,
): Promise<string | null> {
  const token = request.cookies[cookieOf(context)];
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
  reply.setCookie(cookieOf(context), token, {
    httpOnly: true,
    sameSite: 'strict',
    secure: isSecure(context.settings),
    path: '/',
    maxAge: KEPT_S,
  });
}

export async function forgetDevices(db: Db, personId: string): Promise<void> {
  await db.deleteFrom('device').where('personId', '=', personId).execute();
}
