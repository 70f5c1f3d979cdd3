import { useEffect, useState } from 'preact/hooks';
import { DEFAULT_PLAN, type Plan } from '../../coaching/plan.ts';
import type { PlanView } from '../../streaming/planContract.ts';
import type { Progress } from '../../streaming/sessionsContract.ts';
import { DrillOnDemand } from '../drill/Drill.tsx';
import { useSection } from '../feed/hooks.ts';
import { ask } from '../sessions/api.ts';
import { useLoad } from '../sessions/useLoad.ts';
import { Caution } from '../shell/Caution.tsx';
import { t } from '../strings/strings.ts';
import { OwnPlanForm } from './OwnPlanForm.tsx';
import { PlanSheet } from './PlanSheet.tsx';

const words = t.planPage;

/** The plan as this page says it: the standard plan's sentences are the page's own. */
function told(view: PlanView): PlanView {
  const plans = view.versions.map(({ plan }) => t.said.plan(plan));
  const before = [...plans.slice(1), t.said.plan(DEFAULT_PLAN)];
  return {
    ...view,
    plan: t.said.plan(view.plan),
    versions: view.versions.map((version, i) => {
      const [plan, former] = [plans[i] ?? version.plan, before[i] ?? version.plan];
      return { ...version, plan, changes: t.said.planChanges(former, plan) };
    }),
  };
}

const put = (plan: Plan): Promise<PlanView> =>
  ask<PlanView>('plan', {
    method: 'PUT',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(plan),
  });

interface WrittenProps {
  readonly view: PlanView;
  readonly set: (view: PlanView) => void;
}

function Editing({
  view,
  set,
  leave,
}: WrittenProps & { readonly leave: (saved: boolean) => void }) {
  const progress = useLoad<Progress>('progress');
  const save = (plan: Plan): Promise<string | null> =>
    put(plan).then(
      (next) => {
        set(told(next));
        return null;
      },
      (error: Error) => error.message,
    );
  return (
    <OwnPlanForm
      view={view}
      last={progress.data?.sessions.at(-1)?.rehearsals ?? {}}
      onSave={save}
      onLeave={leave}
    />
  );
}

function Reading({ view, saved, edit }: { view: PlanView; saved: boolean; edit: () => void }) {
  const leftHanded = useSection('hand') === 'left';
  return (
    <>
      <p>{words.author[view.author]}</p>
      <p>
        {[
          t.counts.week(view.week, view.plan.volume.perWeek),
          ...t.counts.notCounted(view.week.notCounted),
        ].join(' ')}
      </p>
      <p role="status" class={saved ? undefined : 'hidden'}>
        {saved ? words.saved : ''}
      </p>
      {view.author !== 'coach' && (
        <div class="row">
          <button type="button" onClick={edit}>
            {words.edit}
          </button>
        </div>
      )}
      <DrillOnDemand own leftHanded={leftHanded} />
      <PlanSheet plan={view.plan} leftHanded={leftHanded} />
    </>
  );
}

/** Read first; the form takes its place where it was asked for. */
function Written(props: WrittenProps) {
  const [mode, setMode] = useState<'begin' | 'read' | 'saved' | 'edit'>('begin');
  useEffect(() => {
    if (mode === 'begin') return;
    scrollTo(0, 0);
    document.getElementById('main')?.focus({ preventScroll: true });
  }, [mode]);
  if (mode === 'edit')
    return <Editing {...props} leave={(saved) => setMode(saved ? 'saved' : 'read')} />;
  return <Reading view={props.view} saved={mode === 'saved'} edit={() => setMode('edit')} />;
}

/** The plan: read by the student, and changed where no coach set it. */
export function PlanScreen() {
  const { data, problem } = useLoad<PlanView>('plan');
  const [view, setView] = useState<PlanView | null>(null);
  useEffect(() => setView(data && told(data)), [data]);
  return (
    <main id="main" class="page plan-page" tabIndex={-1}>
      <h1>{words.title}</h1>
      {view === null ? (
        <p class={problem === null ? '' : 'refusal'}>{problem ?? words.loading}</p>
      ) : (
        <Written view={view} set={setView} />
      )}
      <Caution />
    </main>
  );
}
