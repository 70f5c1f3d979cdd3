import { progressOf } from '../../coaching/notCounted.ts';
import type { SessionSummary } from '../../streaming/sessionsContract.ts';
import { t } from '../strings/strings.ts';

/** Why there are no results, in words; `null` where there are. */
function missingText(s: SessionSummary, why: boolean): string | null {
  const progress = progressOf({ ...s, recording: s.state === 'recording' });
  if (progress === 'analysed') return null;
  const state = t.counts.session[progress];
  return why && s.problem !== null ? `${state}: ${t.said.refusal(s.problem)}` : state;
}

/**
 * Results of one session, or how far they are; then what else is to be known before they are compared.
 * @param why with the reason where it could not be analysed
 */
export function sessionFacts(s: SessionSummary, why = true): readonly string[] {
  const missing = missingText(s, why);
  const { simulated, notCounted } = t.sessions;
  return [
    ...(missing === null
      ? [t.sessions.passed(s.passed, s.scored), t.sessions.balls(s.ballsInMix, s.balls)]
      : [missing]),
    ...(s.simulated ? [s.notCounted === 'simulated' ? notCounted : simulated] : []),
    ...(s.state === 'interrupted' ? [t.sessions.interrupted] : []),
  ];
}
