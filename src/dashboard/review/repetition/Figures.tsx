import { FigureLegend } from '../../body/FigureLegend.tsx';
import { PoseDrawing } from '../../body/PoseDrawing.tsx';
import { ballAt } from '../../body/figure.ts';
import { type Flight, handsDuring } from '../../body/flight.ts';
import { t } from '../../strings/strings.ts';
import type { CurvePose } from '../../../streaming/sessionsContract.ts';
import { poseAt } from './poseAt.ts';

const words = t.review.repetition;

const VIEWS = ['faceOn', 'downTheLine'] as const;

type Pose = NonNullable<ReturnType<typeof poseAt>>;

/** Both views of the body at one moment. */
export function Figures(props: {
  readonly poses: readonly CurvePose[];
  /** Session s. */
  readonly cursorS: number;
  readonly leftHanded: boolean;
  /** Drawn dashed behind it, and what that is. */
  readonly ghost: Pose | null;
  readonly ghostIs: string | null;
  /** Where the ball lies before the club. */
  readonly address?: Pose | null;
  /** The club between release and catch; left out where it stays in the hands. */
  readonly flight?: Flight | null;
}) {
  const pose = poseAt(props.poses, props.cursorS);
  const hands = handsDuring(props.flight ?? null, props.cursorS);
  const ball = ballAt(props.address ?? null);
  return (
    <section class="figures" aria-label={words.body}>
      <div class="body-views">
        {VIEWS.map((view) => (
          <figure key={view} class="body-view">
            <PoseDrawing
              view={view}
              pose={pose}
              ghost={props.ghost}
              leftHanded={props.leftHanded}
              hands={hands}
              ball={ball}
              label={t.body[view]}
            />
            <figcaption>
              {t.body[view]}
              {pose === null && ` (${words.lost})`}
            </figcaption>
          </figure>
        ))}
      </div>
      <FigureLegend ghost={props.ghostIs} />
    </section>
  );
}
