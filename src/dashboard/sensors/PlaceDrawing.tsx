import type { SensorRole } from '../../sensors/sample.ts';
import { useSection } from '../feed/hooks.ts';

/** A figure of our own, face on, with the place of the sensor marked; the words stand beside it. */
const SPOT: Record<SensorRole, { readonly x: number; readonly y: number }> = {
  chest: { x: 40, y: 34 },
  trailArm: { x: 20.5, y: 47 },
  club: { x: 31, y: 76 },
};

export function PlaceDrawing({ role }: { readonly role: SensorRole }) {
  const { x, y } = SPOT[role];
  const leftHanded = useSection('hand') === 'left';
  return (
    <svg class="place-drawing" viewBox="0 0 80 96" aria-hidden="true" focusable="false">
      <g {...(leftHanded && { transform: 'translate(80 0) scale(-1 1)' })}>
        <circle class="body" cx="40" cy="12" r="8" />
        <path class="body" d="M27 25 Q40 21 53 25 L49 62 Q40 65 31 62 Z" />
        <path class="limb" d="M27 27 L20 48 L29 68" />
        <path class="limb" d="M53 27 L60 48 L51 68" />
        {role === 'club' && <path class="stick" d="M30 66 L36 92" />}
        <circle class="spot-ring" cx={x} cy={y} r="8.5" />
        <circle class="spot" cx={x} cy={y} r="4.5" />
      </g>
    </svg>
  );
}
