import type { FastifyInstance } from 'fastify';
import Type from 'typebox';
import type { Invite, NewInvite } from '../../streaming/hubContract/people.ts';
import { Refused } from '../../streaming/apiErrors.ts';
import { person } from '../access/guard.ts';
import { newId } from '../access/secrets.ts';
import { hashOf, newToken } from '../../streaming/secrets.ts';
import { note } from '../log/log.ts';
import type { HubContext } from '../context.ts';
import { ID, config, line, only, typed } from '../parts/api.ts';
import { qrRows } from '../../streaming/qrRows.ts';
import { reachOf } from './reach.ts';

/** A choice. */
const HOLDS_MS = 14 * 86_400_000;

const BODY = only({
  role: Type.Union([Type.Literal('coach'), Type.Literal('student')]),
  name: line(80),
  studentId: Type.Optional(ID),
});

async function refuseOthers({ db }: HubContext, studentId: string, coachId: string): Promise<void> {
  const own = await db
    .selectFrom('person')
    .select('id')
    .where('id', '=', studentId)
    .where('coachId', '=', coachId)
    .executeTakeFirst();
  if (own === undefined) throw new Refused(404, 'not-found', 'Not found.');
}

function makeRoute(api: FastifyInstance, context: HubContext): void {
  const { db, now, settings } = context;
  typed(api).post(
    '/invites',
    { config: config({ who: 'coach' }), schema: { body: BODY } },
    async (request, reply): Promise<NewInvite> => {
      const { role, name, studentId } = request.body;
      const { id: byId, role: own } = person(request);
      if (role === 'coach' && own !== 'owner')
        throw new Refused(403, 'forbidden', 'Only the club owner can invite coaches.');
      if (studentId !== undefined) await refuseOthers(context, studentId, byId);
      const code = newToken();
      const invite: Invite = {
        id: newId(),
        role,
        name,
        createdMs: now(),
        expiresMs: now() + HOLDS_MS,
        usedMs: null,
      };
      await db
        .insertInto('invite')
        .values({ ...invite, byId, codeHash: hashOf(code), personId: studentId ?? null })
        .execute();
      await note(context, request, 'invite', { role, invite: invite.id });
      // Behind the #: it never reaches a log or another site.
      const url = `${settings.publicUrl}/#/invitation/${code}`;
      reply.code(201);
      return { ...invite, url, qr: qrRows(url), reach: reachOf(url) };
    },
  );
}

/** Invitations that a coach made. */
export function invites(api: FastifyInstance, context: HubContext): void {
  const { db } = context;
  makeRoute(api, context);
  api.get('/invites', { config: config({ who: 'coach' }) }, (request): Promise<Invite[]> =>
    db
      .selectFrom('invite')
      .select(['id', 'role', 'name', 'createdMs', 'expiresMs', 'usedMs'])
      .where('byId', '=', person(request).id)
      .orderBy('createdMs', 'desc')
      .limit(100)
      .execute(),
  );
  typed(api).delete(
    '/invites/:inviteId',
    { config: config({ who: 'coach' }), schema: { params: Type.Object({ inviteId: ID }) } },
    async (request, reply) => {
      const { numDeletedRows } = await db
        .deleteFrom('invite')
        .where('id', '=', request.params.inviteId)
        .where('byId', '=', person(request).id)
        .where('usedMs', 'is', null)
        .executeTakeFirst();
      if (numDeletedRows === 0n) throw new Refused(404, 'not-found', 'Invitation not found.');
      return reply.code(204).send();
    },
  );
}
