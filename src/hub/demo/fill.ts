import { availableParallelism } from 'node:os';
import { DRIFT_SESSIONS } from '../../coaching/drift.ts';
import type { HubContext } from '../context.ts';
import { sessionPaths } from '../sessionPaths.ts';
import { NOT_ANALYSED } from '../db/notAnalysed.ts';
import { type DemoSignIn, coachIdOf, demoId, makeDemoPeople } from './people.ts';
import { DEMO_SESSION_NAME, type DemoAnswer, type DemoOrder } from './simulate.ts';
import { DEMO_STORIES, type DemoSession, type DemoStory } from './stories.ts';
import { demoThreads } from './threads.ts';

const DAY_MS = 86_400_000;
/** One for each processor: nobody else uses a demo. */
const THREADS = Math.min(4, Math.max(2, availableParallelism()));

export interface DemoClub {
  readonly signIns: readonly DemoSignIn[];
  /** Fulfilled when every session is there, or `stop` was called. */
  readonly filled: Promise<void>;
  stop(): Promise<void>;
}

interface Planned {
  readonly story: DemoStory;
  readonly session: DemoSession;
  readonly startedMs: number;
  readonly planNumber: number;
  readonly order: DemoOrder;
}

/**
 * Fills the hub with the demo club. People, plans and lessons are there at once; sessions come one after the other, the
 * newest first, each simulated from its seed and analysed. What a former start has filled stays.
 * @param progress hears how many of how many sessions are there
 */
export async function fillDemoClub(
  context: HubContext,
  progress: (done: number, of: number) => void,
): Promise<DemoClub> {
  const signIns = await makeDemoPeople(context);
  const there = await context.db.selectFrom('session').select('id').execute();
  const known = new Set(there.map(({ id }) => id));
  const all = DEMO_STORIES.flatMap((story, i) => plannedOf(context, story, i));
  const missing = inOrder(all).filter(({ order }) => !known.has(order.sessionId));
  const byId = new Map(missing.map((planned) => [planned.order.sessionId, planned]));
  const threads = demoThreads(THREADS);
  let done = all.length - missing.length;
  const take = async (answer: DemoAnswer): Promise<void> => {
    const planned = byId.get(answer.sessionId);
    if (planned !== undefined) await enter(context, planned, answer);
    progress(++done, all.length);
  };
  const orders = missing.map(({ order }) => order);
  const filled = threads.run(orders, take).finally(() => threads.close());
  return { signIns, filled, stop: () => threads.close() };
}

/**
 * First what the list of students is told from: the newest sessions of each, one round after the other. Then the rest,
 * the newest first.
 */
function inOrder(all: readonly Planned[]): readonly Planned[] {
  const newestFirst = [...all].sort((a, b) => b.startedMs - a.startedMs);
  const met = new Map<DemoStory, number>();
  const ranked = newestFirst.map((planned) => {
    const rank = met.get(planned.story) ?? 0;
    met.set(planned.story, rank + 1);
    return { planned, round: Math.min(rank, DRIFT_SESSIONS) };
  });
  return ranked.sort((a, b) => a.round - b.round).map(({ planned }) => planned);
}

/** Every practice of one student, oldest first. @param student counts from 0: seeds follow from it */
export function plannedOf(
  { places, now }: HubContext,
  story: DemoStory,
  student: number,
): Planned[] {
  const studentId = demoId(story.login);
  // Practised in the evening, each at a slightly other time.
  const evening = new Date(now()).setUTCHours(17, 0, 0, 0);
  return story.sessions.map((session, i) => {
    const sessionId = `${studentId}-${i + 1}`;
    const startedMs = Math.round(evening - session.daysAgo * DAY_MS + ((i * 37) % 90) * 60_000);
    const valid = story.plans.findLastIndex(({ daysAgo }) => daysAgo >= session.daysAgo);
    const plan = story.plans[Math.max(0, valid)]!.plan;
    const { painBefore = null, painAfter = null, note = '', script, keptRotationDeg } = session;
    const order: DemoOrder = {
      sessionId,
      paths: sessionPaths(places, studentId, sessionId),
      golferSeed: 100 + student,
      seed: 1000 * (student + 1) + i,
      hand: story.hand,
      script,
      ...(keptRotationDeg !== undefined && { keptRotationDeg }),
      startedAt: new Date(startedMs).toISOString().slice(0, 19),
      plan,
      notes: { painBefore, painAfter, note },
    };
    return { story, session, startedMs, planNumber: Math.max(0, valid) + 1, order };
  });
}

async function enter({ db }: HubContext, planned: Planned, made: DemoAnswer): Promise<void> {
  const { story, session, startedMs, planNumber, order } = planned;
  const { answer, sha256, bytes } = made;
  const { sessionId: id, hand, plan, notes } = order;
  const reviewed = session.daysAgo > story.reviewedDaysAgo && story.reviewedDaysAgo > 0;
  const coachId = coachIdOf(story);
  await db.transaction().execute(async (t) => {
    await t
      .insertInto('session')
      .values({
        ...NOT_ANALYSED,
        name: DEMO_SESSION_NAME,
        simulated: 1,
        ...notes,
        id,
        hand,
        sha256,
        bytes,
        startedMs,
        planNumber,
        studentId: demoId(story.login),
        clientId: id,
        content: sha256 === '' ? null : sha256,
        receivedMs: startedMs + 30 * 60_000,
        plan: JSON.stringify(plan),
        reviewedMs: reviewed ? startedMs + DAY_MS : null,
        reviewedBy: reviewed ? coachId : null,
        ...(answer.ok ? answer.columns : { problem: answer.problem }),
      })
      .execute();
    const warnings = answer.ok ? answer.warnings : [];
    for (const [position, warning] of warnings.entries())
      await t
        .insertInto('warning')
        .values({ sessionId: id, position, ...warning })
        .execute();
    for (const [i, { by, text, repetition = null }] of (session.said ?? []).entries())
      await t
        .insertInto('comment')
        .values({
          id: `${id}-said-${i + 1}`,
          sessionId: id,
          authorId: by === 'coach' ? coachId : demoId(story.login),
          atMs: startedMs + (i + 3) * 3_600_000,
          text,
          repIndex: repetition,
          momentS: null,
          replyTo: i === 0 ? null : `${id}-said-1`,
        })
        .execute();
  });
}
