import { useCallback } from 'preact/hooks';
import type { Machine } from '../../../streaming/hubContract/people.ts';
import { useAnswer } from '../../review/useAnswer.ts';
import { h } from '../../strings/hub.ts';
import { Asked } from '../parts/Asked.tsx';
import { useAct } from '../parts/useAct.ts';
import { useHub } from '../shell/hub.ts';
import { Own } from '../../shell/Own.tsx';

const words = h.student.machines;

function Line({ m, again }: { readonly m: Machine; readonly again: () => void }) {
  const { client } = useHub();
  const { busy, problem, run } = useAct();
  const revoke = (): void =>
    void run(async () => {
      await client.people.revoke(m.id);
      again();
    });
  return (
    <li>
      <span>
        <b>
          <Own>{m.name}</Own>
        </b>{' '}
        {words.paired(m.pairedMs)} ·{' '}
        {m.revokedMs === null ? words.seen(m.lastSeenMs) : words.revoked(m.revokedMs)}
        {problem !== null && <span role="alert"> {problem}</span>}
      </span>
      {m.revokedMs === null && (
        <button
          type="button"
          class="quiet"
          disabled={busy}
          aria-label={words.revokeOf(m.name)}
          onClick={revoke}
        >
          {words.revoke}
        </button>
      )}
    </li>
  );
}

/** The computers that may send for one student. */
export function MachinesPart({ studentId }: { readonly studentId: string }) {
  const { client } = useHub();
  const answer = useAnswer(
    useCallback(() => client.people.machines(studentId), [client, studentId]),
  );
  return (
    <section class="part" aria-label={words.title}>
      <h2>{words.title}</h2>
      <Asked of={answer}>
        {(machines) =>
          machines.length === 0 ? (
            <p class="empty">{words.none}</p>
          ) : (
            <ul class="lines">
              {machines.map((m) => (
                <Line key={m.id} m={m} again={answer.again} />
              ))}
            </ul>
          )
        }
      </Asked>
    </section>
  );
}
