import type { JudgedRepetition } from '../../coaching/judgement.ts';
import type { Plan } from '../../coaching/plan.ts';
import type { SessionOverview } from '../../streaming/sessionsContract.ts';
import { t } from '../strings/strings.ts';
import { RepetitionTable } from './RepetitionTable.tsx';
import { Examples } from './head/Examples.tsx';
import { MeasureTable } from './head/MeasureTable.tsx';
import type { Example } from './head/examples.ts';
import { Multiples } from './multiples/Multiples.tsx';
import type { Answer } from './useAnswer.ts';
import type { Corrections } from './view.ts';

const words = t.review;

/** Fewer repetitions than this are looked at one by one. */
const FEW = 4;

export interface OverviewProps {
  readonly repetitions: readonly JudgedRepetition[];
  readonly shown: readonly JudgedRepetition[];
  readonly plan: Plan;
  readonly examples: readonly Example[];
  readonly overview: Answer<SessionOverview>;
  readonly corrected: Corrections;
  readonly openOne: (index: number) => void;
}

function SideBySide({ shown, examples, overview, corrected, openOne }: OverviewProps) {
  const { data, problem, again } = overview;
  return (
    <section>
      <h2>{words.multiples.title}</h2>
      {problem !== null && (
        <p role="alert">
          {words.multiples.failed} {problem}{' '}
          <button type="button" onClick={again}>
            {words.again}
          </button>
        </p>
      )}
      {data === null && problem === null && (
        <p class="empty" role="status">
          {words.multiples.loading(shown.length)}
        </p>
      )}
      {data !== null && (
        <Multiples
          repetitions={shown}
          entries={data.repetitions}
          typical={examples.find((e) => e.name === 'typical')?.index ?? null}
          openOne={openOne}
          corrected={corrected}
        />
      )}
    </section>
  );
}

/** The session as a whole: its measures, the examples, all repetitions on the same axes and as a table. */
export function Overview(props: OverviewProps) {
  const { repetitions, shown, plan, examples, corrected, openOne } = props;
  if (shown.length === 0) return <p class="empty">{words.filter.nothing}</p>;
  return (
    <>
      {repetitions.length < FEW && <p class="empty">{words.few(repetitions.length)}</p>}
      <Examples repetitions={repetitions} examples={examples} openOne={openOne} />
      <MeasureTable repetitions={repetitions} plan={plan} corrected={corrected} />
      <SideBySide {...props} />
      <section>
        <h2>{t.sessions.table}</h2>
        <RepetitionTable repetitions={shown} plan={plan} corrected={corrected} openOne={openOne} />
        <p class="fine">{t.sessions.basis}</p>
      </section>
    </>
  );
}
