import type { FastifyInstance } from 'fastify';
import Type from 'typebox';
import type { LogCheck, LogEntry } from '../../streaming/hubContract/log.ts';
import type { HubContext } from '../context.ts';
import { config, typed } from '../parts/api.ts';
import { firstBroken } from './chain.ts';
import { pageOfLog } from './shown.ts';

const OWNER = config({ who: 'owner' });

/** Who did what to people's data, for the owner of the club. */
export function logRoutes(api: FastifyInstance, { db }: HubContext): void {
  typed(api).get(
    '/log',
    {
      config: OWNER,
      schema: {
        querystring: Type.Object({ before: Type.Optional(Type.Integer({ minimum: 1 })) }),
      },
    },
    ({ query }): Promise<readonly LogEntry[]> => pageOfLog(db, query.before),
  );
  api.get('/log/check', { config: OWNER }, async (): Promise<LogCheck> => {
    const { entries } = await db
      .selectFrom('log')
      .select((e) => e.fn.countAll<number>().as('entries'))
      .executeTakeFirstOrThrow();
    return { entries: Number(entries), brokenAt: await firstBroken(db) };
  });
}
