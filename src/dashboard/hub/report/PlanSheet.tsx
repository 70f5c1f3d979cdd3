import { TARGET_MEASURES } from '../../../coaching/plan.ts';
import type { LastValues, PlanVersion } from '../../../streaming/hubContract/students.ts';
import { h } from '../../strings/hub.ts';
import { TableHead } from '../../shell/TableHead.tsx';
import { t } from '../../strings/strings.ts';
import { Changes, planLine } from '../student/PlansPart.tsx';

const words = h.report;

function Targets({ version, last }: { readonly version: PlanVersion; readonly last: LastValues }) {
  return (
    <table class="plan-table">
      <TableHead columns={words.planColumns} />
      <tbody>
        {TARGET_MEASURES.map((measure) => {
          const target = version.plan.targets[measure];
          const spread = last[measure];
          return target === null ? null : (
            <tr key={measure}>
              <th scope="row">{t.measures.label(measure)}</th>
              <td>{t.measures.target(measure, target)}</td>
              <td>
                {spread === undefined
                  ? words.notTaken
                  : words.last(t.measures.value(measure, spread.median, target), spread.count)}
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

/** What is asked, beside what was reached, and what was changed on the way. */
export function PlanSheet(props: {
  readonly version: PlanVersion;
  readonly last: LastValues;
  readonly versions: readonly PlanVersion[];
}) {
  const { version, last, versions } = props;
  const plan = t.said.plan(version.plan);
  const changed = versions.filter(({ changes }) => changes.length > 0);
  return (
    <section class="sheet-part">
      <h3>{words.plan}</h3>
      <p>
        <b>{h.student.plan.now(version.number, plan.name)}</b>,{' '}
        {h.student.plan.from(version.validFromMs, version.by)}. {planLine(plan)}.
      </p>
      <Targets version={version} last={last} />
      {plan.note !== '' && (
        <p class="pre" dir="auto">
          {plan.note}
        </p>
      )}
      {plan.checklist.length > 0 && (
        <>
          <h4>{words.checklist}</h4>
          <ul class="plain in-columns">
            {plan.checklist.map((item) => (
              <li key={item} dir="auto">
                {item}
              </li>
            ))}
          </ul>
        </>
      )}
      {changed.length > 0 && (
        <>
          <h4>{words.changes}</h4>
          {changed.map((one) => (
            <div key={one.id}>
              <p>
                {h.student.plan.now(one.number, one.plan.name)},{' '}
                {h.student.plan.from(one.validFromMs, one.by)}
              </p>
              <Changes version={one} />
            </div>
          ))}
        </>
      )}
    </section>
  );
}
