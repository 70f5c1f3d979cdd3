import type { FastifyInstance } from 'fastify';
import Type from 'typebox';
import type { Me } from '../../streaming/hubContract/people.ts';
import { Refused } from '../../streaming/apiErrors.ts';
import { person } from '../access/guard.ts';
import { knownDevice, rememberDevice } from '../access/devices.ts';
import { signOut, signOutElsewhere } from '../access/signin.ts';
import { note } from '../log/log.ts';
import type { HubContext } from '../context.ts';
import { config, only, typed } from '../parts/api.ts';
import { LOGIN_BODY, PASSWORD, enter, leave, meOf } from './accounts.ts';
import { AccountWaits } from './accountWaits.ts';
import { endPairing } from './endings.ts';
import { STRICT, signInTries, tooMany } from './limits.ts';
import { isPassword, newPasswordHash } from './passwords.ts';

const WRONG = new Refused(403, 'wrong-password', 'Wrong sign-in name or password.');

async function find({ db }: HubContext, login: string) {
  return db
    .selectFrom('person')
    .select(['id', 'name', 'passwordHash', 'active'])
    .where('login', '=', login.trim().toLowerCase())
    .executeTakeFirst();
}

function signInRoute(api: FastifyInstance, context: HubContext): void {
  const tries = signInTries(api);
  const waits = new AccountWaits();
  typed(api).post(
    '/login',
    { config: { ...config({ who: 'anyone' }), rateLimit: STRICT }, schema: { body: LOGIN_BODY } },
    async (request, reply): Promise<Me> => {
      const { login, password } = request.body;
      const found = await find(context, login);
      const device = found ? await knownDevice(context, request, found.id) : null;
      const account = device ?? login.trim().toLowerCase();
      const waitS = Math.max(await tries(request), Math.ceil(waits.take(account) / 1000));
      if (waitS > 0) {
        reply.header('retry-after', waitS);
        throw tooMany(waitS);
      }
      const right = await isPassword(password, found?.passwordHash ?? null);
      if (found === undefined || !right || found.active !== 1) {
        await note(context, request, 'login-failed', found ? { person: found.id } : {});
        throw WRONG;
      }
      waits.passed(account);
      if (request.actor?.kind === 'person') await signOut(context.db, request.actor.tokenHash);
      const me = await enter(context, reply, found.id);
      if (device === null) await rememberDevice(context, reply, found.id);
      await note(context, request, 'login', {}, found.id);
      return me;
    },
  );
}

function passwordRoute(api: FastifyInstance, context: HubContext): void {
  const { db } = context;
  typed(api).post(
    '/me/password',
    {
      config: { ...config({ who: 'signed-in' }), rateLimit: STRICT },
      schema: { body: only({ current: Type.String({ maxLength: 200 }), next: PASSWORD }) },
    },
    async (request, reply) => {
      const { id, tokenHash } = person(request);
      const { passwordHash, login } = await db
        .selectFrom('person')
        .select(['passwordHash', 'login'])
        .where('id', '=', id)
        .executeTakeFirstOrThrow();
      if (!(await isPassword(request.body.current, passwordHash)))
        throw new Refused(403, 'wrong-password', 'Current password: wrong.');
      const next = await newPasswordHash(request.body.next, login ?? '');
      await db.updateTable('person').set({ passwordHash: next }).where('id', '=', id).execute();
      await signOutElsewhere(db, id, tokenHash);
      await endPairing(db, id);
      await note(context, request, 'password');
      return reply.code(204).send();
    },
  );
}

/** Signing in and out, and the own account. */
export function login(api: FastifyInstance, context: HubContext): void {
  signInRoute(api, context);
  passwordRoute(api, context);
  api.get('/me', { config: config({ who: 'signed-in' }) }, async (request): Promise<Me> =>
    meOf(context.db, person(request)),
  );
  api.post('/logout', { config: config({ who: 'signed-in' }) }, async (request, reply) => {
    await signOut(context.db, person(request).tokenHash);
    await note(context, request, 'logout');
    leave(context, reply);
    return reply.code(204).send();
  });
  api.post(
    '/me/sign-out-elsewhere',
    { config: config({ who: 'signed-in' }) },
    async (request, reply) => {
      const { id, tokenHash } = person(request);
      await signOutElsewhere(context.db, id, tokenHash);
      await note(context, request, 'logout', { how: 'elsewhere' });
      return reply.code(204).send();
    },
  );
}
