import { t } from '../strings/strings.ts';
import { Bar } from './Bar.tsx';
import type { MeasureRow } from './rows.ts';

function Outcome({ passed }: Pick<MeasureRow, 'passed'>) {
  if (passed === null) return null;
  return (
    <>
      <b aria-hidden="true">{passed ? ' ✓' : ' ✕'}</b>
      <span class="hidden"> {passed ? t.measures.in : t.measures.out}</span>
    </>
  );
}

function Explained({ measure }: Pick<MeasureRow, 'measure'>) {
  const info = t.measures.info[measure];
  return (
    <details class="measure-explained">
      <summary aria-label={`${t.measures.explain}: ${info.name}`}>{t.measures.explain}</summary>
      <p>
        {info.what} {info.how}
      </p>
      <p>
        {t.measures.sure(info.accuracy.text)} ({info.accuracy.source})
      </p>
      <p>
        {t.measures.cannotSee} {info.cannotSee}
      </p>
    </details>
  );
}

function Row({ row, explained }: { row: MeasureRow; explained: boolean }) {
  const { measure, value, target, passed } = row;
  const { name, term, accuracy } = t.measures.info[measure];
  const state = passed === null ? 'open' : passed ? 'in' : 'out';
  return (
    <li class={`measure measure-${state}`} data-measure={measure} title={accuracy.text}>
      <span class="measure-name">
        <span>{name}</span> {term !== null && <small>{term}</small>}
      </span>
      <span class="measure-value">
        <strong>
          {value === null && passed === false
            ? t.measures.missedCatch
            : t.measures.value(measure, value, target ?? undefined)}
        </strong>
        {value !== null && <small> {t.measures.plusMinus(measure, accuracy.plusMinus)}</small>}
      </span>
      <Bar measure={measure} value={value} target={target} sure={accuracy.plusMinus} />
      <span class="measure-target">
        {target === null ? t.measures.noTarget : t.measures.target(measure, target)}
        <Outcome passed={passed} />
      </span>
      {explained && <Explained measure={measure} />}
    </li>
  );
}

/** Each measure as a bar, its target as a bracket, its accuracy as a whisker; on request with what it is and cannot see. */
export function MeasureList(props: {
  readonly rows: readonly MeasureRow[];
  readonly explained?: boolean;
}) {
  return (
    <ul class="measure-list">
      {props.rows.map((row) => (
        <Row key={row.measure} row={row} explained={props.explained ?? false} />
      ))}
    </ul>
  );
}
