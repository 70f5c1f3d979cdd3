import { type Plan, TARGET_MEASURES, type TargetMeasure, askedRatio } from '../../coaching/plan.ts';
import { t } from '../strings/strings.ts';
import { MeasureDrawing } from './MeasureDrawing.tsx';

const words = t.planPage;

interface SheetProps {
  readonly plan: Plan;
  readonly leftHanded: boolean;
}

function TargetCard({ measure, plan, leftHanded }: SheetProps & { measure: TargetMeasure }) {
  const target = plan.targets[measure];
  const { what, accuracy } = t.measures.info[measure];
  const label = t.measures.label(measure);
  return (
    <li>
      <MeasureDrawing measure={measure} leftHanded={leftHanded} label={words.drawing(label)} />
      <div>
        <h3>{label}</h3>
        <p class="lead">{target === null ? words.notAsked : t.measures.target(measure, target)}</p>
        <p>{what}</p>
        <p class="fine">
          {words.howSure}: {accuracy.text}. {words.target}: {t.names.targetBasis}.
        </p>
      </div>
    </li>
  );
}

/** A plan to be read: every target with what it means. */
export function PlanSheet({ plan, leftHanded }: SheetProps) {
  const { rehearsals, balls } = askedRatio(plan);
  const { perSession, perWeek } = plan.volume;
  return (
    <div class="plan-sheet">
      <dl>
        <dt>{words.stage}</dt>
        <dd>
          <b>{t.names.stages[plan.stage].name}</b>. {t.names.stages[plan.stage].text}
        </dd>
        <dt>{words.mix}</dt>
        <dd>{words.mixText(rehearsals, balls)}</dd>
        <dt>{words.volume}</dt>
        <dd>{words.volumeText(perSession, perWeek)}</dd>
        {plan.note !== '' && (
          <>
            <dt>{words.note}</dt>
            <dd class="plan-note" dir="auto">
              {plan.note}
            </dd>
          </>
        )}
      </dl>
      <h2>{words.targets}</h2>
      <p class="fine">{words.basis(t.names.targetBasis)}</p>
      <ul class="plan-cards plain">
        {TARGET_MEASURES.map((measure) => (
          <TargetCard key={measure} measure={measure} plan={plan} leftHanded={leftHanded} />
        ))}
      </ul>
      <h2>{words.checklist}</h2>
      <ul>
        {plan.checklist.map((item) => (
          <li key={item} dir="auto">
            {item}
          </li>
        ))}
      </ul>
      <p class="fine">{words.checklistWhy}</p>
    </div>
  );
}
