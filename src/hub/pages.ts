import { existsSync } from 'node:fs';
import { join } from 'node:path';
import fastifyStatic from '@fastify/static';
import type { FastifyInstance } from 'fastify';

const MISSING =
  'The page has not been built yet. Run "npm run build" in the project folder and start again.';

/** Serves the built page at / and what it is made of under /assets. */
export async function servePages(app: FastifyInstance, folder: string): Promise<void> {
  if (!existsSync(join(folder, 'hub.html'))) {
    app.get('/', (_request, reply) => reply.code(503).type('text/plain').send(MISSING));
    return;
  }
  await app.register(fastifyStatic, {
    root: join(folder, 'assets'),
    prefix: '/assets/',
    maxAge: '1y',
    immutable: true,
    index: false,
  });
  app.get('/', (_request, reply) =>
    reply.sendFile('hub.html', folder, { maxAge: 0, immutable: false }),
  );
}
