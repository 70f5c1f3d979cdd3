import type { JudgedRepetition } from '../../coaching/judgement.ts';
import { FLAG_TEXT } from '../../coaching/flagText.ts';
import { type Plan, TARGET_MEASURES, type TargetMeasure } from '../../coaching/plan.ts';
import { type Mark, markOf } from '../practice/kind.ts';
import { Shape } from '../practice/shapes.tsx';
import { t } from '../strings/strings.ts';

const words = t.sessions;

const markOfRepetition = (r: JudgedRepetition): Mark =>
  markOf({ kind: r.kind, passed: r.kind === 'rehearsal' ? r.verdict.passed : null });

/** Every repetition as a shape, in order. */
export function Strip({ repetitions }: { readonly repetitions: readonly JudgedRepetition[] }) {
  return (
    <ol class="session-strip" aria-label={words.repetitions}>
      {repetitions.map((r) => (
        <li
          key={r.index}
          title={`${r.index}: ${t.ledger.entry[markOfRepetition(r)]}`}
          aria-label={`${r.index}: ${t.ledger.entry[markOfRepetition(r)]}`}
        >
          <Shape mark={markOfRepetition(r)} />
        </li>
      ))}
    </ol>
  );
}

const valueOf = (r: JudgedRepetition, measure: TargetMeasure): number | null => {
  if (measure === 'holdS') return r.kind === 'rehearsal' ? r.holdS : null;
  return r.measures[measure];
};

function Cell({ r, measure }: { readonly r: JudgedRepetition; readonly measure: TargetMeasure }) {
  const value = valueOf(r, measure);
  const check =
    r.kind === 'rehearsal' ? r.verdict.checks.find((c) => c.measure === measure) : undefined;
  const missed = check?.passed === false;
  return (
    <td class={missed ? 'missed' : undefined}>
      {value === null ? '–' : t.measures.value(measure, value)}
      {missed && <span title={words.missed}> ✗</span>}
    </td>
  );
}

const verdictOf = (r: JudgedRepetition): string =>
  [
    r.kind === 'rehearsal' ? r.verdict.cue.text : '',
    ...r.flags.filter((f) => f !== 'together').map((f) => FLAG_TEXT[f]),
  ]
    .filter((text) => text !== '')
    .join(' ');

/** Every repetition with each measure that the plan asks for. */
export function RepetitionTable(props: {
  readonly repetitions: readonly JudgedRepetition[];
  readonly plan: Plan;
}) {
  const measures = TARGET_MEASURES.filter((m) => props.plan.targets[m] !== null);
  return (
    <div class="table-scroll" tabIndex={0} role="region" aria-label={words.table}>
      <table>
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
          {props.repetitions.map((r) => (
            <tr key={r.index}>
              <th scope="row">{r.index}</th>
              <td>{t.ledger.entry[markOfRepetition(r)]}</td>
              <td>{words.at(r.topS)}</td>
              {measures.map((m) => (
                <Cell key={m} r={r} measure={m} />
              ))}
              <td class="verdict-cell">{verdictOf(r)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
