import { PoseDrawing } from '../body/PoseDrawing.tsx';
import { POSES } from '../body/poses.ts';
import { DrillOnDemand } from '../drill/Drill.tsx';
import { useSection } from '../feed/hooks.ts';
import { Refusal, useAsk } from '../shell/Ask.tsx';
import { sided } from '../strings/sided.ts';
import { t } from '../strings/strings.ts';

/** Where the two sensors go, drawn. */
export function StrapStep() {
  const hand = useSection('hand') ?? 'right';
  const simulated = useSection('source')?.simulated ?? false;
  const { ask, refusal } = useAsk();
  const s = t.ready.strap;
  const leftHanded = hand === 'left';
  return (
    <div class="ready-form">
      <h2 tabIndex={-1}>{s.title}</h2>
      <div class="strap-layout">
        <figure>
          <PoseDrawing
            view="faceOn"
            pose={POSES.upright}
            hands={{ do: 'hang' }}
            leftHanded={leftHanded}
            label={s.chestLabel}
            spot="chest"
          />
          <figcaption>{s.chest}</figcaption>
        </figure>
        <figure>
          <PoseDrawing
            view="faceOn"
            pose={POSES.upright}
            hands={{ do: 'hang' }}
            leftHanded={leftHanded}
            label={sided(s.armLabel, hand)}
            spot="trailArm"
          />
          <figcaption>{s.arm(s.side[hand])}</figcaption>
        </figure>
        <div class="ready-column">
          <p class="state-detail">{s.tight}</p>
          {simulated && <p class="fine">{s.demo}</p>}
          <Refusal text={refusal} />
          <button type="button" class="primary" onClick={() => void ask({ type: 'next' })}>
            {s.done}
          </button>
        </div>
      </div>
      <DrillOnDemand leftHanded={leftHanded} />
    </div>
  );
}
