import type { Inbox } from '../../streaming/hubContract/machine.ts';
import type { PlanVersion } from '../../streaming/hubContract/students.ts';
import { t } from '../strings/strings.ts';

const words = t.coach.plan;

function Changes({ version }: { readonly version: PlanVersion }) {
  if (version.changes.length === 0) return <p>{words.first}</p>;
  return (
    <ul>
      {version.changes.map((change) => (
        <li key={change}>{change}</li>
      ))}
    </ul>
  );
}

/** The plan that counts, and what it changed. */
export function PlanPart({ inbox }: { readonly inbox: Inbox | null }) {
  const { plan = null, nextPlan = null } = inbox ?? {};
  return (
    <section aria-labelledby="coach-plan">
      <h2 id="coach-plan">{words.title}</h2>
      {plan === null ? (
        <p>{words.none}</p>
      ) : (
        <>
          <h3 dir="auto">{t.said.plan(plan.plan).name}</h3>
          <p>{words.from(plan.by, plan.validFromMs)}</p>
          {plan.plan.note !== '' && <blockquote dir="auto">{plan.plan.note}</blockquote>}
          <Changes version={plan} />
        </>
      )}
      {nextPlan !== null && (
        <>
          <p>{words.next(nextPlan.validFromMs)}</p>
          <Changes version={nextPlan} />
        </>
      )}
    </section>
  );
}
