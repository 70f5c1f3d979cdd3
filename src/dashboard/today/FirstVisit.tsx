import { PoseDrawing } from '../body/PoseDrawing.tsx';
import { POSES } from '../body/poses.ts';
import { useSection } from '../feed/hooks.ts';
import { sided } from '../strings/sided.ts';
import { t } from '../strings/strings.ts';

const PICTURES = [
  { pose: POSES.top, ghost: POSES.address },
  { pose: POSES.released, ghost: POSES.top },
  { pose: POSES.caught, ghost: POSES.top },
] as const;

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
              ghost={PICTURES[i]?.ghost ?? null}
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
