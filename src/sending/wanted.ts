import type { SessionSummary } from '../sessions/store/rows.ts';
import type { CoachLink, Consent, SendingRow } from '../streaming/hubContract/coachLink.ts';
import type { LinkState } from './linkFile.ts';

/** Sessions that the page tells of; a choice. */
const MOST_ROWS = 200;

/** It has come to its end and been looked at. */
const isWhole = ({ state, analysed, problem }: SessionSummary): boolean =>
  (state === 'complete' || state === 'interrupted') && (analysed || problem !== null);

const isAgreed = (consent: Consent | null, { startedMs }: SessionSummary): boolean =>
  consent?.send === true && (consent.older || startedMs >= consent.atMs);

/** Sessions that are still to be sent, newest first: the coach looks at those first. */
export const wanted = (
  { consent, sessions, connection }: LinkState,
  kept: readonly SessionSummary[],
): readonly SessionSummary[] =>
  connection === null
    ? []
    : kept.filter((s) => isWhole(s) && isAgreed(consent, s) && sessions[s.id] === undefined);

/** What is being sent now. */
export interface Sending {
  readonly id: string;
  /** 0-1 */
  readonly share: number;
}

export function rows(
  state: LinkState,
  kept: readonly SessionSummary[],
  sending: Sending | null,
): readonly SendingRow[] {
  const waiting = new Set(wanted(state, kept).map(({ id }) => id));
  return kept
    .filter(isWhole)
    .slice(0, MOST_ROWS)
    .map(({ id, startedMs, simulated }) => {
      const mark = state.sessions[id];
      const now = sending?.id === id ? sending : null;
      const unsent = now !== null ? 'sending' : waiting.has(id) ? 'waiting' : 'kept';
      return {
        id,
        startedMs,
        simulated,
        state: mark?.state ?? unsent,
        why: mark?.why ?? null,
        share: now?.share ?? null,
      };
    });
}

/** Comments of the coach that have not been looked at. */
export const unread = ({ inbox, seen }: Pick<LinkState, 'inbox' | 'seen'>): readonly string[] =>
  (inbox?.threads ?? [])
    .flatMap(({ comments }) => comments)
    .filter(({ mine, id }) => !mine && !seen.includes(id))
    .map(({ id }) => id);

/** Without the token: the page has no use for it. */
export const connectionView = ({ connection }: LinkState): CoachLink['connection'] => {
  if (connection === null) return null;
  const { hubUrl, student, coach, club, machine, sinceMs } = connection;
  return { hubUrl, student, coach, club, machine, sinceMs };
};
