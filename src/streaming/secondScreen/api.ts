import type { FastifyInstance } from 'fastify';
import Type, { type Static } from 'typebox';
import { answerErrors, refuseOtherSites } from '../apiErrors.ts';
import type { SecondScreenView } from '../secondScreenContract.ts';
import type { SecondScreen } from './service.ts';

const ADDRESS = Type.Object(
  { address: Type.String({ minLength: 2, maxLength: 60 }) },
  { additionalProperties: false },
);
const ID = Type.Object({ id: Type.String({ minLength: 1, maxLength: 60 }) });

/** What the student's own page asks of the second screen, under /api/second-screen; each answer tells how it stands then. */
export function registerSecondScreenApi(app: FastifyInstance, screen: SecondScreen): void {
  app.addHook('preClose', () => screen.switchOff());
  void app.register(
    async (api) => {
      answerErrors(api);
      api.addHook('onRequest', refuseOtherSites);
      const after = async (done: void | Promise<void>): Promise<SecondScreenView> => {
        await done;
        return screen.view();
      };
      api.get('', () => screen.view());
      api.post<{ Body: Static<typeof ADDRESS> }>('/on', { schema: { body: ADDRESS } }, (request) =>
        after(screen.switchOn(request.body.address)),
      );
      api.post('/off', () => after(screen.switchOff()));
      api.post('/code', async () => after(screen.newCode()));
      api.delete('/screens', async () => after(screen.end(null)));
      api.delete<{ Params: Static<typeof ID> }>(
        '/screens/:id',
        { schema: { params: ID } },
        async ({ params }) => after(screen.end(params.id)),
      );
    },
    { prefix: '/api/second-screen' },
  );
}
