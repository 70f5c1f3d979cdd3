import type { FastifyInstance } from 'fastify';
import type { PracticeCounts } from '../coaching/notCounted.ts';
import { DEFAULT_PLAN, type Plan } from '../coaching/plan.ts';
import { planChanges } from '../coaching/planChanges.ts';
import { validatePlan } from '../coaching/validatePlan.ts';
import { Refused, answerErrors, refuseOtherSites } from './apiErrors.ts';
import type { OwnPlan, PlanView } from './planContract.ts';

export interface PlanService {
  /** What a coach asks; `null`: no coach has set a plan. */
  coach(): Plan | null;
  /** What the student wrote, oldest first. */
  own(): readonly OwnPlan[];
  /** @throws Error with a sentence where it cannot be kept. */
  write(plan: Plan): void;
  /** Practice of the last seven days. */
  week(): Promise<PracticeCounts>;
}

/** The plan of the next practice: a coach's before one's own, `null` where neither is there. */
export const askedPlan = (service: Pick<PlanService, 'coach' | 'own'>): Plan | null =>
  service.coach() ?? service.own().at(-1)?.plan ?? null;

function authorOf(service: PlanService): PlanView['author'] {
  if (service.coach() !== null) return 'coach';
  return service.own().length > 0 ? 'student' : 'default';
}

async function viewOf(service: PlanService): Promise<PlanView> {
  const own = service.own();
  return {
    plan: askedPlan(service) ?? DEFAULT_PLAN,
    author: authorOf(service),
    versions: own
      .map((v, i) => ({ ...v, changes: planChanges(own[i - 1]?.plan ?? DEFAULT_PLAN, v.plan) }))
      .reverse(),
    week: await service.week(),
  };
}

function change(service: PlanService, body: unknown): Promise<PlanView> {
  if (service.coach() !== null)
    throw new Refused(409, 'coach-plan', 'Your coach set this plan. You cannot change it here.');
  const { plan, problems } = validatePlan(body ?? null);
  if (plan === undefined)
    throw new Refused(400, 'bad-field', problems.map((p) => p.message).join(' '));
  const before = askedPlan(service) ?? DEFAULT_PLAN;
  if (planChanges(before, plan).length === 0)
    throw new Refused(409, 'unchanged', 'No changes to save.');
  keep(service, plan);
  return viewOf(service);
}

function keep(service: PlanService, plan: Plan): void {
  try {
    service.write(plan);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    throw new Refused(503, 'write-failed', `The plan could not be saved: ${why}`);
  }
}

/** Serves the plan under /api/plan. */
export function registerPlanApi(app: FastifyInstance, service: PlanService): void {
  void app.register(
    (api, _options, done) => {
      answerErrors(api);
      api.addHook('onRequest', refuseOtherSites);
      api.get('/', () => viewOf(service));
      api.put('/', { bodyLimit: 100_000 }, ({ body }) => change(service, body));
      done();
    },
    { prefix: '/api/plan' },
  );
}
