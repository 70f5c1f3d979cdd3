import { PoseDrawing } from '../body/PoseDrawing.tsx';
import { POSES } from '../body/poses.ts';
import type { Hands } from '../body/figure.ts';
import type { ViewName } from '../body/project.ts';
import { DrillOnDemand } from '../drill/Drill.tsx';
import type { GuideStep, GuideView, PoseView } from '../../streaming/contract.ts';
import { useSection } from '../feed/hooks.ts';
import { useAsk } from '../shell/Ask.tsx';
import { sided } from '../strings/sided.ts';
import { t } from '../strings/strings.ts';
import { CalibrationQuality } from './CalibrationQuality.tsx';
import { SwapSensors } from './SwapSensors.tsx';

interface StepDrawing {
  readonly view: ViewName;
  readonly pose: PoseView;
  readonly ghost?: PoseView;
  /** Hanging, without a club, where nothing is said. */
  readonly hands?: Hands;
}

/** Elbow at a right angle: the forearm shows how far the arm is turned. */
const BENT: Hands = { do: 'hang', bend: Math.PI / 2 };
const HANGING: Hands = { do: 'hang' };

/** Each step as a posture, with where it starts as the ghost. */
const DRAWINGS: Record<GuideStep, StepDrawing> = {
  stand: { view: 'faceOn', pose: POSES.upright },
  bow: { view: 'downTheLine', pose: POSES.bow, ghost: POSES.upright },
  armRaise: { view: 'downTheLine', pose: POSES.armRaised, ghost: POSES.upright },
  standAgain: { view: 'faceOn', pose: POSES.upright },
  rangeRotation: { view: 'faceOn', pose: POSES.turnedOut, ghost: POSES.abducted, hands: BENT },
  rangeBend: { view: 'downTheLine', pose: POSES.bow, ghost: POSES.upright },
  rangeTrailSide: { view: 'faceOn', pose: POSES.trailSide, ghost: POSES.upright },
  rangeLeadSide: { view: 'faceOn', pose: POSES.leadSide, ghost: POSES.upright },
  address: { view: 'downTheLine', pose: POSES.address, hands: { do: 'hold' } },
  recheckStand: { view: 'faceOn', pose: POSES.upright },
  recheckBow: { view: 'downTheLine', pose: POSES.bow, ghost: POSES.upright },
  recheckArmRaise: { view: 'downTheLine', pose: POSES.armRaised, ghost: POSES.upright },
};

function statusText({ status, count, wanted, endDeg }: GuideView, refused: boolean): string {
  const s = t.ready.guide;
  if (refused) return t.home.refused;
  if (status === 'asked') return s.asked;
  if (status === 'slow' || status === 'swapped') return s[status];
  if (status === 'done') return s.solving;
  if (wanted > 0) return s.count(count, wanted);
  return endDeg === null ? s.watching : s.end(endDeg);
}

function Progress({ guide }: { readonly guide: GuideView }) {
  const accepted = useSection('calibration')?.quality?.accepted ?? true;
  const refused = guide.part !== 'range' && guide.status === 'done' && !accepted;
  return (
    <div class="guide-status">
      {guide.part !== 'range' && (
        <div class="hold-track" aria-hidden="true">
          <div class="hold-fill" style={{ transform: `scaleX(${guide.progress})` }} />
        </div>
      )}
      <p class="guide-text">{statusText(guide, refused)}</p>
    </div>
  );
}

/** One movement that was asked for, large, drawn, and how far it has come. */
export function GuidedStep() {
  const guide = useSection('guide');
  const hand = useSection('hand');
  const { ask } = useAsk();
  if (guide === null) return null;
  const { view, pose, ghost, hands = HANGING } = DRAWINGS[guide.step];
  const s = t.ready.guide;
  const isJudged =
    (guide.part === 'calibrate' || guide.part === 'recheck') && guide.status === 'done';
  return (
    <div class="guided" data-testid="guided" data-step={guide.step}>
      <div class="guided-words">
        <p class="label">{s.part(guide.index + 1, guide.of)}</p>
        <h2 class="state-word" tabIndex={-1}>
          {sided(s.word[guide.step], hand)}
        </h2>
        <p class="state-detail">{sided(s.detail[guide.step], hand)}</p>
        <Progress guide={guide} />
        {guide.step === 'address' && <DrillOnDemand leftHanded={hand === 'left'} />}
        {guide.status === 'swapped' && (
          <div>
            <p>{s.exchange}</p>
            <SwapSensors />
          </div>
        )}
        {isJudged && <CalibrationQuality />}
        <div class="row">
          {guide.part === 'recheck' && (
            <button
              type="button"
              class={isJudged ? 'primary' : 'quiet'}
              onClick={() => void ask({ type: 'next' })}
            >
              {t.ready.recheck.whole}
            </button>
          )}
          <button type="button" class="quiet" onClick={() => void ask({ type: 'again' })}>
            {t.ready.again}
          </button>
          {guide.part === 'range' && (
            <button type="button" class="quiet" onClick={() => void ask({ type: 'skip' })}>
              {t.ready.skip}
            </button>
          )}
        </div>
      </div>
      <PoseDrawing
        view={view}
        pose={pose}
        ghost={ghost ?? null}
        hands={hands}
        leftHanded={hand === 'left'}
        label={sided(s.detail[guide.step], hand)}
      />
    </div>
  );
}
