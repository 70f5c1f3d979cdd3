import { useEffect } from 'preact/hooks';
import type { OpenRepetition } from '../../review/SessionReview.tsx';
import { alignOf } from '../../review/repetition/events.ts';
import { h } from '../../strings/hub.ts';
import { CommentBox, type Pin } from './CommentBox.tsx';
import { Film } from './Film.tsx';
import { FilmsBeside } from './Films.tsx';
import { Relabel } from './Relabel.tsx';
import { ThreadList } from './Threads.tsx';
import { type SessionDesk, shownClip } from './desk.ts';
import { pinOf, threadsOf } from './threads.ts';

const words = h.session.comments;

/** What a comment on an open repetition can hang on. */
const pinsOf = ({ repetition: r, cursorS }: OpenRepetition): readonly Pin[] => [
  { name: 'repetition', label: words.pins.repetition(r.index), index: r.index, momentS: null },
  {
    name: 'moment',
    label: words.pins.moment(cursorS - alignOf(r)),
    index: null,
    momentS: cursorS,
  },
  { name: 'session', label: words.pins.session, index: null, momentS: null },
];

interface Props {
  readonly open: OpenRepetition;
  readonly desk: SessionDesk;
}

/** The film of an open repetition; `null` without one. */
export function filmOf({ open, desk }: Props) {
  const clip = shownClip(desk);
  return clip === undefined ? null : (
    <Film key={clip.id} clip={clip} r={open.repetition} desk={desk} cursor={open} />
  );
}

/** What is written about the repetition that is open, in reach beside its curves. */
export function TalkOfRepetition({ open, desk }: Props) {
  const { repetition: r, detail } = open;
  const repetitions = detail.analysis?.repetitions ?? [];
  const threads = threadsOf(desk.session.comments).filter(
    ({ root }) => pinOf(root, repetitions) === r.index,
  );
  useEffect(() => {
    if (desk.wanted.current !== null) open.setCursorS(desk.wanted.current);
    desk.wanted.current = null;
  }, [desk.wanted.current]);
  return (
    <section class="comments talk">
      <h2>{words.here}</h2>
      <div class="talk-threads" tabIndex={threads.length > 0 ? 0 : undefined}>
        <ThreadList threads={threads} desk={desk} none={words.noneHere} />
      </div>
      <CommentBox
        about={`repetition ${detail.summary.id} ${r.index}`}
        label={words.write}
        pins={pinsOf(open)}
        blocks={desk.blocks}
        send={desk.comment}
      />
    </section>
  );
}

/** What is set of the repetition that is open: what it was, and its films. */
export function BelowRepetition({ open, desk }: Props) {
  const { repetition: r } = open;
  return (
    <div class="beside">
      {desk.isCoach && <Relabel r={r} desk={desk} />}
      <FilmsBeside r={r} desk={desk} cursor={open} />
    </div>
  );
}
