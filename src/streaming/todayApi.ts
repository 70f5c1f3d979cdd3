import type { FastifyInstance } from 'fastify';
import { lastPractice, practiceCounts, standingOf } from '../coaching/notCounted.ts';
import { DEFAULT_PLAN, type Plan } from '../coaching/plan.ts';
import { proposal } from '../coaching/proposal.ts';
import { sinceLast } from '../coaching/sinceLast.ts';
import { type PracticeSummary, summarise } from '../coaching/summary.ts';
import { readAnalysis } from '../sessions/derivatives.ts';
import type { SessionSummary } from '../sessions/store/rows.ts';
import type { SessionStore } from '../sessions/store/store.ts';
import { answerErrors, refuseOtherSites } from './apiErrors.ts';
import { type PlanService, askedPlan } from './planApi.ts';
import { withSession } from './reviewing.ts';
import { countedSession } from './sessionsViews.ts';
import type { TodayView } from './todayContract.ts';

/** What is said on the first page, from all kept sessions. @param focus of the newest counted session */
export function todayView(
  newestFirst: readonly SessionSummary[],
  plan: Plan,
  focus: PracticeSummary | null,
): TodayView {
  const all = newestFirst.map((kept) => ({ ...countedSession(kept), kept }));
  const counted = all.filter(({ notCounted }) => notCounted === null).map(({ kept }) => kept);
  const last = lastPractice(all);
  const records = counted.map((s) => ({
    ...s,
    rehearsals: s.spreads.rehearsals,
    warnings: s.warningCount,
  }));
  const fault = focus?.next.code === 'one-thing' ? (focus.mostFrequentCue?.cue.code ?? null) : null;
  return {
    last: last && {
      startedMs: last.startedMs,
      notCounted: last.notCounted,
      problem: last.kept.problem,
      repetitions: last.repetitions,
      note: last.kept.note,
    },
    onlySimulated: standingOf(practiceCounts(all)) === 'simulated',
    since: sinceLast([...records].reverse()),
    focus,
    // What the newest practice was like has to be known first.
    proposal: last?.notCounted === null ? proposal(plan, records, fault) : null,
  };
}

/** As the student got it at the end. */
async function focusOf(
  store: SessionStore,
  newest: SessionSummary | undefined,
): Promise<PracticeSummary | null> {
  if (newest === undefined) return null;
  const kept = await withSession(store.folderOf(newest.id), ({ files }) => readAnalysis(files));
  return kept && summarise(kept.repetitions, kept.ledger, newest.plan, kept.warnings);
}

/** Serves what the first page says of the practice before, under /api/today: nothing where nothing is kept. */
export function registerTodayApi(
  app: FastifyInstance,
  store: SessionStore | null,
  plans: PlanService | null,
): void {
  void app.register(
    (api, _options, done) => {
      answerErrors(api);
      api.addHook('onRequest', refuseOtherSites);
      api.get('/', async (): Promise<TodayView> => {
        const plan = (plans && askedPlan(plans)) ?? DEFAULT_PLAN;
        if (store === null) return todayView([], plan, null);
        const sessions = await store.list();
        const newest = sessions.find((s) => countedSession(s).notCounted === null);
        const focus = await focusOf(store, newest).catch(() => null);
        return todayView(sessions, plan, focus);
      });
      done();
    },
    { prefix: '/api/today' },
  );
}
