import cookie from '@fastify/cookie';
import helmet from '@fastify/helmet';
import rateLimit from '@fastify/rate-limit';
import Fastify, { type FastifyInstance } from 'fastify';
import { answerErrors, refuseSitesBut } from '../streaming/apiErrors.ts';
import { type GuardedRoute, guard } from './access/guard.ts';
import { failedAnalyses } from './analysis/failed.ts';
import { analysisPart } from './analysis/part.ts';
import { blocks } from './coach/blocks.ts';
import { calmReviews } from './coach/calmReviews.ts';
import { clips } from './coach/clips.ts';
import { comments } from './coach/comments.ts';
import { studentData } from './coach/data.ts';
import { lessons } from './coach/lessons.ts';
import { painClosings } from './coach/painClosings.ts';
import { plans } from './coach/plans.ts';
import { progress } from './coach/progress.ts';
import { reviewing } from './coach/reviewing.ts';
import { sessions } from './coach/sessions.ts';
import { students } from './coach/students.ts';
import { PAGE_POLICY } from '../streaming/pagePolicy.ts';
import { refuseOtherNames } from '../streaming/ownNames.ts';
import { validateStrictly } from '../streaming/validation.ts';
import { type HubContext, isSecure } from './context.ts';
import { tellMachines } from './machine/news.ts';
import { logRoutes } from './log/routes.ts';
import { ARRIVAL_LIMITS, endStalledBodies, httpLimits } from './halfOpen.ts';
import { machineRoutes } from './machine/routes.ts';
import { describeApi } from './docs.ts';
import { club } from './people/club.ts';
import { LIMITS } from './people/limits.ts';
import { invites } from './people/invites.ts';
import { joining } from './people/joining.ts';
import { login } from './people/login.ts';
import { pairing } from './people/pairing.ts';
import { tellUnchanged } from './parts/unchanged.ts';
import { setup } from './people/setup.ts';
import { sessionFiles } from './sessions/routes.ts';
import { uploadRoutes } from './uploads/routes.ts';

const contentSecurityPolicy = {
  useDefaults: false,
  directives: { ...PAGE_POLICY, mediaSrc: ["'self'", 'blob:'] },
};

export interface Hub {
  readonly app: FastifyInstance;
  /** Every route of /api with its rule. */
  readonly routes: readonly GuardedRoute[];
}

/** A part of the hub: registers its routes below /api, each with `config: { access }`. */
export type Part = (api: FastifyInstance, context: HubContext) => void;

/** In the order in which they are registered. */
const PARTS: readonly Part[] = [
  setup,
  login,
  invites,
  joining,
  pairing,
  club,
  logRoutes,
  analysisPart,
  failedAnalyses,
  uploadRoutes,
  students,
  sessions,
  comments,
  reviewing,
  calmReviews,
  painClosings,
  clips,
  plans,
  lessons,
  blocks,
  progress,
  studentData,
  sessionFiles,
  machineRoutes,
];

/** Of what is sent as JSON; recordings and films have limits of their own. */
const MAX_JSON_BYTES = 128 * 1024;

/** What is said here is for this reader, now: no cache keeps it, unless a route says otherwise. */
function keepOutOfCaches(api: FastifyInstance): void {
  api.addHook('onSend', async (_request, reply) => {
    if (!reply.hasHeader('cache-control')) reply.header('cache-control', 'no-store');
  });
}

/** Builds the hub; it does not listen. */
export async function buildHub(context: HubContext, arrival = ARRIVAL_LIMITS): Promise<Hub> {
  const secure = isSecure(context.settings);
  const app = Fastify({
    http: httpLimits(arrival),
    forceCloseConnections: true,
    bodyLimit: MAX_JSON_BYTES,
    trustProxy: secure ? 'loopback' : false,
  });
  const { publicUrl } = context.settings;
  refuseOtherNames(app, publicUrl, `This hub answers to ${publicUrl} only (start option --url).`);
  endStalledBodies(app, arrival);
  validateStrictly(app);
  await app.register(helmet, {
    contentSecurityPolicy,
    strictTransportSecurity: secure && { maxAge: 31_536_000, includeSubDomains: false },
    xFrameOptions: { action: 'deny' },
  });
  await app.register(cookie);
  await describeApi(app, secure);
  let routes: readonly GuardedRoute[] = [];
  await app.register(
    async (api) => {
      answerErrors(api, context.say);
      keepOutOfCaches(api);
      api.removeContentTypeParser('text/plain');
      tellUnchanged(api);
      await api.register(rateLimit, LIMITS);
      api.addHook('onRequest', (request) => refuseSitesBut(publicUrl, request));
      routes = guard(api, context);
      tellMachines(api, context);
      for (const part of PARTS) part(api, context);
    },
    { prefix: '/api' },
  );
  return { app, routes };
}
