import type { FastifyInstance } from 'fastify';
import Type from 'typebox';
import { DEFAULT_PLAN } from '../../coaching/plan.ts';
import type { Invitation, Me } from '../../streaming/hubContract/people.ts';
import { Refused } from '../../streaming/apiErrors.ts';
import { newId } from '../access/secrets.ts';
import { hashOf } from '../../streaming/secrets.ts';
import { note } from '../log/log.ts';
import type { HubContext } from '../context.ts';
import { config, only, typed } from '../parts/api.ts';
import { OWN, clubOf, enter, makePerson, refuseTaken } from './accounts.ts';
import { endAllWaysIn } from './endings.ts';
import { STRICT } from './limits.ts';
import { newPasswordHash } from './passwords.ts';

const PARAMS = Type.Object({ code: Type.String({ pattern: '^[\\w-]{20,100}$' }) });
const BODY = only({
  ...OWN,
  hand: Type.Optional(Type.Union([Type.Literal('left'), Type.Literal('right')])),
});

const GONE = new Refused(
  404,
  'invitation',
  'This invitation was used, has expired or was withdrawn. Ask for a new one.',
);

async function openInvite({ db, now }: HubContext, code: string) {
  const row = await db
    .selectFrom('invite')
    .innerJoin('person', 'person.id', 'invite.byId')
    .select([
      'invite.id',
      'invite.role',
      'invite.name',
      'invite.byId',
      'invite.expiresMs',
      'invite.personId',
      'person.name as invitedBy',
    ])
    .where('invite.codeHash', '=', hashOf(code))
    .where('invite.usedMs', 'is', null)
    .where('invite.expiresMs', '>', now())
    .where('person.active', '=', 1)
    .executeTakeFirst();
  if (row === undefined) throw GONE;
  return row;
}

/** Whoever comes first takes it: the second finds it used. */
async function take({ db, now }: HubContext, inviteId: string): Promise<void> {
  const { numUpdatedRows } = await db
    .updateTable('invite')
    .set({ usedMs: now() })
    .where('id', '=', inviteId)
    .where('usedMs', 'is', null)
    .executeTakeFirst();
  if (numUpdatedRows !== 1n) throw GONE;
}

/** The invitation is the person's from now on: it goes where they go, under the name that they took. */
async function settle(
  { db }: HubContext,
  invite: { readonly id: string; readonly name: string },
  { id, name }: { readonly id: string; readonly name: string },
): Promise<void> {
  await db.updateTable('invite').set({ personId: id, name }).where('id', '=', invite.id).execute();
}

/** A new student starts under the standard plan, in the coach's name. */
async function firstPlan({ db, now }: HubContext, studentId: string, byId: string): Promise<void> {
  await db
    .insertInto('plan')
    .values({
      id: newId(),
      studentId,
      number: 1,
      plan: JSON.stringify(DEFAULT_PLAN),
      validFromMs: now(),
      createdMs: now(),
      byId,
      reachedMs: null,
    })
    .execute();
}

interface Own {
  readonly name: string;
  readonly login: string;
  readonly passwordHash: string;
}
type Asked = Own & { readonly hand: 'left' | 'right' };
type Joined = { readonly id: string; readonly role: 'coach' | 'student' };

/** A new way in for somebody who is here; every old one ends. */
async function renew({ db, now }: HubContext, id: string, own: Own): Promise<string> {
  const { name, login, passwordHash } = own;
  await refuseTaken(db, login, id);
  await db
    .updateTable('person')
    .set({ name, login: login.toLowerCase(), passwordHash, active: 1 })
    .where('id', '=', id)
    .execute();
  await endAllWaysIn(db, id, now());
  return id;
}

/** All of it or nothing: an invitation is spent only for an account that is there then. */
async function join(context: HubContext, code: string, { hand, ...own }: Asked): Promise<Joined> {
  const invite = await openInvite(context, code);
  await refuseTaken(context.db, own.login, invite.personId);
  await take(context, invite.id);
  const coachId = invite.role === 'student' ? invite.byId : null;
  const id =
    invite.personId === null
      ? await makePerson(context, { ...own, hand, role: invite.role, coachId })
      : await renew(context, invite.personId, own);
  if (coachId !== null && invite.personId === null) await firstPlan(context, id, coachId);
  await settle(context, invite, { id, name: own.name });
  return { id, role: invite.role };
}

/** Whoever has the link of an invitation joins. */
export function joining(api: FastifyInstance, context: HubContext): void {
  typed(api).get(
    '/invitation/:code',
    {
      config: { ...config({ who: 'anyone' }), rateLimit: { max: 30, timeWindow: '1 minute' } },
      schema: { params: PARAMS },
    },
    async ({ params }): Promise<Invitation> => {
      const { invitedBy, role, name, expiresMs } = await openInvite(context, params.code);
      return { club: await clubOf(context.db), invitedBy, role, name, expiresMs };
    },
  );
  typed(api).post(
    '/invitation/:code',
    {
      config: { ...config({ who: 'anyone' }), rateLimit: STRICT },
      schema: { params: PARAMS, body: BODY },
    },
    async (request, reply): Promise<Me> => {
      const { code } = request.params;
      await openInvite(context, code);
      const { hand = 'right', password, ...own } = request.body;
      const passwordHash = await newPasswordHash(password, own.login);
      const { id, role } = await context.db
        .transaction()
        .execute((db) => join({ ...context, db }, code, { ...own, passwordHash, hand }));
      await note(context, request, 'join', { role }, id);
      return enter(context, reply, id);
    },
  );
}
