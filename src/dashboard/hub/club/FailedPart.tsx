import { useCallback } from 'preact/hooks';
import type { FailedAnalysis } from '../../../streaming/hubContract/people.ts';
import { h } from '../../strings/hub.ts';
import { t } from '../../strings/strings.ts';
import { Asked } from '../parts/Asked.tsx';
import { useAct } from '../parts/useAct.ts';
import { useLive } from '../parts/useLive.ts';
import { useHub } from '../shell/hub.ts';

const words = h.club.failed;

function Line({ failed, again }: { readonly failed: FailedAnalysis; readonly again: () => void }) {
  const { client } = useHub();
  const { busy, problem, run } = useAct();
  const line = words.line(failed.coach, failed.receivedMs);
  const start = (): void =>
    void run(async () => {
      await client.people.analyseAgain(failed.id);
      again();
    });
  return (
    <li>
      <span>
        <b>{line}</b> {words.why(failed.tries, t.said.refusal(failed.problem))}
        {problem !== null && <span role="alert"> {problem}</span>}
      </span>
      <button
        type="button"
        class="quiet"
        disabled={busy}
        aria-label={words.againOf(line)}
        onClick={start}
      >
        {words.again}
      </button>
    </li>
  );
}

/** What the hub could not analyse, and the way to try it again. */
export function FailedPart() {
  const { client } = useHub();
  const answer = useLive(useCallback(() => client.people.failedAnalyses(), [client]));
  return (
    <section class="part">
      <h2>{words.title}</h2>
      <Asked of={answer}>
        {(failed) =>
          failed.length === 0 ? (
            <p class="empty">{words.none}</p>
          ) : (
            <ul class="lines">
              {failed.map((one) => (
                <Line key={one.id} failed={one} again={answer.again} />
              ))}
            </ul>
          )
        }
      </Asked>
    </section>
  );
}
