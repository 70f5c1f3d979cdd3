import { useState } from 'preact/hooks';
import { h } from '../../strings/hub.ts';
import { useIsBegun } from '../parts/useHubDraft.ts';
import { CommentBox } from './CommentBox.tsx';
import { ThreadList } from './Threads.tsx';
import type { SessionDesk } from './desk.ts';
import { threadsOf } from './threads.ts';
import { Own } from '../../shell/Own.tsx';

const words = h.session.comments;

/** The student's note of the session, with what was answered to it. */
function Note({ desk }: { readonly desk: SessionDesk }) {
  const { session, isCoach } = desk;
  const { note } = session.notes;
  const begun = useIsBegun(`note ${session.summary.id}`);
  const [answering, setAnswering] = useState(isCoach && (begun || desk.answerTo === 'note'));
  if (note === '') return null;
  return (
    <div class="thread">
      <p class="label">{words.note(session.student)}</p>
      <div class="comment by-student">
        <p class="comment-text">
          <Own>{note}</Own>
        </p>
      </div>
      {answering ? (
        <CommentBox
          about={`note ${session.summary.id}`}
          label={words.replyTo(session.student)}
          pins={[]}
          onNote
          blocks={desk.blocks}
          autofocus
          send={async (comment) => {
            await desk.comment(comment);
            setAnswering(false);
          }}
        />
      ) : (
        isCoach && (
          <button type="button" class="quiet" onClick={() => setAnswering(true)}>
            {words.reply}
            <span class="hidden">: {words.note(session.student)}</span>
          </button>
        )
      )}
    </div>
  );
}

/** All that is written about the session, and a field for more. */
export function AllComments({ desk }: { readonly desk: SessionDesk }) {
  const { id } = desk.session.summary;
  return (
    <section class="comments talk">
      <h2>{words.title}</h2>
      <div class="talk-threads" tabIndex={0}>
        <Note desk={desk} />
        <ThreadList threads={threadsOf(desk.session.comments)} desk={desk} none={words.none} />
      </div>
      <CommentBox
        about={`session ${id}`}
        label={words.write}
        pins={[{ name: 'session', label: words.pins.session, index: null, momentS: null }]}
        blocks={desk.blocks}
        send={desk.comment}
      />
    </section>
  );
}
