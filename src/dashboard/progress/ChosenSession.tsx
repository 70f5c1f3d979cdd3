import type { Plan } from '../../coaching/plan.ts';
import { t } from '../strings/strings.ts';
import type { Step } from './course.ts';
import { type PlanChange, planDifference } from './planDifference.ts';

const words = t.progress;

function changeText(change: PlanChange): string {
  if (change.what === 'target') {
    const { measure, before, after } = change;
    const text = (target: typeof before): string =>
      target === null ? words.noTarget : t.measures.target(measure, target);
    return words.change.target(t.measures.info[measure].name, text(before), text(after));
  }
  const { what, before, after } = change;
  if (what === 'other') return words.change.other();
  if (what !== 'stage') return words.change[what](before, after);
  const name = (stage: string): string => t.names.stages[stage as Plan['stage']].name;
  return words.change.stage(name(before), name(after));
}

const painText = (value: number | null): string =>
  value === null ? words.notAsked : String(value);

function factsOf(step: Step): string {
  const { painBefore, painAfter } = step;
  return [
    words.facts(step.passed, step.scored),
    ...(step.warnings > 0 ? [words.warnings(step.warnings)] : []),
    ...((painBefore ?? painAfter) === null
      ? []
      : [words.pain(painText(painBefore), painText(painAfter))]),
    ...(step.simulated ? [words.simulated] : []),
  ].join(' · ');
}

/** Chooses one session for all charts, and says what it was. */
export function ChosenSession(props: {
  readonly steps: readonly Step[];
  readonly chosen: number;
  readonly choose: (session: number) => void;
  readonly sessionHref: (id: string) => string;
}) {
  const { steps, chosen, choose, sessionHref } = props;
  const step = steps[chosen];
  if (step === undefined) return null;
  const date = words.date(step.atMs);
  return (
    <div class="chosen-session">
      <label>
        <span>{words.session}</span>
        <input
          type="range"
          min={0}
          max={steps.length - 1}
          step={1}
          value={chosen}
          aria-valuetext={date}
          onInput={(event) => choose(Number(event.currentTarget.value))}
        />
      </label>
      <p>
        <strong>{date}</strong> · {factsOf(step)} · <a href={sessionHref(step.id)}>{words.open}</a>
      </p>
      {step.planBefore !== null && (
        <p>
          {words.planChanged}{' '}
          {planDifference(step.planBefore, step.plan).map(changeText).join('; ')}.
        </p>
      )}
    </div>
  );
}
