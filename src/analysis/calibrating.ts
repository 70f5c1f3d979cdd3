import { wrapPi } from '../math/angle.ts';
import { multiply } from '../math/quat.ts';
import { type Vec3, ZERO } from '../math/vec3.ts';
import { thoraxAngles } from '../body/angles.ts';
import {
  type Calibration,
  type Mountings,
  calibrate,
  mountingOf,
  refusal,
} from '../body/calibration.ts';
import { type KnownFits, type RecheckSteps, recheck } from '../body/recheck.ts';
import { missingStep } from '../body/calibrationProblems.ts';
import {
  type CalibrationSteps,
  type StepWindow,
  type WornSensor,
  addStep,
  emptySteps,
  standsAround,
} from '../body/calibrationSteps.ts';
import { type Headings, headingOf, meanAngle } from '../body/pose.ts';
import { type Recent, createRecent, readRecent } from '../math/recent.ts';
import { ORIENTATION_WIDTH, pushOrientation, readOrientation } from './recentRows.ts';
import type { Orientation } from '../orientation/orientation.ts';
import type { SessionEvent } from '../sensors/sessionEvent.ts';

/** How much of the past is kept for a calibration step that is told at its end, s. */
const KEEP_S = 40;

/** Recent orientations of both sensors and what the steps so far have given. Plain data. */
export interface CalibratingState {
  readonly recent: Readonly<Record<WornSensor, Recent>>;
  steps: CalibrationSteps;
  /** A re-check under way. */
  rechecking: Partial<RecheckSteps>;
  calibration: Calibration | null;
  /** Follow from the calibration and what is known of the accelerometers' offsets. */
  mountings: Mountings | null;
  accBias: Record<WornSensor, Vec3>;
  headings: Headings | null;
  /** Heading of humerus against thorax at the address reference, rad; `null` before it. */
  armAtAddress: number | null;
  addressSeen: boolean;
}

export const createCalibrating = (): CalibratingState => ({
  recent: {
    chest: createRecent(ORIENTATION_WIDTH, KEEP_S),
    trailArm: createRecent(ORIENTATION_WIDTH, KEEP_S),
  },
  steps: emptySteps(),
  rechecking: {},
  calibration: null,
  mountings: null,
  accBias: { chest: ZERO, trailArm: ZERO },
  headings: null,
  armAtAddress: null,
  addressSeen: false,
});

export const remember = (s: CalibratingState, sensor: WornSensor, o: Orientation): void =>
  pushOrientation(s.recent[sensor], o);

const within = (recent: Recent, e: SessionEvent): Orientation[] =>
  readRecent(recent, e.onsetS, e.onsetS + e.durationS, readOrientation);

const windowOf = (s: CalibratingState, e: SessionEvent): StepWindow => ({
  onsetS: e.onsetS,
  durationS: e.durationS,
  chest: within(s.recent.chest, e),
  trailArm: within(s.recent.trailArm, e),
  accBias: { ...s.accBias },
});

/** Takes a finished calibration step. Returns true where the calibration changed. */
export function stepCalibrating(s: CalibratingState, e: SessionEvent, known?: KnownFits): boolean {
  const window = windowOf(s, e);
  if (e.type === 'address-reference') return takeAddress(s, window);
  if (e.type.startsWith('recheck-')) return stepRecheck(s, e.type, window, known);
  if (!e.type.startsWith('calibration-')) return false;
  if (s.addressSeen && e.type === 'calibration-stand') startAgain(s);
  if (e.type === 'calibration-bow') startAfterWhole(s);
  addStep(s.steps, e, window);
  return e.type === 'calibration-stand' && standsAround(s.steps).after !== null && solve(s);
}

/** The arm raise is the last of a re-check: then the kept calibration stands, or is refused. */
function stepRecheck(
  s: CalibratingState,
  type: SessionEvent['type'],
  window: StepWindow,
  known: KnownFits | undefined,
): boolean {
  if (type === 'recheck-stand') {
    startAgain(s);
    s.rechecking = { stand: window };
  }
  if (type === 'recheck-bow') s.rechecking = { ...s.rechecking, bow: window };
  const { stand, bow } = s.rechecking;
  if (type !== 'recheck-armRaise' || stand === undefined || bow === undefined) return false;
  s.rechecking = {};
  s.calibration = recheck(known, { stand, bow, armRaise: window }, s.accBias);
  face(s, stand);
  return true;
}

function startAgain(s: CalibratingState): void {
  s.steps = emptySteps();
  s.addressSeen = false;
  s.calibration = null;
  s.mountings = null;
}

/** Bows after a whole sequence begin another one, from the still stand before them. */
function startAfterWhole(s: CalibratingState): void {
  const { after } = standsAround(s.steps);
  if (after === null) return;
  startAgain(s);
  s.steps.stands.push(after);
}

/** An accelerometer's offset is known better: the mountings follow it. */
export function learnAccBias(s: CalibratingState, sensor: WornSensor, bias: Vec3): void {
  s.accBias[sensor] = bias;
  mount(s);
}

function mount(s: CalibratingState): Mountings | null {
  const fits = s.calibration?.fits;
  const chest = fits ? mountingOf(fits.chest, s.accBias.chest) : null;
  const trailArm = fits ? mountingOf(fits.trailArm, s.accBias.trailArm) : null;
  s.mountings = chest && trailArm ? { chest, trailArm } : null;
  return s.mountings;
}

function solve(s: CalibratingState): boolean {
  s.calibration = calibrate(s.steps);
  const { before, after } = standsAround(s.steps);
  face(s, after ?? before);
  return true;
}

/** The mountings, and the headings from where the chest and the arm point in a stand. */
function face(s: CalibratingState, stand: StepWindow | null): void {
  const mountings = mount(s);
  if (mountings === null) return;
  const chest = meanAngle(
    (stand?.chest ?? []).map((o) => headingOf(multiply(o.q, mountings.chest))),
  );
  const arm = meanAngle(
    (stand?.trailArm ?? []).map((o) => headingOf(multiply(o.q, mountings.trailArm))),
  );
  s.headings = chest === null || arm === null ? null : { chest: -chest, trailArm: -arm };
}

/** The student's own address: turn is 0 here, and the arm's heading against the chest is kept for later. */
function takeAddress(s: CalibratingState, window: StepWindow): boolean {
  s.addressSeen = true;
  if (s.calibration === null) solve(s);
  const { mountings } = s;
  if (mountings === null || s.headings === null) return true;
  const facing = s.headings;
  const turn = meanAngle(
    window.chest.map((o) => thoraxAngles(multiply(o.q, mountings.chest)).turn + facing.chest),
  );
  const arm = meanAngle(
    window.trailArm.map((o) => headingOf(multiply(o.q, mountings.trailArm)) + facing.trailArm),
  );
  if (turn === null || arm === null) return true;
  s.headings = { chest: facing.chest - turn, trailArm: facing.trailArm - turn };
  s.armAtAddress = wrapPi(arm - turn);
  return true;
}

/** What stands, in a session too that never finished its calibration. Changes nothing. */
export function closeCalibration({ calibration, steps }: CalibratingState): Calibration {
  if (calibration !== null) return calibration;
  return steps.stands.length > 0 ? calibrate(steps) : refusal([missingStep('calibration-stand')]);
}
