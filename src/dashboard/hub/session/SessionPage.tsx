import { useCallback, useMemo, useRef, useState } from 'preact/hooks';
import { SAFETY_TEXTS } from '../../../coaching/safetyTexts.ts';
import { recognise } from '../../../sensors/sentence.ts';
import type { HubSession } from '../../../streaming/hubContract/review.ts';
import type { Spoken } from '../../review/head/SessionHead.tsx';
import { KnownSessionReview } from '../../review/SessionReview.tsx';
import { useAnswer } from '../../review/useAnswer.ts';
import { useHashView } from '../../review/useHashView.ts';
import { h } from '../../strings/hub.ts';
import { Asked } from '../parts/Asked.tsx';
import { HubPage } from '../parts/HubPage.tsx';
import { News } from '../parts/News.tsx';
import { useNews } from '../parts/useLive.ts';
import { useHub } from '../shell/hub.ts';
import { useKeys } from '../shell/keys.ts';
import { to } from '../shell/router.ts';
import { BelowRepetition, TalkOfRepetition, filmOf } from './BesideRepetition.tsx';
import { ReviewBar } from './ReviewBar.tsx';
import { AllComments } from './AllComments.tsx';
import { SessionEnd, UnderHead } from './UnderHead.tsx';
import type { SessionDesk } from './desk.ts';
import { focusComment } from './focus.ts';
import { correctionsOf, newsOf, notedOf, useReviewed, useSession } from './useSession.ts';

/** The coach's own ready texts; a student has none. */
function useBlocks(isCoach: boolean) {
  const { client } = useHub();
  const { data } = useAnswer(
    useCallback(
      () => (isCoach ? client.sessions.blocks() : Promise.resolve([])),
      [client, isCoach],
    ),
  );
  return data ?? [];
}

function useDesk(session: HubSession, again: () => void): SessionDesk {
  const { client, me } = useHub();
  const [view, setView] = useHashView();
  const isCoach = me.role !== 'student';
  const blocks = useBlocks(isCoach);
  const wanted = useRef<number | null>(null);
  const [answerTo] = useState(answerInAddress);
  const video = useRef<HTMLVideoElement>(null);
  const [clipId, chooseClip] = useState<string | null>(null);
  const { id } = session.summary;
  const acts = useMemo(() => {
    const then = async (what: Promise<unknown>): Promise<void> => {
      await what;
      again();
    };
    return {
      comment: (comment: Parameters<SessionDesk['comment']>[0]) =>
        then(client.sessions.comment(id, comment)),
      removeComment: (commentId: string) => then(client.sessions.dropComment(commentId)),
      relabel: (...asked: Parameters<SessionDesk['relabel']>) =>
        then(client.sessions.relabel(id, ...asked)),
    };
  }, [client, id, again]);
  const film = { video, clipId, chooseClip };
  return {
    session,
    isCoach,
    blocks,
    view,
    setView,
    answerTo,
    wanted,
    client,
    again,
    ...film,
    ...acts,
  };
}

/** The one warning with a value in it. */
const PAIN_RATED = { 'pain-now': SAFETY_TEXTS['pain-now'].text };

const answerInAddress = (): string | null =>
  new URLSearchParams(location.hash.split('?')[1] ?? '').get('answer');

/** To the coach, of the student. */
const spokenOf = ({ student: name, notes }: HubSession): Spoken => ({
  step: h.session.step(name),
  warning: ({ id, text }) =>
    h.session.warned[id](name, recognise(PAIN_RATED, text)?.values['pain'] ?? notes.painAfter),
});

/** A student writes too. */
function StudentKeys() {
  useKeys({ c: focusComment });
  return null;
}

function Found({ session, again }: { readonly session: HubSession; readonly again: () => void }) {
  const desk = useDesk(session, again);
  const { detail, source } = useReviewed(desk.client, session);
  const news = useNews(session, newsOf);
  return (
    <>
      {desk.isCoach ? <ReviewBar desk={desk} /> : <StudentKeys />}
      <News text={session.analysing && session.analysis !== null ? h.news.analysing : news} />
      <KnownSessionReview
        detail={detail}
        source={source}
        id={session.summary.id}
        view={desk.view}
        setView={desk.setView}
        corrected={correctionsOf(session)}
        noted={notedOf(session)}
        {...(desk.isCoach && { spoken: spokenOf(session) })}
        under={() => <UnderHead desk={desk} />}
        side={() => <AllComments desk={desk} />}
        film={(open) => filmOf({ open, desk })}
        talk={(open) => <TalkOfRepetition open={open} desk={desk} />}
        below={(open) => <BelowRepetition open={open} desk={desk} />}
        end={() => <SessionEnd desk={desk} />}
      />
    </>
  );
}

/** One session: what was measured, what was said, and whether somebody looked. */
export function SessionPage({ id }: { readonly id: string }) {
  const { client, me } = useHub();
  const answer = useSession(client, id);
  const { data } = answer;
  const title =
    data === null
      ? h.session.opening
      : h.session.title(data.student, Date.parse(data.summary.startedAt));
  return (
    <HubPage
      title={title}
      bare
      wide
      {...(me.role === 'student' && { above: <a href={to('home')}>{h.shell.nav.home.student}</a> })}
    >
      <Asked of={answer}>{(session) => <Found session={session} again={answer.again} />}</Asked>
    </HubPage>
  );
}
