import type { PoseView } from '../../streaming/contract.ts';
import { type Figure, type Point, type ViewName, figure } from './project.ts';

const points = (all: readonly Point[]): string =>
  all.map((p) => `${p.x.toFixed(3)},${p.y.toFixed(3)}`).join(' ');

function Limbs({ shape, name }: { readonly shape: Figure; readonly name: string }) {
  return (
    <g class={name}>
      <circle class="head" r="0.1" cx={shape.head.x} cy={shape.head.y} />
      <polygon class="trunk" points={points(shape.trunk)} />
      {shape.facing && <polyline class="front" points={points(shape.front)} />}
      <polyline class="turned" points={points(shape.turned)} />
      <polyline class="arm" points={points(shape.arm)} />
    </g>
  );
}

const LEGS = { faceOn: [-0.13, 0.13], downTheLine: [-0.03, 0.05] } as const;
const FLOOR_Y = 0.49;

/** Where a sensor is worn, on the figure. */
function spotOf(shape: Figure, spot: 'chest' | 'trailArm'): Point {
  const [from, to] = spot === 'chest' ? shape.front : shape.arm;
  const share = spot === 'chest' ? 0.68 : 0.78;
  return { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share };
}

/** A still drawing of a posture, in the same hand as the live body views. */
export function PoseDrawing(props: {
  readonly view: ViewName;
  readonly pose: PoseView | null;
  readonly ghost?: PoseView | null;
  readonly leftHanded: boolean;
  /** What it shows, for those who cannot see it. */
  readonly label: string;
  readonly spot?: 'chest' | 'trailArm';
}) {
  const { view, pose, ghost, leftHanded, label, spot } = props;
  const shape = pose && figure(view, leftHanded, pose);
  const at = shape && spot && spotOf(shape, spot);
  return (
    <svg
      class="pose-drawing body-figure"
      viewBox="-0.74 -0.92 1.48 1.46"
      role="img"
      aria-label={label}
    >
      {LEGS[view].map((x) => (
        <polyline key={x} class="leg" points={`${x * 0.8},0 ${x * 1.3},${FLOOR_Y}`} />
      ))}
      <polyline class="floor" points={`-0.62,${FLOOR_Y} 0.62,${FLOOR_Y}`} />
      {ghost && <Limbs name="ghost" shape={figure(view, leftHanded, ghost)} />}
      {shape && <Limbs name="now" shape={shape} />}
      {at && <circle class="spot-halo" cx={at.x} cy={at.y} r="0.12" />}
      {at && <circle class="spot-mark" cx={at.x} cy={at.y} r="0.055" />}
    </svg>
  );
}
