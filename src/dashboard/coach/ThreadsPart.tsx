import type { CoachLink } from '../../streaming/hubContract/coachLink.ts';
import type { InboxThread } from '../../streaming/hubContract/machine.ts';
import type { Comment } from '../../streaming/hubContract/review.ts';
import { DraftNote } from '../drafts/DraftNote.tsx';
import { useOwnDraft } from '../drafts/useOwnDraft.ts';
import { t } from '../strings/strings.ts';
import { type Coach, post } from './api.ts';
import { Own } from '../shell/Own.tsx';

const words = t.coach.threads;

interface Props extends Pick<Coach, 'act'> {
  readonly link: CoachLink;
}

interface Said extends Pick<Comment, 'text' | 'index' | 'atMs'> {
  /** A hub from before that does not say. */
  readonly onNote?: boolean;
  readonly id: string;
  readonly who: string;
  readonly waiting: boolean;
}

/** What has come and what is still on its way, oldest first. */
function saidIn({ clientId, comments }: InboxThread, link: CoachLink): readonly Said[] {
  const there = new Set(comments.map(({ id }) => id));
  const come = comments.map((c) => ({ ...c, who: c.mine ? words.me : c.by, waiting: false }));
  const going = link.outbox
    .filter((c) => c.clientId === clientId && !there.has(c.id))
    .map((c) => ({ ...c, who: words.me, waiting: true }));
  return [...come, ...going];
}

function Thread({ thread, link, act }: Props & { readonly thread: InboxThread }) {
  const { clientId, startedMs, reviewedMs, comments } = thread;
  const last = comments.filter(({ mine }) => !mine).at(-1);
  const draft = useOwnDraft(`answer ${clientId}`);
  const submit = (event: SubmitEvent): void => {
    event.preventDefault();
    const text = draft.value.trim();
    if (text === '') return;
    const reply = { clientId, text, index: last?.index ?? null, replyTo: last?.id ?? null };
    void act(() => post('comments', reply)).then((done) => done && draft.drop());
  };
  return (
    <article class="thread">
      <h3>
        <a href={`#/sessions/${clientId}`}>{words.session(startedMs)}</a>
      </h3>
      {reviewedMs !== null && <p class="fine">{words.reviewed(reviewedMs)}</p>}
      <ul>
        {saidIn(thread, link).map(({ id, who, text, index, onNote, atMs, waiting }) => (
          <li key={id}>
            <p class="fine">
              <strong>
                <Own>{who}</Own>
              </strong>
              , {t.coach.date(atMs)}
              {index !== null && `, ${words.repetition(index)}`}
              {onNote === true && `, ${words.onNote}`}
              {waiting && `, ${words.waiting}`}
            </p>
            <p class="said" dir="auto">
              {text}
            </p>
          </li>
        ))}
      </ul>
      <form onSubmit={submit}>
        <label class="field">
          {words.answer}
          <textarea
            dir="auto"
            name="text"
            rows={2}
            maxLength={4000}
            required
            value={draft.value}
            onInput={({ currentTarget: { value } }) => draft.set(value)}
          />
        </label>
        <DraftNote restoredMs={draft.restoredMs} discard={() => draft.drop()} />
        <button type="submit">{words.send}</button>
      </form>
    </article>
  );
}

/** What coach and student wrote, by session. */
export function ThreadsPart({ link, act }: Props) {
  const threads = link.inbox?.threads ?? [];
  return (
    <section aria-labelledby="threads">
      <h2 id="threads">{words.title}</h2>
      {threads.length === 0 && <p>{words.none}</p>}
      {threads.map((thread) => (
        <Thread key={thread.clientId} thread={thread} link={link} act={act} />
      ))}
    </section>
  );
}
