import { useCallback, useMemo } from 'preact/hooks';
import type { HubSession } from '../../../streaming/hubContract/review.ts';
import type { CorrectedKind } from '../../../coaching/ledger.ts';
import type { ReviewSource } from '../../review/source.ts';
import { type Answer, useAnswer } from '../../review/useAnswer.ts';
import { type Corrections, correctionsIn } from '../../review/view.ts';
import { h } from '../../strings/hub.ts';
import type { HubClient } from '../client/client.ts';
import { commentCounts, threadsOf } from './threads.ts';

export function useSession(client: HubClient, id: string): Answer<HubSession> {
  return useAnswer(useCallback(() => client.sessions.session(id), [client, id]));
}

/** What the review takes: the session that is here already, and its curves from the hub. */
export function useSource(client: HubClient, session: HubSession): ReviewSource {
  const { id } = session.summary;
  return useMemo(
    () => ({ ...client.sessions.curves, session: () => Promise.resolve(session) }),
    // A later answer for the same session changes what stands around the review, not what was measured.
    [client, id],
  );
}

const KIND: Readonly<Record<'rehearsal' | 'ball' | 'ignore', CorrectedKind>> = {
  rehearsal: 'rehearsal',
  ball: 'ball',
  ignore: 'ignored',
};

/** Kinds set by hand: by the student while practising, over that by the coach. */
export const correctionsOf = ({
  relabels,
  analysis,
}: Pick<HubSession, 'relabels' | 'analysis'>): Corrections =>
  new Map([
    ...correctionsIn(analysis?.repetitions ?? []),
    ...relabels.map(({ index, kind }) => [index, KIND[kind]] as const),
  ]);

/** What hangs on each repetition, in words. */
export function notedOf(session: HubSession): ReadonlyMap<number, string> {
  const counts = commentCounts(threadsOf(session.comments), session.analysis?.repetitions ?? []);
  return new Map([...counts].map(([index, n]) => [index, h.session.comments.count(n)]));
}
