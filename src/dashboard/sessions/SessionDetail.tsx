import { EXPORTS, type SessionDetail as Detail } from '../../streaming/sessionsContract.ts';
import { t } from '../strings/strings.ts';
import { RepetitionTable, Strip } from './RepetitionTable.tsx';
import { sessionPath } from './api.ts';
import { useLoad } from './useLoad.ts';

const words = t.sessions;

function Exports({ id }: { readonly id: string }) {
  return (
    <section>
      <h2>{words.exports}</h2>
      <ul class="exports">
        {EXPORTS.map((format) => (
          <li key={format}>
            <a href={`/api/${sessionPath(id)}/export/${format}`} download>
              {words.formats[format]}
            </a>
          </li>
        ))}
      </ul>
    </section>
  );
}

function Found({ detail }: { readonly detail: Detail }) {
  const { summary, analysis, plan, notes } = detail;
  return (
    <>
      <h1>{words.date(summary.startedAt)}</h1>
      <p class="lead">
        {words.passed(summary.passed, summary.scored)} ·{' '}
        {words.balls(summary.ballsInMix, summary.balls)} · {words.length(summary.durationS)} ·{' '}
        {words.hand[summary.hand]}
        {summary.simulated && ` · ${words.simulated}`}
      </p>
      {analysis?.warnings.map((w) => (
        <p key={`${w.id} ${w.atS}`} class="warned">
          {words.at(w.atS)} {w.text}
        </p>
      ))}
      {analysis === null ? (
        <p class="empty">{summary.problem ?? words.notAnalysed}</p>
      ) : (
        <>
          <Strip repetitions={analysis.repetitions} />
          <h2>{words.table}</h2>
          <RepetitionTable repetitions={analysis.repetitions} plan={plan} />
          <p class="fine">{words.basis}</p>
        </>
      )}
      {(notes.painBefore ?? notes.painAfter) !== null && (
        <p>{words.pain(notes.painBefore, notes.painAfter)}</p>
      )}
      {notes.note !== '' && (
        <p>
          {words.note}: {notes.note}
        </p>
      )}
      <Exports id={summary.id} />
    </>
  );
}

/** One kept session. */
export function SessionDetail({ id }: { readonly id: string }) {
  const { data, problem } = useLoad<Detail>(sessionPath(id));
  return (
    <>
      <p>
        <a href="#/sessions">{words.back}</a>
      </p>
      {problem !== null && <p role="alert">{problem}</p>}
      {data === null && problem === null && <p>{words.loading}</p>}
      {data !== null && <Found detail={data} />}
    </>
  );
}
