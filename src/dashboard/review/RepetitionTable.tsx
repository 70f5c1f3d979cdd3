import type { JudgedRepetition } from '../../coaching/judgement.ts';
import {
  type Plan,
  TARGET_MEASURES,
  type Target,
  type TargetMeasure,
} from '../../coaching/plan.ts';
import { t } from '../strings/strings.ts';
import { measureValue } from '../../coaching/measureValue.ts';
import { type Corrections, markOfRepetition } from './view.ts';

const words = t.sessions;

function Cell(props: {
  readonly r: JudgedRepetition;
  readonly measure: TargetMeasure;
  readonly target: Target | null;
}) {
  const { r, measure, target } = props;
  const value = measureValue(r, measure);
  const check =
    r.kind === 'rehearsal' ? r.verdict.checks.find((c) => c.measure === measure) : undefined;
  const missed = check?.passed === false;
  const none = missed ? t.measures.missedCatch : '–';
  const beside = check?.target ?? target ?? undefined;
  return (
    <td class={missed ? 'missed' : undefined}>
      {value === null ? none : t.measures.value(measure, value, beside)}
      {missed && <span title={words.missed}> ✗</span>}
    </td>
  );
}

const verdictOf = (r: JudgedRepetition): string =>
  [
    r.kind === 'rehearsal' ? t.said.cue(r.verdict.cue) : '',
    r.flags
      .filter((f) => f !== 'together')
      .map((f) => t.names.flags[f])
      .join('; '),
  ]
    .filter((text) => text !== '')
    .join(' – ');

/** Every repetition with each measure that the plan asks for; its number opens it. */
export function RepetitionTable(props: {
  readonly repetitions: readonly JudgedRepetition[];
  readonly plan: Plan;
  readonly corrected: Corrections;
  readonly openOne: (index: number) => void;
}) {
  const { repetitions, plan, corrected, openOne } = props;
  const measures = TARGET_MEASURES.filter((m) => plan.targets[m] !== null);
  return (
    <div class="table-scroll" tabIndex={0} role="region" aria-label={words.table}>
      <table class="repetition-table">
        <thead>
          <tr>
            <th scope="col">{words.columns.number}</th>
            <th scope="col">{words.columns.kind}</th>
            <th scope="col">{words.columns.at}</th>
            {measures.map((m) => (
              <th key={m} scope="col">
                {t.measures.info[m].name}
              </th>
            ))}
            <th scope="col">{words.columns.verdict}</th>
          </tr>
        </thead>
        <tbody>
          {repetitions.map((r) => (
            <tr key={r.index}>
              <th scope="row">
                <button
                  type="button"
                  class="as-link"
                  aria-label={t.review.repetition.title(r.index)}
                  onClick={() => openOne(r.index)}
                >
                  {r.index}
                </button>
              </th>
              <td>{t.ledger.entry[markOfRepetition(r, corrected)]}</td>
              <td>{words.at(r.topS)}</td>
              {measures.map((m) => (
                <Cell key={m} r={r} measure={m} target={plan.targets[m]} />
              ))}
              <td class="verdict-cell">{verdictOf(r)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
