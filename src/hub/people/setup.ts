import type { FastifyInstance } from 'fastify';
import type { Me, Setup } from '../../streaming/hubContract/people.ts';
import { Refused } from '../../streaming/apiErrors.ts';
import { codeHash, newCode } from '../access/secrets.ts';
import { sameText } from '../../streaming/secrets.ts';
import { note } from '../log/log.ts';
import type { HubContext } from '../context.ts';
import { config, line, only, typed } from '../parts/api.ts';
import { OWN, enter, makePerson } from './accounts.ts';
import { STRICT } from './limits.ts';
import { newPasswordHash } from './passwords.ts';

const BODY = only({ code: line(40), clubName: line(80), ...OWN });
const DONE = new Refused(409, 'done', 'This hub is already set up. Sign in.');
const WRONG = new Refused(403, 'wrong-code', 'Wrong code. Enter the code shown in the terminal.');

const isNeeded = async ({ db }: HubContext): Promise<boolean> =>
  (await db.selectFrom('person').select('id').limit(1).executeTakeFirst()) === undefined;

/** The first coach makes the club, with the code from the terminal. */
export function setup(api: FastifyInstance, context: HubContext): void {
  const { db, say, settings } = context;
  const code = newCode();
  const kept = codeHash(code);
  api.addHook('onReady', async () => {
    if (await isNeeded(context))
      say(
        `Nobody is here yet. Open ${settings.publicUrl}/ and set the hub up with the code ${code}`,
      );
  });
  typed(api).get('/setup', { config: config({ who: 'anyone' }) }, async (): Promise<Setup> => ({
    needed: await isNeeded(context),
  }));
  typed(api).post(
    '/setup',
    { config: { ...config({ who: 'anyone' }), rateLimit: STRICT }, schema: { body: BODY } },
    async (request, reply): Promise<Me> => {
      const { code: given, clubName, password, ...own } = request.body;
      if (!(await isNeeded(context))) throw DONE;
      if (!sameText(codeHash(given), kept)) throw WRONG;
      const passwordHash = await newPasswordHash(password, own.login);
      const owner = { ...own, passwordHash, role: 'owner', coachId: null, hand: 'right' } as const;
      const id = await db.transaction().execute(async (t) => {
        // whoever was first made it meanwhile
        if (!(await isNeeded({ ...context, db: t }))) throw DONE;
        await t
          .insertInto('club')
          .values({ id: 1, name: clubName, demo: 0 })
          .onConflict((c) => c.column('id').doUpdateSet({ name: clubName }))
          .execute();
        return makePerson({ ...context, db: t }, owner);
      });
      await note(context, request, 'setup', {}, id);
      return enter(context, reply, id);
    },
  );
}
