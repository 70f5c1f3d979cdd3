import type { OwnRange } from '../../coaching/plan.ts';
import { PoseDrawing } from '../body/PoseDrawing.tsx';
import { POSES } from '../body/poses.ts';
import { useSection } from '../feed/hooks.ts';
import { useAsk } from '../shell/Ask.tsx';
import { sided } from '../strings/sided.ts';
import { t } from '../strings/strings.ts';
import { CalibrationQuality } from './CalibrationQuality.tsx';

const KEYS = Object.keys(t.ready.range.name) as (keyof OwnRange)[];

function Known({ range }: { readonly range: OwnRange }) {
  const known = KEYS.filter((key) => range[key] !== undefined);
  if (known.length === 0) return null;
  return (
    <p>
      {t.ready.range.known}{' '}
      {known.map((key) => `${t.ready.range.name[key]} ${range[key]?.toFixed(0)}°`).join(', ')}
    </p>
  );
}

/** Offers the check of one's own comfortable range. */
export function RangeStep() {
  const hand = useSection('hand');
  const range = useSection('plan')?.ownRange ?? {};
  const { ask } = useAsk();
  const s = t.ready.range;
  return (
    <div class="guided">
      <div class="guided-words">
        <h2 tabIndex={-1}>{s.title}</h2>
        <p class="state-detail">{s.why}</p>
        <p class="fine">{s.honest}</p>
        <Known range={range} />
        <CalibrationQuality />
        <div class="row">
          <button type="button" class="primary" onClick={() => void ask({ type: 'next' })}>
            {s.start}
          </button>
          <button type="button" onClick={() => void ask({ type: 'skip' })}>
            {s.skip}
          </button>
        </div>
      </div>
      <PoseDrawing
        view="faceOn"
        pose={POSES.turnedOut}
        ghost={POSES.abducted}
        hands={{ do: 'hang', bend: Math.PI / 2 }}
        leftHanded={hand === 'left'}
        label={sided(t.ready.guide.detail.rangeRotation, hand)}
      />
    </div>
  );
}
