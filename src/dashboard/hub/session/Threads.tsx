import { useState } from 'preact/hooks';
import type { Comment } from '../../../streaming/hubContract/review.ts';
import { h } from '../../strings/hub.ts';
import { t } from '../../strings/strings.ts';
import { useAct } from '../parts/useAct.ts';
import { useIsBegun } from '../parts/useHubDraft.ts';
import { CommentBox } from './CommentBox.tsx';
import { type SessionDesk, pinned } from './desk.ts';
import type { Thread } from './threads.ts';

const words = h.session.comments;

function One({ c, desk }: { readonly c: Comment; readonly desk: SessionDesk }) {
  const { busy, problem, run } = useAct();
  return (
    <div class={`comment by-${c.byRole}`}>
      <p class="comment-by">
        <b>{words.by(c.by, words.role[c.byRole])}</b> <small>{words.at(c.atMs)}</small>
        {c.mine && (
          <button
            type="button"
            class="link"
            disabled={busy}
            aria-label={words.removeOf(c.text)}
            onClick={() => void run(() => desk.removeComment(c.id))}
          >
            {words.remove}
          </button>
        )}
      </p>
      <p class="comment-text" dir="auto">
        {c.text}
      </p>
      {problem !== null && <p role="alert">{problem}</p>}
    </div>
  );
}

/** What a thread hangs on; leads there. */
function PinLine({ root, desk }: { readonly root: Comment; readonly desk: SessionDesk }) {
  const { index, open } = pinned(root, desk);
  const label = root.onNote
    ? words.pinned.note
    : root.momentS !== null
      ? words.pinned.moment(t.sessions.at(root.momentS), index)
      : index === null
        ? words.pinned.session
        : words.pinned.repetition(index);
  if (index === null) return <p class="label">{label}</p>;
  return (
    <button type="button" class="pin link" onClick={open}>
      {label}
    </button>
  );
}

export function ThreadView({
  thread,
  desk,
}: {
  readonly thread: Thread;
  readonly desk: SessionDesk;
}) {
  const { root, replies } = thread;
  const begun = useIsBegun(`reply ${root.id}`);
  const [answering, setAnswering] = useState(
    begun || [root, ...replies].some(({ id }) => id === desk.answerTo),
  );
  return (
    <li class="thread">
      <PinLine root={root} desk={desk} />
      <One c={root} desk={desk} />
      {replies.map((c) => (
        <One key={c.id} c={c} desk={desk} />
      ))}
      {answering ? (
        <CommentBox
          about={`reply ${root.id}`}
          label={words.replyTo(root.by)}
          pins={[]}
          replyTo={root.id}
          blocks={desk.blocks}
          autofocus
          send={async (comment) => {
            await desk.comment(comment);
            setAnswering(false);
          }}
        />
      ) : (
        <button type="button" class="quiet" onClick={() => setAnswering(true)}>
          {words.reply}
          <span class="hidden">: {words.replyTo(root.by)}</span>
        </button>
      )}
    </li>
  );
}

export function ThreadList(props: {
  readonly threads: readonly Thread[];
  readonly desk: SessionDesk;
  readonly none: string;
}) {
  if (props.threads.length === 0) return <p class="empty">{props.none}</p>;
  return (
    <ul class="threads">
      {props.threads.map((thread) => (
        <ThreadView key={thread.root.id} thread={thread} desk={props.desk} />
      ))}
    </ul>
  );
}
