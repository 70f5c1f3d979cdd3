import { useState } from 'preact/hooks';
import { h } from '../../strings/hub.ts';
import { nextToReview } from '../needs/order.ts';
import { useAct } from '../parts/useAct.ts';
import { useKeys } from '../shell/keys.ts';
import { goTo, to } from '../shell/router.ts';
import type { SessionDesk } from './desk.ts';
import { focusComment, focusRelabel } from './focus.ts';
import { Own } from '../../shell/Own.tsx';

const words = h.session;

/** Whether somebody looked at it, and on to the next. */
export function ReviewBar({ desk }: { readonly desk: SessionDesk }) {
  const { session, client, again } = desk;
  const { studentId, student, reviewedMs } = session;
  const { id } = session.summary;
  const [told, setTold] = useState<string | null>(null);
  const { busy, problem, run } = useAct();
  const mark = (): void =>
    void run(async () => {
      await client.sessions.setReviewed(id, reviewedMs === null);
      again();
    });
  const next = (): void =>
    void run(async () => {
      const { students } = await client.students.students();
      const nextId = nextToReview(students, id);
      if (nextId === null) setTold(words.nothingNext);
      else goTo(to('sessions', nextId));
    });
  useKeys({
    r: mark,
    n: next,
    c: focusComment,
    l: focusRelabel,
    g: () => goTo(to('home')),
  });
  return (
    <div class="review-bar" role="group" aria-label={words.bar}>
      <a href={to('students', studentId)}>
        <Own>{student}</Own>
      </a>
      <span class={reviewedMs === null ? 'seen-no' : 'seen-yes'}>
        <b aria-hidden="true">{reviewedMs === null ? '○' : '✓'}</b>{' '}
        {reviewedMs === null ? words.notReviewed : words.reviewed(reviewedMs)}
      </span>
      <button
        type="button"
        class={reviewedMs === null ? 'attention' : 'quiet'}
        disabled={busy}
        onClick={mark}
      >
        {reviewedMs === null ? words.mark : words.unmark} <kbd>R</kbd>
      </button>
      <button type="button" disabled={busy} onClick={next}>
        {words.next} <kbd>N</kbd>
      </button>
      <span role="status">{problem ?? told}</span>
    </div>
  );
}
