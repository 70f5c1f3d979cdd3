import type { Plan } from '../../../coaching/plan.ts';
import { DraftNote } from '../../drafts/DraftNote.tsx';
import type { DraftState } from '../../drafts/useDraft.ts';
import { PlanEditor } from '../../plan/PlanEditor.tsx';
import { draftOf, readDraft } from '../../plan/draft.ts';
import { h } from '../../strings/hub.ts';
import { isolated } from '../../strings/isolated.ts';
import { t } from '../../strings/strings.ts';
import { Field } from '../parts/Field.tsx';
import { dayInput, dayStart } from '../parts/days.ts';
import type { Act } from '../parts/useAct.ts';
import { goTo, to } from '../shell/router.ts';
import { ClashView } from './ClashView.tsx';
import { KeepTemplate } from './KeepTemplate.tsx';
import type { PlanDesk } from './desk.ts';
import { startsOf } from './starts.ts';
import { useSavePlan } from './useSavePlan.ts';
import { type Written, basePlan, planFrom, useWritten } from './useWritten.ts';

const words = h.planChange;

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
            {isolated(label)}
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

interface WritingProps {
  readonly desk: PlanDesk;
  readonly kept: DraftState<Written>;
  readonly saving: Pick<Act, 'busy' | 'problem'>;
  readonly send: (plan: Plan) => void;
}

function Writing({ desk, kept, saving, send }: WritingProps) {
  const { student, last } = desk;
  const { draft, day } = kept.value;
  const { plan, problems } = readDraft(draft);
  const change = (next: Partial<Written>): void => kept.set({ ...kept.value, ...next });
  const unchanged = plan !== null && t.said.planChanges(student.plan.plan, plan).length === 0;
  return (
    <form
      class="plan-form"
      onSubmit={(event) => {
        event.preventDefault();
        if (plan !== null) send(plan);
      }}
    >
      <DraftNote restoredMs={kept.restoredMs} discard={() => kept.drop()} />
      <StartChoice
        desk={desk}
        from={kept.value.from}
        set={(from) => change({ from, draft: draftOf(planFrom(desk, from)) })}
      />
      <PlanEditor
        draft={draft}
        set={(next) => change({ draft: next })}
        problems={problems}
        last={last}
      />
      <Field
        label={words.from}
        why={words.fromWhy}
        type="date"
        value={day}
        set={(next) => change({ day: next })}
      />
      <WhatChanges before={student.plan.plan} after={plan} />
      {saving.problem !== null && (
        <p class="refusal" role="alert">
          {saving.problem}
        </p>
      )}
      <p class="row">
        <button
          type="submit"
          class="primary"
          disabled={saving.busy || plan === null || unchanged || dayStart(day) === null}
        >
          {words.save}
        </button>
        <span class="fine">{words.reaches}</span>
      </p>
      <KeepTemplate plan={plan} />
    </form>
  );
}

/** Writes the next version of a student's plan and shows what it changes before it is saved. */
export function PlanForm({ desk }: { readonly desk: PlanDesk }) {
  const { student } = desk;
  const kept = useWritten(desk);
  const leave = (): void => {
    kept.drop();
    goTo(to('students', student.id));
  };
  const { clash, back, save, ...saving } = useSavePlan(student.id, leave);
  const { day, basedOn } = kept.value;
  const validFromMs = validFrom(day, Date.now());
  if (clash !== null)
    return (
      <ClashView
        {...clash}
        {...saving}
        base={basePlan(desk, basedOn)}
        back={back}
        discard={leave}
        save={(plan) =>
          validFromMs !== null &&
          save({ plan, validFromMs, basedOn: clash.newest.number }, clash.mine)
        }
      />
    );
  return (
    <Writing
      desk={desk}
      kept={kept}
      saving={saving}
      send={(plan) => validFromMs !== null && save({ plan, validFromMs, basedOn })}
    />
  );
}
