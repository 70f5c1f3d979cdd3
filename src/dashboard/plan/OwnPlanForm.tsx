import { useState } from 'preact/hooks';
import { DEFAULT_PLAN, type Plan } from '../../coaching/plan.ts';
import type { PlanView } from '../../streaming/planContract.ts';
import type { SpreadsView } from '../../streaming/sessionsContract.ts';
import { DraftNote } from '../drafts/DraftNote.tsx';
import { useDraft } from '../drafts/useDraft.ts';
import { ownDrafts } from '../drafts/useOwnDraft.ts';
import { t } from '../strings/strings.ts';
import { PlanEditor } from './PlanEditor.tsx';
import { draftOf, keptDraft, readDraft } from './draft.ts';

const words = t.planPage;

function Changes({ before, after }: { readonly before: Plan; readonly after: Plan | null }) {
  const changes = after === null ? [] : t.said.planChanges(before, after);
  return (
    <section class="what-changes" aria-live="polite">
      <h3>{words.what}</h3>
      {after === null && <p class="refusal">{words.invalid}</p>}
      {after !== null && changes.length === 0 && <p>{words.nothing}</p>}
      <ul>
        {changes.map((change) => (
          <li key={change}>{change}</li>
        ))}
      </ul>
    </section>
  );
}

function History(props: {
  readonly versions: PlanView['versions'];
  readonly take: (plan: Plan) => void;
}) {
  if (props.versions.length === 0) return null;
  return (
    <section class="plan-history">
      <h2>{words.history}</h2>
      <ol class="plain" reversed>
        {props.versions.map(({ number, madeMs, plan, changes }) => (
          <li key={number}>
            <h3>{words.version(number, madeMs)}</h3>
            <p>{changes.length === 0 ? words.same : changes.join(' ')}</p>
            <button type="button" class="quiet" onClick={() => props.take(plan)}>
              {words.takeUp(number)}
            </button>
          </li>
        ))}
      </ol>
    </section>
  );
}

/** Writes the next version of one's own plan; what was typed stays where it is refused. */
export function OwnPlanForm(props: {
  readonly view: PlanView;
  readonly last: SpreadsView;
  /** Why it was not saved, in a sentence; `null` where it was. */
  readonly onSave: (plan: Plan) => Promise<string | null>;
  /** Back to reading; `true` where it was saved. */
  readonly onLeave: (saved: boolean) => void;
}) {
  const { view, last, onSave, onLeave } = props;
  const kept = useDraft(ownDrafts(), 'own plan', draftOf(view.plan), keptDraft);
  const draft = kept.value;
  const [refusal, setRefusal] = useState<string | null>(null);
  const { plan, problems } = readDraft(draft);
  const unchanged = plan !== null && t.said.planChanges(view.plan, plan).length === 0;
  const take = (from: Plan): void => {
    kept.set(draftOf(from));
    setRefusal(null);
  };
  const save = async (event: Event): Promise<void> => {
    event.preventDefault();
    if (plan === null) return;
    const why = await onSave(plan);
    setRefusal(why);
    if (why !== null) return;
    kept.drop(draftOf(plan));
    onLeave(true);
  };
  return (
    <>
      <form class="plan-form" onSubmit={(event) => void save(event)}>
        <h2>{words.change}</h2>
        <DraftNote restoredMs={kept.restoredMs} discard={() => kept.drop()} />
        <PlanEditor draft={draft} set={kept.set} problems={problems} last={last} />
        <Changes before={view.plan} after={plan} />
        {refusal !== null && (
          <p class="refusal" role="alert">
            {refusal}
          </p>
        )}
        <div class="row">
          <button type="submit" class="primary" disabled={plan === null || unchanged}>
            {words.save}
          </button>
          <button type="button" onClick={() => onLeave(false)}>
            {words.leave}
          </button>
          <button type="button" onClick={() => take(view.plan)}>
            {words.asItIs}
          </button>
          <button type="button" onClick={() => take(t.said.plan(DEFAULT_PLAN))}>
            {words.standard}
          </button>
        </div>
        <p class="fine">{words.next}</p>
      </form>
      <History versions={view.versions} take={take} />
    </>
  );
}
