import { useCallback } from 'preact/hooks';
import { type Plan, askedRatio } from '../../../coaching/plan.ts';
import type { PlanVersion, StudentView } from '../../../streaming/hubContract/students.ts';
import { useAnswer } from '../../review/useAnswer.ts';
import { h } from '../../strings/hub.ts';
import { isolatedWithin } from '../../strings/isolated.ts';
import { t } from '../../strings/strings.ts';
import { Asked } from '../parts/Asked.tsx';
import { useHub } from '../shell/hub.ts';
import { to } from '../shell/router.ts';

const words = h.student.plan;

/** A plan in one line. */
export function planLine(plan: Plan): string {
  const { rehearsals, balls } = askedRatio(plan);
  const { perSession, perWeek } = plan.volume;
  return [
    t.names.stages[plan.stage].name,
    words.asks(rehearsals, balls),
    words.volume(perSession, perWeek),
  ].join(' · ');
}

/** What a version changed, in words. */
export function Changes({ version }: { readonly version: PlanVersion }) {
  const { number, changes } = version;
  if (changes.length === 0) return <p class="fine">{number === 1 ? words.first : words.same}</p>;
  return (
    <ul class="changes">
      {changes.map((change) => (
        <li key={change}>{isolatedWithin(t.said.planChange(change))}</li>
      ))}
    </ul>
  );
}

function Version(props: { readonly version: PlanVersion; readonly studentId: string }) {
  const { version, studentId } = props;
  return (
    <li>
      <p>
        <b>{words.now(version.number, version.plan.name)}</b>,{' '}
        {words.from(version.validFromMs, version.by)}
      </p>
      <Changes version={version} />
      <a href={`${to('students', studentId, 'plan')}?from=${encodeURIComponent(version.id)}`}>
        {words.again}
        <span class="hidden">: {words.again_of(version.number)}</span>
      </a>
    </li>
  );
}

/** The plan of now, whether it has arrived, and all versions with what changed. */
export function PlansPart({ s }: { readonly s: StudentView }) {
  const { client } = useHub();
  const answer = useAnswer(
    useCallback(() => client.students.plans(s.id), [client, s.id, s.plan.id]),
  );
  const { plan, planReachedMs } = s;
  return (
    <section class="part" aria-label={words.title}>
      <h2>{words.title}</h2>
      <p>
        <b>{words.now(plan.number, plan.plan.name)}</b>, {words.from(plan.validFromMs, plan.by)};{' '}
        {planReachedMs === null ? words.notReached : words.reached(planReachedMs)}.
      </p>
      <p>{planLine(plan.plan)}</p>
      {plan.plan.note !== '' && <blockquote dir="auto">{plan.plan.note}</blockquote>}
      <details class="fold">
        <summary>{words.history}</summary>
        <Asked of={answer}>
          {(versions) => (
            <ol class="versions">
              {versions.map((version) => (
                <Version key={version.id} version={version} studentId={s.id} />
              ))}
            </ol>
          )}
        </Asked>
      </details>
    </section>
  );
}
