import { useCallback, useMemo, useRef } from 'preact/hooks';
import { CORRECTED, type HubSession } from '../../../streaming/hubContract/review.ts';
import type { ReviewSource } from '../../review/source.ts';
import type { Answer } from '../../review/useAnswer.ts';
import { type Corrections, correctionsIn } from '../../review/view.ts';
import { h } from '../../strings/hub.ts';
import { EVERY_MS, useLive } from '../parts/useLive.ts';
import type { HubClient } from '../client/client.ts';
import { commentCounts, threadsOf } from './threads.ts';

/** While numbers are on their way they are looked for more often, ms. */
const SOON_MS = 1500;

export function useSession(client: HubClient, id: string): Answer<HubSession> {
  return useLive(
    useCallback(() => client.sessions.session(id), [client, id]),
    (data) => (data?.analysing === true ? SOON_MS : EVERY_MS),
  );
}

/** The session with the very same analysis as long as nothing in that is different: what is drawn of it stays. */
function useSameAnalysis(session: HubSession): HubSession {
  const last = useRef(session);
  return useMemo(() => {
    const { analysis } = last.current;
    const same = JSON.stringify(analysis) === JSON.stringify(session.analysis);
    last.current = same ? { ...session, analysis } : session;
    return last.current;
  }, [session]);
}

/** What the review takes: the session that is here already, and its curves from the hub, anew for another analysis. */
export function useReviewed(
  client: HubClient,
  latest: HubSession,
): { readonly detail: HubSession; readonly source: ReviewSource } {
  const detail = useSameAnalysis(latest);
  const source = useMemo(
    () => ({ ...client.sessions.curves }),
    [client, detail.summary.id, detail.analysis],
  );
  return { detail, source };
}

/** What others did on the page while it was open, in words. */
export function newsOf(before: HubSession, now: HubSession): string {
  const there = new Set(before.comments.map(({ id }) => id));
  const written = now.comments.filter(({ id, mine }) => !mine && !there.has(id));
  return [
    ...written.map(({ by }) => h.news.commentBy(by)),
    ...(now.clips.length > before.clips.length ? [h.news.film] : []),
    ...(before.analysing && !now.analysing ? [h.news.measured] : []),
  ].join(' ');
}

/** Kinds set by hand: by the student while practising, over that by the coach. */
export const correctionsOf = ({
  relabels,
  analysis,
}: Pick<HubSession, 'relabels' | 'analysis'>): Corrections =>
  new Map([
    ...correctionsIn(analysis?.repetitions ?? []),
    ...relabels.map(({ index, kind }) => [index, CORRECTED[kind]] as const),
  ]);

/** What hangs on each repetition, in words. */
export function notedOf(session: HubSession): ReadonlyMap<number, string> {
  const counts = commentCounts(threadsOf(session.comments), session.analysis?.repetitions ?? []);
  return new Map([...counts].map(([index, n]) => [index, h.session.comments.count(n)]));
}
