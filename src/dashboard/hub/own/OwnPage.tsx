import { useCallback } from 'preact/hooks';
import type { PlanVersion } from '../../../streaming/hubContract/students.ts';
import { useLive } from '../parts/useLive.ts';
import { h } from '../../strings/hub.ts';
import { t } from '../../strings/strings.ts';
import { Asked } from '../parts/Asked.tsx';
import { HubPage } from '../parts/HubPage.tsx';
import { useHub } from '../shell/hub.ts';
import { MachinesPart } from '../student/MachinesPart.tsx';
import { MonthsPart } from '../student/MonthsPart.tsx';
import { Changes, planLine } from '../student/PlansPart.tsx';
import { SessionsPart } from '../student/SessionsPart.tsx';

const words = h.club.own;

/** The version that is valid now; newest first. */
export const validPlan = (
  versions: readonly PlanVersion[],
  nowMs: number,
): PlanVersion | undefined => versions.find(({ validFromMs }) => validFromMs <= nowMs);

function Plan({ version }: { readonly version: PlanVersion | undefined }) {
  if (version === undefined) return <p class="empty">{words.noPlan}</p>;
  const plan = t.said.plan(version.plan);
  return (
    <>
      <p>
        <b>{h.student.plan.now(version.number, plan.name)}</b>,{' '}
        {h.student.plan.from(version.validFromMs, version.by)}
      </p>
      <p>{planLine(plan)}</p>
      {plan.note !== '' && <blockquote dir="auto">{plan.note}</blockquote>}
      {version.changes.length > 0 && (
        <>
          <h3>{words.changed}</h3>
          <Changes version={version} />
        </>
      )}
      {plan.checklist.length > 0 && (
        <>
          <h3>{words.checklist}</h3>
          <ul class="plain">
            {plan.checklist.map((item) => (
              <li key={item} dir="auto">
                {item}
              </li>
            ))}
          </ul>
        </>
      )}
    </>
  );
}

/** A student's own start page: plan, sessions with what the coach wrote, months, computers. */
export function OwnPage() {
  const { client, me } = useHub();
  const plans = useLive(useCallback(() => client.students.plans(me.id), [client, me.id]));
  return (
    <HubPage title={words.title}>
      <section class="part" aria-label={words.plan}>
        <h2>{words.plan}</h2>
        <Asked of={plans}>{(versions) => <Plan version={validPlan(versions, Date.now())} />}</Asked>
      </section>
      <SessionsPart studentId={me.id} />
      <MonthsPart studentId={me.id} />
      <MachinesPart studentId={me.id} />
      <section class="part" aria-label={words.data}>
        <h2>{words.data}</h2>
        <p>{words.dataWhy}</p>
        <p>
          <a href={client.students.exportAddress(me.id)} download>
            {h.student.data.export}
          </a>
        </p>
      </section>
    </HubPage>
  );
}
