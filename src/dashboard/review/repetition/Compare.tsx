import type { JudgedRepetition } from '../../../coaching/judgement.ts';
import { t } from '../../strings/strings.ts';
import type { Example } from '../head/examples.ts';
import { type Corrections, markOfRepetition } from '../view.ts';
import { type Difference, differencesOf } from './differences.ts';

const words = t.review.compare;

/** Chooses the other one: the examples first, then all in order. */
export function CompareChoice(props: {
  readonly repetitions: readonly JudgedRepetition[];
  readonly examples: readonly Example[];
  readonly here: number;
  readonly beside: number | null;
  readonly corrected: Corrections;
  readonly choose: (index: number | null) => void;
}) {
  const { repetitions, examples, here, beside, corrected, choose } = props;
  const named = new Map(examples.map((e) => [e.index, t.review.example[e.name]]));
  const others = repetitions.filter((r) => r.index !== here);
  const isNamed = (r: JudgedRepetition): boolean => named.has(r.index);
  const ordered = [...others.filter(isNamed), ...others.filter((r) => !isNamed(r))];
  return (
    <label class="compare-choice">
      {words.label}{' '}
      <select
        value={beside ?? ''}
        onChange={({ currentTarget: { value } }) => choose(value === '' ? null : Number(value))}
      >
        <option value="">{words.none}</option>
        {ordered.map((r) => (
          <option key={r.index} value={r.index}>
            {words.option(
              r.index,
              named.get(r.index)?.toLowerCase() ?? t.ledger.entry[markOfRepetition(r, corrected)],
            )}
          </option>
        ))}
      </select>
    </label>
  );
}

function reading({ difference, clear }: Difference): string {
  if (difference === null) return words.notBoth;
  return clear ? words.clear : words.within;
}

/** Two repetitions measure by measure, each difference with how sure it is. */
export function CompareTable(props: {
  readonly here: JudgedRepetition;
  readonly beside: JudgedRepetition;
}) {
  const { here, beside } = props;
  const title = words.title(here.index, beside.index);
  return (
    <section>
      <h2>{title}</h2>
      <div class="table-scroll" tabIndex={0} role="region" aria-label={title}>
        <table class="compare-table">
          <thead>
            <tr>
              <th scope="col">{words.columns.measure}</th>
              <th scope="col">{here.index}</th>
              <th scope="col">{beside.index}</th>
              <th scope="col">{words.columns.difference}</th>
              <th scope="col">{words.columns.read}</th>
            </tr>
          </thead>
          <tbody>
            {differencesOf(here, beside).map((d) => (
              <tr key={d.measure}>
                <th scope="row">{t.measures.info[d.measure].name}</th>
                <td>{d.here}</td>
                <td>{d.beside}</td>
                <td>
                  {d.difference ?? '–'}
                  {d.difference !== null && <small> {d.plusMinus}</small>}
                </td>
                <td>{d.clear ? <strong>{reading(d)}</strong> : reading(d)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p class="fine">{words.note}</p>
    </section>
  );
}
