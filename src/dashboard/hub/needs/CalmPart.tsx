import { useState } from 'preact/hooks';
import type { CalmReview, StudentRow } from '../../../streaming/hubContract/students.ts';
import { h } from '../../strings/hub.ts';
import { useAct } from '../parts/useAct.ts';
import { useHub } from '../shell/hub.ts';

const words = h.needs.calm;

/** The last one, so that it can be taken back after a look at something else. */
let latest: CalmReview | null = null;

/** Marks sessions that need no look as reviewed, all at once, and takes that back. */
export function CalmPart(props: {
  readonly students: readonly StudentRow[];
  readonly changed: () => void;
}) {
  const { client } = useHub();
  const [done, setDone] = useState(latest);
  const { busy, problem, run } = useAct();
  const calm = props.students.reduce((sum, s) => sum + s.calm, 0);
  const keep = (review: CalmReview | null): void => {
    latest = review;
    setDone(review);
    props.changed();
  };
  const mark = (): void => void run(async () => keep(await client.students.reviewCalm()));
  const undo = (id: string): void =>
    void run(async () => {
      await client.students.undoCalm(id);
      keep(null);
    });
  return (
    <>
      {calm > 0 && (
        <button type="button" disabled={busy} title={words.why} onClick={mark}>
          {words.mark(calm)}
        </button>
      )}
      <span class="calm-done" role="status">
        {problem ?? (done === null ? '' : words.done(done.sessions))}
      </span>
      {done !== null && (
        <button type="button" class="link" disabled={busy} onClick={() => undo(done.id)}>
          {words.undo}
        </button>
      )}
    </>
  );
}
