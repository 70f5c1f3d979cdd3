import type { FastifyInstance } from 'fastify';
import type { Machine, Paired, PairingCode } from '../../streaming/hubContract/people.ts';
import { Refused } from '../../streaming/apiErrors.ts';
import { person } from '../access/guard.ts';
import { codeHash, newCode, newId } from '../access/secrets.ts';
import { hashOf, newToken } from '../../streaming/secrets.ts';
import { note } from '../log/log.ts';
import type { HubContext } from '../context.ts';
import { config, line, one, only, typed } from '../parts/api.ts';
import { clubOf } from './accounts.ts';
import { STRICT } from './limits.ts';
import { qrRows } from '../../streaming/qrRows.ts';

/** A choice. */
const HOLDS_MS = 10 * 60_000;
const WRONG = new Refused(
  403,
  'wrong-code',
  'This code is wrong, was used or has expired. Get a new one on the hub.',
);

function codeRoute(api: FastifyInstance, context: HubContext): void {
  const { db, now, settings } = context;
  api.post(
    '/me/pairing',
    { config: config({ who: 'student' }) },
    async (request): Promise<PairingCode> => {
      const code = newCode();
      const expiresMs = now() + HOLDS_MS;
      const studentId = person(request).id;
      await db.deleteFrom('pairing').where('studentId', '=', studentId).execute();
      await db
        .insertInto('pairing')
        .values({ codeHash: codeHash(code), studentId, expiresMs, usedMs: null })
        .execute();
      const hubUrl = settings.publicUrl;
      return { code, expiresMs, hubUrl, qr: qrRows(`${hubUrl} ${code}`) };
    },
  );
}

async function take({ db, now }: HubContext, code: string): Promise<string> {
  const row = await db
    .updateTable('pairing')
    .set({ usedMs: now() })
    .where('codeHash', '=', codeHash(code))
    .where('usedMs', 'is', null)
    .where('expiresMs', '>', now())
    .returning('studentId')
    .executeTakeFirst();
  if (row === undefined) throw WRONG;
  return row.studentId;
}

function pairRoute(api: FastifyInstance, context: HubContext): void {
  const { db, now } = context;
  typed(api).post(
    '/pair',
    {
      config: { ...config({ who: 'anyone' }), rateLimit: STRICT },
      schema: { body: only({ code: line(40), machine: line(80) }) },
    },
    async (request, reply): Promise<Paired> => {
      const { code, machine } = request.body;
      const token = newToken();
      const id = newId();
      const studentId = await db.transaction().execute(async (t) => {
        const owner = await take({ ...context, db: t }, code);
        await t
          .insertInto('machine')
          .values({
            id,
            studentId: owner,
            name: machine,
            tokenHash: hashOf(token),
            pairedMs: now(),
            lastSeenMs: now(),
            revokedMs: null,
          })
          .execute();
        return owner;
      });
      const { student, coach } = await namesOf(context, studentId);
      await note(context, request, 'pair', { person: studentId, machine: id });
      reply.code(201);
      return { token, student, coach, club: (await clubOf(db)).name };
    },
  );
}

/** Names of a student and of the coach. */
export async function namesOf(
  { db }: HubContext,
  studentId: string,
): Promise<{ readonly student: string; readonly coach: string }> {
  const row = await db
    .selectFrom('person')
    .leftJoin('person as coach', 'coach.id', 'person.coachId')
    .select(['person.name as student', 'coach.name as coach'])
    .where('person.id', '=', studentId)
    .executeTakeFirstOrThrow();
  return { student: row.student, coach: row.coach ?? '' };
}

/** Computers that send for a student. */
export function pairing(api: FastifyInstance, context: HubContext): void {
  const { db, now } = context;
  codeRoute(api, context);
  pairRoute(api, context);
  typed(api).get(
    '/students/:studentId/machines',
    {
      config: config({ who: 'student-or-coach', of: 'student' }),
      schema: { params: one('student') },
    },
    ({ params }): Promise<Machine[]> =>
      db
        .selectFrom('machine')
        .select(['id', 'name', 'pairedMs', 'lastSeenMs', 'revokedMs'])
        .where('studentId', '=', params.studentId!)
        .orderBy('pairedMs', 'desc')
        .execute(),
  );
  typed(api).delete(
    '/machines/:machineId',
    {
      config: config({ who: 'student-or-coach', of: 'machine' }),
      schema: { params: one('machine') },
    },
    async (request, reply) => {
      const { machineId } = request.params;
      await db
        .updateTable('machine')
        .set({ revokedMs: now() })
        .where('id', '=', machineId!)
        .execute();
      await note(context, request, 'revoke', { machine: machineId! });
      return reply.code(204).send();
    },
  );
}
