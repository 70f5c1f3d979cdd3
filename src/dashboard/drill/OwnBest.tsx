import { useMemo } from 'preact/hooks';
import { Figures } from '../review/repetition/Figures.tsx';
import { flightIn } from '../review/repetition/flightIn.ts';
import { useAnswer } from '../review/useAnswer.ts';
import { t } from '../strings/strings.ts';
import { momentOf } from './inStep.ts';
import { type OwnBest, loadOwnBest } from './ownBest.ts';

const words = t.figure.drill;

function Found({ best, drillS }: { readonly best: OwnBest; readonly drillS: number }) {
  const { summary, rehearsal, curves } = best;
  const flight = useMemo(() => flightIn(rehearsal, curves), [rehearsal, curves]);
  const when = t.date.day(Date.parse(summary.startedAt));
  return (
    <section>
      <h3>
        {summary.simulated ? words.simulatedBest : words.best}{' '}
        <small>{words.which(when, rehearsal.index)}</small>
      </h3>
      <Figures
        poses={curves.poses}
        cursorS={momentOf(rehearsal, drillS)}
        leftHanded={summary.hand === 'left'}
        ghost={null}
        ghostIs={null}
        address={curves.address}
        flight={flight}
      />
      <p class="fine">
        {t.names.rules.best} {words.inStep}
      </p>
    </section>
  );
}

/** The best rehearsal of the newest session, at the moment that belongs to `drillS` of the drill. */
export function OwnBestFigures({ drillS }: { readonly drillS: number }) {
  const { data, problem } = useAnswer(loadOwnBest);
  if (problem !== null) return null;
  return data === null ? <p class="fine">{words.none}</p> : <Found best={data} drillS={drillS} />;
}
