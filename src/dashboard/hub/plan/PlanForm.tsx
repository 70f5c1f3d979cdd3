import { useState } from 'preact/hooks';
import type { Plan } from '../../../coaching/plan.ts';
import { PlanEditor } from '../../plan/PlanEditor.tsx';
import { draftOf, readDraft } from '../../plan/draft.ts';
import { h } from '../../strings/hub.ts';
import { t } from '../../strings/strings.ts';
import { Field } from '../parts/Field.tsx';
import { dayInput, dayStart } from '../parts/days.ts';
import { useAct } from '../parts/useAct.ts';
import { useHub } from '../shell/hub.ts';
import { goTo, to } from '../shell/router.ts';
import { KeepTemplate } from './KeepTemplate.tsx';
import type { PlanDesk } from './desk.ts';
import { startsOf } from './starts.ts';

const words = h.planChange;

/** The version or template that the address asks to start from. */
function askedStart(desk: PlanDesk): string {
  const asked = new URLSearchParams(location.hash.split('?')[1] ?? '').get('from');
  return startsOf(desk).find(({ id }) => id === asked)?.id ?? desk.student.plan.id;
}

function StartChoice(props: {
  readonly desk: PlanDesk;
  readonly from: string;
  readonly set: (id: string) => void;
}) {
  return (
    <label>
      {words.start}{' '}
      <select value={props.from} onChange={(event) => props.set(event.currentTarget.value)}>
        {startsOf(props.desk).map(({ id, label }) => (
          <option key={id} value={id}>
            {label}
          </option>
        ))}
      </select>
    </label>
  );
}

function WhatChanges({ before, after }: { readonly before: Plan; readonly after: Plan | null }) {
  const changes = after === null ? [] : t.said.planChanges(before, after);
  return (
    <section class="what-changes" aria-live="polite">
      <h2>{words.what}</h2>
      {after === null ? (
        <p class="refusal">{words.invalid}</p>
      ) : changes.length === 0 ? (
        <p class="empty">{words.nothing}</p>
      ) : (
        <ul class="plain">
          {changes.map((change) => (
            <li key={change}>{change}</li>
          ))}
        </ul>
      )}
    </section>
  );
}

/** Midnight of today means at once. */
function validFrom(day: string, nowMs: number): number | null {
  const start = dayStart(day);
  return start === null ? null : day === dayInput(nowMs) ? nowMs : start;
}

/** Writes the next version of a student's plan and shows what it changes before it is saved. */
export function PlanForm({ desk }: { readonly desk: PlanDesk }) {
  const { client } = useHub();
  const { student, last } = desk;
  const starts = startsOf(desk);
  const [from, setFrom] = useState(() => askedStart(desk));
  const planOf = (id: string): Plan =>
    starts.find((start) => start.id === id)?.plan ?? student.plan.plan;
  const [draft, setDraft] = useState(() => draftOf(planOf(from)));
  const [day, setDay] = useState(dayInput(Date.now()));
  const { busy, problem, run } = useAct();
  const { plan, problems } = readDraft(draft);
  const start = (id: string): void => {
    setFrom(id);
    setDraft(draftOf(planOf(id)));
  };
  const send = (event: Event): void => {
    event.preventDefault();
    const validFromMs = validFrom(day, Date.now());
    if (plan === null || validFromMs === null) return;
    void run(() => client.students.changePlan(student.id, { plan, validFromMs })).then(
      (done) => done && goTo(to('students', student.id)),
    );
  };
  const unchanged = plan !== null && t.said.planChanges(student.plan.plan, plan).length === 0;
  return (
    <form class="plan-form" onSubmit={send}>
      <StartChoice desk={desk} from={from} set={start} />
      <PlanEditor draft={draft} set={setDraft} problems={problems} last={last} />
      <Field label={words.from} why={words.fromWhy} type="date" value={day} set={setDay} />
      <WhatChanges before={student.plan.plan} after={plan} />
      {problem !== null && (
        <p class="refusal" role="alert">
          {problem}
        </p>
      )}
      <p class="row">
        <button
          type="submit"
          class="primary"
          disabled={busy || plan === null || unchanged || dayStart(day) === null}
        >
          {words.save}
        </button>
        <span class="fine">{words.reaches}</span>
      </p>
      <KeepTemplate plan={plan} />
    </form>
  );
}
