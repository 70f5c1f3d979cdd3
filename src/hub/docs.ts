import swagger from '@fastify/swagger';
import swaggerUi from '@fastify/swagger-ui';
import type { FastifyInstance } from 'fastify';
import { VERSION } from '../sessions/version.ts';

/** The API's description, made from the schemas of its routes; at /docs, and as JSON at /docs/json. To be set up before the routes. */
export async function describeApi(app: FastifyInstance): Promise<void> {
  await app.register(swagger, {
    openapi: {
      openapi: '3.1.0',
      info: { title: 'Stillcatch hub', version: VERSION },
      components: {
        securitySchemes: {
          cookie: { type: 'apiKey', in: 'cookie', name: 'stillcatch' },
          machine: { type: 'http', scheme: 'bearer' },
        },
      },
    },
  });
  await app.register(swaggerUi, { routePrefix: '/docs', staticCSP: true });
}
