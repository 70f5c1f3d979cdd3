import { useEffect } from 'preact/hooks';
import type { OpenRepetition } from '../../review/SessionReview.tsx';
import { alignOf } from '../../review/repetition/events.ts';
import { h } from '../../strings/hub.ts';
import { CommentBox, type Pin } from './CommentBox.tsx';
import { FilmsBeside } from './Films.tsx';
import { Relabel } from './Relabel.tsx';
import { ThreadList } from './Threads.tsx';
import type { SessionDesk } from './desk.ts';
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

/** Comments, another label and films of the repetition that is open. */
export function BesideRepetition(props: {
  readonly open: OpenRepetition;
  readonly desk: SessionDesk;
}) {
  const { open, desk } = props;
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
    <div class="beside">
      <section class="comments">
        <h2>{words.here}</h2>
        <ThreadList threads={threads} desk={desk} none={words.noneHere} />
        <CommentBox
          about={`repetition ${detail.summary.id} ${r.index}`}
          label={words.write}
          pins={pinsOf(open)}
          blocks={desk.blocks}
          send={desk.comment}
        />
        {desk.isCoach && <Relabel r={r} desk={desk} />}
      </section>
      <FilmsBeside r={r} desk={desk} cursor={open} />
    </div>
  );
}
