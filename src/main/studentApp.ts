import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import helmet from '@fastify/helmet';
import fastifyStatic from '@fastify/static';
import Fastify, { type FastifyInstance } from 'fastify';
import type { PracticeHost } from '../practice/host.ts';
import { registerCoachApi } from '../sending/api.ts';
import type { CoachService } from '../sending/coachLink.ts';
import { noCoach } from '../sending/noCoach.ts';
import type { DeskService } from '../streaming/desk.ts';
import { type PlanService, registerPlanApi } from '../streaming/planApi.ts';
import { registerSecondScreenApi } from '../streaming/secondScreen/api.ts';
import type { SecondScreen } from '../streaming/secondScreen/service.ts';
import { PAGE_POLICY } from '../streaming/pagePolicy.ts';
import { attachStreaming } from '../streaming/server.ts';
import { type KeptSessions, registerSessionsApi } from '../streaming/sessionsApi.ts';
import { refuseOtherNames } from '../streaming/ownNames.ts';
import { registerTodayApi } from '../streaming/todayApi.ts';
import { validateStrictly } from '../streaming/validation.ts';

/** Where `npm run build` puts the page. */
export const DASHBOARD_FOLDER = fileURLToPath(new URL('../../dist/dashboard/', import.meta.url));

export interface StudentAppOptions {
  readonly host: PracticeHost;
  readonly now: () => number;
  /** Behind the sensors page; without it the page says that there is none. */
  readonly desk?: DeskService;
  readonly dashboardFolder?: string;
  /** What has been kept; without it there is no /api. */
  readonly sessions?: KeptSessions;
  /** The connection with a coach; left out where nothing is kept. */
  readonly coach?: CoachService;
  /** The student's plan; without it there is no /api/plan. */
  readonly plans?: PlanService;
  /** The view for another screen; without it there is no /api/second-screen. */
  readonly secondScreen?: SecondScreen;
  /** Told how many pages are open, whenever that changes. */
  readonly onPages?: (open: number) => void;
}

const MISSING =
  'The page has not been built yet. Run "npm run build" in the project folder and start again.';

const contentSecurityPolicy = { useDefaults: false, directives: PAGE_POLICY };

/** Builds the student's service; it does not listen. */
export async function buildStudentApp(options: StudentAppOptions): Promise<FastifyInstance> {
  const app = Fastify({ forceCloseConnections: true });
  refuseOtherNames(app, null, 'This service answers to localhost on this computer only.');
  validateStrictly(app);
  await app.register(helmet, { contentSecurityPolicy, strictTransportSecurity: false });
  if (options.sessions) registerSessionsApi(app, options.sessions);
  if (options.plans) registerPlanApi(app, options.plans);
  registerTodayApi(app, options.sessions?.store ?? null, options.plans ?? null);
  if (options.secondScreen) registerSecondScreenApi(app, options.secondScreen);
  registerCoachApi(app, options.coach ?? noCoach);
  const folder = options.dashboardFolder ?? DASHBOARD_FOLDER;
  if (existsSync(`${folder}/index.html`)) {
    await app.register(fastifyStatic, {
      root: folder,
      maxAge: '1y',
      immutable: true,
      index: false,
    });
    app.get('/', (_request, reply) =>
      reply.sendFile('index.html', { maxAge: 0, immutable: false }),
    );
  } else {
    app.get('/', (_request, reply) => reply.code(503).type('text/plain').send(MISSING));
  }
  attachStreaming(app, options.host, options.now, options);
  return app;
}
