import { useState } from 'preact/hooks';
import type { TargetMeasure } from '../../coaching/plan.ts';
import { t } from '../strings/strings.ts';
import type { Step } from './course.ts';

const words = t.progress;

function cell(step: Step, measure: TargetMeasure, kind: 'rehearsals' | 'balls'): string {
  const spread = step[kind][measure];
  return spread === undefined
    ? '–'
    : `${t.measures.value(measure, spread.median, step.plan.targets[measure] ?? undefined)} (${spread.count})`;
}

function Table(props: {
  readonly steps: readonly Step[];
  readonly measures: readonly TargetMeasure[];
}) {
  const { steps, measures } = props;
  const kinds = ['rehearsals', 'balls'] as const;
  return (
    <div class="table-scroll" tabIndex={0} role="region" aria-label={words.table}>
      <table>
        <thead>
          <tr>
            <th scope="col">{words.columns.date}</th>
            {measures.flatMap((m) =>
              kinds.map((kind) => (
                <th key={`${m} ${kind}`} scope="col">
                  {t.measures.info[m].name}, {words.series[kind]} (n)
                </th>
              )),
            )}
          </tr>
        </thead>
        <tbody>
          {[...steps].reverse().map((step) => (
            <tr key={step.id}>
              <th scope="row">{words.date(step.atMs)}</th>
              {measures.flatMap((m) =>
                kinds.map((kind) => <td key={`${m} ${kind}`}>{cell(step, m, kind)}</td>),
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

/** The same numbers as a table, made when it is asked for. */
export function ProgressTable(props: {
  readonly steps: readonly Step[];
  readonly measures: readonly TargetMeasure[];
}) {
  const [open, setOpen] = useState(false);
  return (
    <details class="progress-table" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{words.table}</summary>
      {open && <Table {...props} />}
    </details>
  );
}
