import type { FastifyRequest } from 'fastify';
import type { HubContext } from './context.ts';

export type Act =
  | 'setup'
  | 'login'
  | 'login-failed'
  | 'logout'
  | 'password'
  | 'invite'
  | 'join'
  | 'pair'
  | 'revoke'
  | 'export'
  | 'delete'
  | 'move'
  | 'relabel'
  | 'plan'
  | 'pain-close'
  | 'pain-reopen'
  | 'review-calm'
  | 'review-undo';

/**
 * Writes down who did what.
 * @param what names things by name and id, never their content
 * @param entering who is known from now on, where the request itself came from nobody
 */
export async function note(
  { db, now }: HubContext,
  request: FastifyRequest,
  act: Act,
  what: string,
  entering: string | null = null,
): Promise<void> {
  const who = entering ?? (request.actor?.kind === 'person' ? request.actor.name : null);
  await db
    .insertInto('audit')
    .values({ atMs: now(), who, act, what, address: request.ip })
    .execute();
}
