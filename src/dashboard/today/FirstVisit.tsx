import { PoseDrawing } from '../body/PoseDrawing.tsx';
import { STEP_AT, drillAt } from '../drill/model.ts';
import { useSection } from '../feed/hooks.ts';
import { sided } from '../strings/sided.ts';
import { t } from '../strings/strings.ts';

const PICTURES = (['hold', 'release', 'catch'] as const).map((step) => drillAt(STEP_AT[step]));

/** What the rehearsal is, drawn, and what is needed for it. */
export function FirstVisit({ open }: { readonly open: boolean }) {
  const hand = useSection('hand');
  return (
    <details class="first-visit" open={open}>
      <summary>{t.today.firstTitle}</summary>
      <ol class="first-steps">
        {t.today.first.map(({ word, text }, i) => (
          <li key={word}>
            <PoseDrawing
              view="faceOn"
              pose={PICTURES[i]?.pose ?? null}
              {...(PICTURES[i] && { hands: PICTURES[i].hands })}
              leftHanded={hand === 'left'}
              label={sided(text, hand)}
            />
            <h2>{word}</h2>
            <p>{sided(text, hand)}</p>
          </li>
        ))}
      </ol>
      <h2>{t.today.needTitle}</h2>
      <ul class="need">
        {t.today.need.map((item) => (
          <li key={item}>{sided(item, hand)}</li>
        ))}
      </ul>
    </details>
  );
}
