import type { Vec3 } from '../../math/vec3.ts';
import type { PoseView } from '../../streaming/contract.ts';
import { type Hands, ballAt, skeletonOf } from './figure.ts';
import { type Part, ghostOf, partsOf, sensorSpot } from './parts.ts';
import { type ViewName, project } from './project.ts';
import { GROUND, ballPath, viewBoxOf } from './scene.ts';

const Outlines = ({ name, parts }: { readonly name: string; readonly parts: readonly Part[] }) => (
  <g class={name}>
    {parts.map((part) => (
      <path
        key={part.name}
        class={`${part.measured ? 'measured' : 'drawn'} ${part.name}`}
        d={part.path}
      />
    ))}
  </g>
);

const HOLD: Hands = { do: 'hold' };

/** A still drawing of a posture, in the same hand as the live body views. */
export function PoseDrawing(props: {
  readonly view: ViewName;
  readonly pose: PoseView | null;
  readonly ghost?: PoseView | null;
  readonly leftHanded: boolean;
  /** What it shows, for those who cannot see it. */
  readonly label: string;
  readonly spot?: 'chest' | 'trailArm';
  /** On the club where nothing is said. */
  readonly hands?: Hands;
  /** Where the ball lies, m in the room. */
  readonly ball?: Vec3;
}) {
  const { view, pose, ghost, leftHanded, label, spot, hands = HOLD, ball = ballAt(null) } = props;
  const withClub = hands.do !== 'hang';
  const body = pose && skeletonOf(pose, hands, ball);
  const at = body && spot && project(view, leftHanded, sensorSpot(body, spot));
  return (
    <svg
      class="pose-drawing body-figure"
      viewBox={viewBoxOf(view, leftHanded, withClub ? 'club' : 'body')}
      role="img"
      aria-label={label}
    >
      <path class="ground" d={GROUND} />
      {withClub && <path class="golf-ball" d={ballPath(view, leftHanded, ball)} />}
      {ghost && (
        <Outlines
          name="ghost"
          parts={ghostOf(skeletonOf(ghost, { do: 'hang' }, ball), view, leftHanded)}
        />
      )}
      {body && <Outlines name="now" parts={partsOf(body, view, leftHanded)} />}
      {at && <circle class="spot-halo" cx={at.x} cy={at.y} r="0.11" />}
      {at && <circle class="spot-mark" cx={at.x} cy={at.y} r="0.05" />}
    </svg>
  );
}
