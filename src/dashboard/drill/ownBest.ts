import type { JudgedRehearsal } from '../../coaching/judgement.ts';
import { bestRehearsal } from '../../coaching/representative.ts';
import type {
  RepetitionCurves,
  SessionList,
  SessionSummary,
} from '../../streaming/sessionsContract.ts';
import { ask, ownSessions } from '../sessions/api.ts';

/** The best rehearsal of the newest session that has one. */
export interface OwnBest {
  readonly summary: SessionSummary;
  readonly rehearsal: JudgedRehearsal;
  readonly curves: RepetitionCurves;
}

/** The student's own newest session with a scored rehearsal; a simulated one only where there is no other. */
export function sessionToShow(sessions: readonly SessionSummary[]): SessionSummary | null {
  const scored = sessions.filter((s) => s.scored > 0 && !s.deleted);
  return scored.find((s) => !s.simulated) ?? scored[0] ?? null;
}

/** @returns `null` where nothing was scored yet */
export async function loadOwnBest(): Promise<OwnBest | null> {
  const { sessions } = await ask<SessionList>('sessions');
  const chosen = sessionToShow(sessions);
  if (chosen === null) return null;
  const { analysis, summary } = await ownSessions.session(chosen.id);
  const scored = (analysis?.repetitions ?? []).filter(
    (r): r is JudgedRehearsal => r.kind === 'rehearsal' && r.verdict.passed !== null,
  );
  const rehearsal = bestRehearsal(scored);
  if (rehearsal === null) return null;
  return { summary, rehearsal, curves: await ownSessions.curves(chosen.id, rehearsal.index) };
}
