import type { FastifyInstance } from 'fastify';
import Type, { type Static } from 'typebox';
import { answerErrors, refuseOtherSites } from '../streaming/apiErrors.ts';
import type { CoachLink } from '../streaming/hubContract/coachLink.ts';
import type { CoachService } from './coachLink.ts';
import { LINE_PATTERN, WORDS_PATTERN } from '../sensors/plainText.ts';

const line = (maxLength: number) => Type.String({ minLength: 1, maxLength, pattern: LINE_PATTERN });
const only = { additionalProperties: false };
const id = Type.String({ pattern: '^[A-Za-z0-9-]{1,64}$' });

const CONNECT = Type.Object(
  {
    hubUrl: line(300),
    code: line(40),
    machine: line(80),
    plain: Type.Optional(Type.Boolean()),
  },
  only,
);
const CONSENT = Type.Object({ send: Type.Boolean(), older: Type.Optional(Type.Boolean()) }, only);
const REPLY = Type.Object(
  {
    clientId: id,
    text: Type.String({ minLength: 1, maxLength: 4000, pattern: WORDS_PATTERN }),
    index: Type.Union([Type.Integer({ minimum: 1, maximum: 1e6 }), Type.Null()]),
    replyTo: Type.Union([id, Type.Null()]),
  },
  only,
);

/** What the page asks of the connection with a coach, under /api/coach; each answer tells how it stands then. */
export function registerCoachApi(app: FastifyInstance, coach: CoachService): void {
  void app.register(
    async (api) => {
      answerErrors(api);
      api.addHook('onRequest', refuseOtherSites);
      api.get('', (): Promise<CoachLink> => coach.view());
      api.post<{ Body: Static<typeof CONNECT> }>(
        '/connect',
        { schema: { body: CONNECT } },
        async ({ body }): Promise<CoachLink> => {
          await coach.connect(body);
          return coach.view();
        },
      );
      api.post<{ Body: Static<typeof CONSENT> }>(
        '/consent',
        { schema: { body: CONSENT } },
        ({ body }): Promise<CoachLink> => {
          coach.consent(body);
          return coach.view();
        },
      );
      api.post<{ Body: Static<typeof REPLY> }>(
        '/comments',
        { schema: { body: REPLY } },
        ({ body }): Promise<CoachLink> => {
          coach.reply(body);
          return coach.view();
        },
      );
      api.post('/seen', (): Promise<CoachLink> => {
        coach.seen();
        return coach.view();
      });
      api.delete('', async (): Promise<CoachLink> => {
        await coach.disconnect();
        return coach.view();
      });
    },
    { prefix: '/api/coach' },
  );
}
