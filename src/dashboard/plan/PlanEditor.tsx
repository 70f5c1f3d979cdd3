import { useId } from 'preact/hooks';
import { OWN_RANGE_KEYS, STAGES, type Stage } from '../../coaching/plan.ts';
import { t } from '../strings/strings.ts';
import { NumberField } from './NumberField.tsx';
import { TargetTable } from './TargetTable.tsx';
import { type PlanEditorProps, problemAt } from './editing.ts';

const words = t.plan;

function StageChoice({ stage, set }: { readonly stage: Stage; readonly set: (s: Stage) => void }) {
  return (
    <fieldset class="plan-stages">
      <legend>{words.stage}</legend>
      {(Object.keys(STAGES) as Stage[]).map((one) => (
        <label key={one}>
          <input type="radio" name="stage" checked={stage === one} onChange={() => set(one)} />
          <b>{t.names.stages[one].name}</b> {t.names.stages[one].text}
        </label>
      ))}
    </fieldset>
  );
}

function Lines(props: {
  readonly label: string;
  readonly value: string;
  readonly set: (value: string) => void;
  readonly problem: string | null;
}) {
  const id = useId();
  return (
    <div class="plan-field">
      <label for={id}>{props.label}</label>
      <textarea
        dir="auto"
        id={id}
        rows={5}
        value={props.value}
        aria-invalid={props.problem !== null}
        onInput={(event) => props.set(event.currentTarget.value)}
      />
      {props.problem !== null && <p class="refusal">{props.problem}</p>}
    </div>
  );
}

function NameField({ draft, set, problems }: PlanEditorProps) {
  const id = useId();
  const problem = problemAt(problems, 'name', words.name);
  return (
    <div class="plan-field">
      <label for={id}>{words.name}</label>
      <input
        id={id}
        type="text"
        dir="auto"
        value={draft.name}
        aria-invalid={problem !== null}
        onInput={(event) => set({ ...draft, name: event.currentTarget.value })}
      />
      {problem !== null && <p class="refusal">{problem}</p>}
    </div>
  );
}

function Ratio({ draft, set, problems }: PlanEditorProps) {
  if (!STAGES[draft.stage].asksForBalls) return <p class="fine">{words.noBalls}</p>;
  return (
    <fieldset class="plan-numbers">
      <legend>{words.ratio}</legend>
      <NumberField
        label={words.rehearsals}
        value={draft.rehearsals}
        set={(rehearsals) => set({ ...draft, rehearsals })}
        problem={problemAt(problems, 'ratio.rehearsals', words.rehearsals)}
      />
      <NumberField
        label={words.balls}
        value={draft.balls}
        set={(balls) => set({ ...draft, balls })}
        problem={problemAt(problems, 'ratio.balls', words.balls)}
      />
    </fieldset>
  );
}

function Volume({ draft, set, problems }: PlanEditorProps) {
  return (
    <fieldset class="plan-numbers">
      <legend>{words.volume}</legend>
      <NumberField
        label={words.perSession}
        value={draft.perSession}
        set={(perSession) => set({ ...draft, perSession })}
        problem={problemAt(problems, 'volume.perSession', words.perSession)}
      />
      <NumberField
        label={words.perWeek}
        value={draft.perWeek}
        set={(perWeek) => set({ ...draft, perWeek })}
        problem={problemAt(problems, 'volume.perWeek', words.perWeek)}
      />
      <p class="fine">{words.volumeWhy}</p>
    </fieldset>
  );
}

function OwnRange({ draft, set, problems }: PlanEditorProps) {
  return (
    <details class="fold">
      <summary>{words.ownRange}</summary>
      <div class="plan-numbers">
        {OWN_RANGE_KEYS.map((key) => (
          <NumberField
            key={key}
            label={words.ranges[key]}
            unit={words.deg}
            value={draft.ownRange[key]}
            set={(deg) => set({ ...draft, ownRange: { ...draft.ownRange, [key]: deg } })}
            problem={problemAt(problems, `ownRange.${key}`, words.ranges[key])}
          />
        ))}
        <p class="fine">{words.ownRangeWhy}</p>
      </div>
    </details>
  );
}

/** Everything of a plan that a coach sets. */
export function PlanEditor(props: PlanEditorProps) {
  const { draft, set, problems } = props;
  return (
    <div class="plan-editor">
      <NameField {...props} />
      <StageChoice stage={draft.stage} set={(stage) => set({ ...draft, stage })} />
      <Ratio {...props} />
      <TargetTable {...props} />
      <Volume {...props} />
      <OwnRange {...props} />
      <Lines
        label={words.checklist}
        value={draft.checklist}
        set={(checklist) => set({ ...draft, checklist })}
        problem={problemAt(problems, 'checklist', words.checklist)}
      />
      <Lines
        label={words.note}
        value={draft.note}
        set={(note) => set({ ...draft, note })}
        problem={problemAt(problems, 'note', words.note)}
      />
    </div>
  );
}
