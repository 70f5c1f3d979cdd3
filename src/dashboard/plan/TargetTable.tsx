import { TARGET_MEASURES, type TargetMeasure } from '../../coaching/plan.ts';
import type { SpreadsView } from '../../streaming/sessionsContract.ts';
import { TableHead } from '../shell/TableHead.tsx';
import { t } from '../strings/strings.ts';
import { NumberField } from './NumberField.tsx';
import { type PlanEditorProps, problemAt } from './editing.ts';

const words = t.plan;

function lastText(measure: TargetMeasure, last: SpreadsView): string {
  const spread = last[measure];
  if (spread === undefined) return words.noLast;
  const { value } = t.measures;
  return words.last(
    value(measure, spread.median),
    value(measure, spread.low),
    value(measure, spread.high),
    spread.count,
  );
}

function Row({ measure, props }: { readonly measure: TargetMeasure; props: PlanEditorProps }) {
  const { draft, set, problems, last } = props;
  const target = draft.targets[measure];
  const path = `targets.${measure}`;
  const { name } = t.measures.info[measure];
  const end = (which: 'min' | 'max') => (
    <td>
      <NumberField
        bare
        label={words.end[which](name)}
        unit={t.measures.info[measure].unit}
        value={target[which]}
        set={(value) =>
          set({
            ...draft,
            targets: { ...draft.targets, [measure]: { ...target, [which]: value } },
          })
        }
        problem={
          problemAt(problems, `${path}.${which}`, words.end[which](name)) ??
          (which === 'min' ? problemAt(problems, path, name) : null)
        }
      />
    </td>
  );
  return (
    <tr>
      <th scope="row">{t.measures.label(measure)}</th>
      {end('min')}
      {end('max')}
      <td>{lastText(measure, last)}</td>
    </tr>
  );
}

/** The bands that are asked for, with what the student last reached beside each. */
export function TargetTable(props: PlanEditorProps) {
  return (
    <section class="plan-targets">
      <h2>{words.targets}</h2>
      <p class="fine">
        {words.targetsWhy} {t.planPage.basis(t.names.targetBasis)}
      </p>
      <div class="table-scroll" tabIndex={0} role="region" aria-label={words.targets}>
        <table>
          <TableHead columns={words.columns} />
          <tbody>
            {TARGET_MEASURES.map((measure) => (
              <Row key={measure} measure={measure} props={props} />
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}
