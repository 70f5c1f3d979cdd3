import type { CarryOver } from '../coaching/judgement.ts';
import { type CountedSession, weekCounts, whyNotCounted } from '../coaching/notCounted.ts';
import type { Plan } from '../coaching/plan.ts';
import type { SessionSummary as Kept } from '../sessions/store/rows.ts';
import type { Progress, ProgressEntry, SessionSummary } from './sessionsContract.ts';

const iso = (ms: number): string => new Date(ms).toISOString();

const whyNot = (kept: Kept): CountedSession['notCounted'] =>
  whyNotCounted({ ...kept, recording: kept.state === 'running' });

/** As it is counted. */
export const countedSession = (kept: Kept): CountedSession => ({
  startedMs: kept.startedMs,
  notCounted: whyNot(kept),
  repetitions: kept.rehearsals + kept.balls,
});

/** One session as the pages get it. */
export const summaryView = (kept: Kept): SessionSummary => ({
  id: kept.id,
  name: kept.name,
  startedAt: iso(kept.startedMs),
  durationS: kept.durationS,
  hand: kept.hand,
  simulated: kept.simulated,
  notCounted: whyNot(kept),
  state: kept.state === 'running' ? 'recording' : kept.state,
  deleted: kept.deleted,
  analysed: kept.analysed,
  problem: kept.problem,
  rehearsals: kept.rehearsals,
  balls: kept.balls,
  practiceSwings: kept.practiceSwings,
  scored: kept.scored,
  passed: kept.passed,
  warnings: kept.warningCount,
  ballsInMix: kept.ballsInMix,
  mixKept: kept.balls === 0 ? null : kept.ballsInMix === kept.balls,
  ledger: kept.ledger,
  note: kept.note,
  painBefore: kept.painBefore,
  painAfter: kept.painAfter,
});

/** Rehearsals and balls of the seven days that end with `session`, which is among `all`. */
export const weekRepetitions = (all: readonly Kept[], session: Kept): number =>
  weekCounts(all.map(countedSession), session.startedMs).repetitions;

/** What a coach sets; the own range is measured, not planned. */
export const planKey = (plan: Plan): string => JSON.stringify({ ...plan, ownRange: null });

/** The sessions that are counted, oldest first, from a list that is newest first. */
export function progressView(newestFirst: readonly Kept[]): Progress {
  const counted = newestFirst.filter((s) => whyNot(s) === null).reverse();
  return {
    notCounted: newestFirst.flatMap((s) => {
      const notCounted = whyNot(s);
      return notCounted === null ? [] : [{ startedMs: s.startedMs, notCounted }];
    }),
    sessions: counted.map((session, i) => entry(session, counted[i - 1])),
  };
}

const UNKNOWN: CarryOver = { addedFlexion: null, keptRotation: null };

function entry(session: Kept, before: Kept | undefined): ProgressEntry {
  const same = before !== undefined && planKey(before.plan) === planKey(session.plan);
  return {
    id: session.id,
    startedAt: iso(session.startedMs),
    simulated: session.simulated,
    rehearsals: session.spreads.rehearsals,
    balls: session.spreads.balls,
    scored: session.scored,
    passed: session.passed,
    warnings: session.warningCount,
    planChanged: before !== undefined && !same,
    plan: same ? null : session.plan,
    painBefore: session.painBefore,
    painAfter: session.painAfter,
    repetitions: session.rehearsals + session.balls,
    carryOver: session.spreads.carryOver ?? UNKNOWN,
  };
}
