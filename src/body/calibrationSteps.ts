import type { Vec3 } from '../math/vec3.ts';
import type { Orientation } from '../orientation/orientation.ts';
import type { SessionEvent } from '../sensors/sessionEvent.ts';

export type WornSensor = 'chest' | 'trailArm';

/** Both sensors' readings while one calibration step lasted. */
export interface StepWindow {
  readonly onsetS: number;
  readonly durationS: number;
  readonly chest: readonly Orientation[];
  readonly trailArm: readonly Orientation[];
  /** Accelerometer offset that the readings were already freed of, m/s^2, sensor frame. */
  readonly accBias: Record<WornSensor, Vec3>;
}

/** What has been done so far, in the order it was asked. */
export interface CalibrationSteps {
  stands: StepWindow[];
  bows: StepWindow[];
  armRaises: StepWindow[];
}

export const emptySteps = (): CalibrationSteps => ({ stands: [], bows: [], armRaises: [] });

/** Files a step's window under its kind; other events are none. */
export function addStep(steps: CalibrationSteps, event: SessionEvent, window: StepWindow): void {
  if (event.type === 'calibration-stand') steps.stands.push(window);
  if (event.type === 'calibration-bow') steps.bows.push(window);
  if (event.type === 'calibration-armRaise') steps.armRaises.push(window);
}

/** The still windows before the first and after the last movement. `after` is `null` where it was left out. */
export function standsAround(steps: CalibrationSteps): {
  before: StepWindow | null;
  after: StepWindow | null;
} {
  const moves = [...steps.bows, ...steps.armRaises];
  if (moves.length === 0) return { before: steps.stands.at(-1) ?? null, after: null };
  const firstMove = Math.min(...moves.map((w) => w.onsetS));
  const lastMove = Math.max(...moves.map((w) => w.onsetS));
  const before = steps.stands.filter((w) => w.onsetS < firstMove).at(-1) ?? null;
  const after = steps.stands.filter((w) => w.onsetS > lastMove).at(-1) ?? null;
  return { before, after };
}
