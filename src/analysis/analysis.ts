import { jointAngles } from '../body/angles.ts';
import { type SensorPair, flushPairing, pairArm, pairChest } from '../body/pairing.ts';
import type { WornSensor } from '../body/calibrationSteps.ts';
import { bodyFrame } from '../body/pose.ts';
import type { BodyFrame } from '../body/segments.ts';
import { isMark } from '../coaching/marks.ts';
import type { Plan } from '../coaching/plan.ts';
import { isFiniteVec, norm, subtract } from '../math/vec3.ts';
import type { Orientation } from '../orientation/orientation.ts';
import { stepAccBias } from '../orientation/accBias.ts';
import { stepTrack } from '../orientation/track.ts';
import { eventEndS } from '../sensors/recorded.ts';
import { type ImuSample, mirrorSample } from '../sensors/sample.ts';
import type { SessionEvent } from '../sensors/sessionEvent.ts';
import { createDetector } from '../swings/detector.ts';
import { stepShock } from '../swings/shock.ts';
import {
  type CutSignals,
  type CutSwing,
  closeCut,
  createCut,
  cutReadings,
  stepCut,
} from '../swings/cutSwing.ts';
import type { SwingReadings } from '../swings/analyseSwing.ts';
import { type SwingSignals, axialRate, signalsOf } from '../swings/signals.ts';
import { closeCalibration, learnAccBias, remember, stepCalibrating } from './calibrating.ts';
import type { AnalysisInput, AnalysisOutput, Phase } from './contract.ts';
import { observeClock } from './quality.ts';
import { takeMark, takeSwing, tellMarks } from './repetitions.ts';
import { followDrift, isUnsure, looksSet, rezero, takeReference } from './rezero.ts';
import { type AnalysisState } from './state.ts';
import { lastTimeS } from './summary.ts';
import { takePain, watchRange } from './warn.ts';
import {
  closeSwinging,
  rememberClub,
  rememberShock,
  shocksBetween,
  stepSwinging,
} from './swinging.ts';

export { start, type AnalysisState } from './state.ts';
export { lastTimeS, result } from './summary.ts';

type Emit = (output: AnalysisOutput) => void;

/**
 * Takes one input into `state` (in place) and emits what follows from it. Any interleaving of the
 * two sensors gives the same outputs, as long as neither runs more than a second ahead: everything
 * happens in order of session time, when both sensors have passed it.
 */
export function step(state: AnalysisState, input: AnalysisInput, emit: Emit): void {
  if (input.kind === 'event') addPending(state, input.event);
  else takeSample(state, input.sample, emit);
}

/**
 * From now on by another plan, as when the student's own range has just been measured.
 * @public taken by the practice as part of the chain
 */
export function replan(state: AnalysisState, plan: Plan): void {
  state.settings = { ...state.settings, plan };
}

/** No more will come: what waits is worked off. */
export function finish(state: AnalysisState, emit: Emit): void {
  flushPairing(state.pairing, (pair) => takePair(state, pair, emit));
  const swing = closeSwinging(state.swinging);
  const cut = readCut(state, closeCut(state.cut, lastTimeS(state)));
  for (const ended of [swing, cut]) if (ended !== null) takeSwing(state, ended, emit);
  takeEventsBefore(state, Infinity, emit);
  tellMarks(state, null, emit);
  const { calibrating } = state;
  if (calibrating.calibration !== null) return;
  calibrating.calibration = closeCalibration(calibrating);
  emit({ kind: 'calibration', ...calibrating.calibration });
}

function addPending(state: AnalysisState, event: SessionEvent): void {
  const { pending } = state;
  const endS = eventEndS(event);
  let at = pending.length;
  while (at > 0 && eventEndS(pending[at - 1]!) > endS) at--;
  pending.splice(at, 0, event);
}

function takeSample(state: AnalysisState, raw: ImuSample, emit: Emit): void {
  if (raw.sensor === 'club') {
    if (isFiniteVec(raw.acc) && Number.isFinite(raw.timeS))
      rememberClub(state.swinging, raw.timeS, norm(raw.acc));
    return;
  }
  const sensor = state[raw.sensor];
  observeClock(sensor.clock, raw);
  const sample = withoutAccBias(state, raw.sensor, raw);
  const onPair = (pair: SensorPair) => takePair(state, pair, emit);
  const take =
    raw.sensor === 'chest'
      ? (o: Orientation) => takeChest(state, o, onPair)
      : (o: Orientation) => takeArm(state, o, onPair);
  stepTrack(sensor.track, sample, take);
}

/** The reading as a right-handed golfer's, freed of the accelerometer's offset as far as it is known. */
function withoutAccBias(state: AnalysisState, sensor: WornSensor, raw: ImuSample): ImuSample {
  const sample = state.settings.hand === 'left' ? mirrorSample(raw) : raw;
  const { accBias, accBiasSteps } = state[sensor];
  if (isFiniteVec(sample.acc) && isFiniteVec(sample.gyro) && Number.isFinite(sample.timeS))
    if (stepAccBias(accBias, sample.timeS, sample.acc, sample.gyro))
      accBiasSteps.push({ timeS: sample.timeS, bias: accBias.bias });
  return { ...sample, acc: subtract(sample.acc, accBias.bias) };
}

function takeChest(state: AnalysisState, o: Orientation, onPair: (p: SensorPair) => void): void {
  remember(state.calibrating, 'chest', o);
  pairChest(state.pairing, o, onPair);
}

function takeArm(state: AnalysisState, o: Orientation, onPair: (p: SensorPair) => void): void {
  remember(state.calibrating, 'trailArm', o);
  rememberShock(state.swinging, stepShock(state.shock, o.timeS, o.acc, !o.interpolated));
  pairArm(state.pairing, o, onPair);
}

function takePair(state: AnalysisState, pair: SensorPair, emit: Emit): void {
  // At its very end an event may not have been told yet: live it is told when that instant has been taken.
  takeEventsBefore(state, pair.timeS, emit);
  tellMarks(state, pair.timeS, emit);
  followAccBias(state, 'chest', pair.timeS);
  followAccBias(state, 'trailArm', pair.timeS);
  const { mountings, headings, addressSeen } = state.calibrating;
  if (mountings === null || headings === null) return;
  followDrift(state.rezero, pair, headings);
  const frame = bodyFrame(pair, mountings, headings);
  takeFrame(state, frame, addressSeen, emit);
}

/** All at once: taken out one by one, many at the same instant would each move all others. */
function takeEventsBefore(state: AnalysisState, timeS: number, emit: Emit): void {
  const { pending } = state;
  let due = 0;
  while (due < pending.length && eventEndS(pending[due]!) < timeS) due++;
  if (due > 0) pending.splice(0, due).forEach((event) => takeEvent(state, event, emit));
}

/** The mountings follow the offsets in session time: which sensor's data came first must not matter. */
function followAccBias(state: AnalysisState, sensor: WornSensor, timeS: number): void {
  const { accBiasSteps } = state[sensor];
  while (accBiasSteps.length > 0 && accBiasSteps[0]!.timeS <= timeS)
    learnAccBias(state.calibrating, sensor, accBiasSteps.shift()!.bias);
}

function takeFrame(state: AnalysisState, frame: BodyFrame, ready: boolean, emit: Emit): void {
  if (ready && !state.paused) {
    watchRange(state, frame, emit);
    followSwing(state, frame, emit);
  }
  state.lastFrameS = frame.timeS;
  if (!state.settings.emitFrames) return;
  const angles = jointAngles(frame.thorax, frame.humerus, 0);
  emit({ kind: 'frame', frame, angles, keptRotationDeg: state.keptRotationDeg });
}

function followSwing(state: AnalysisState, frame: BodyFrame, emit: Emit): void {
  const signals = signalsOf(frame);
  const swing = stepSwinging(state.swinging, frame, signals);
  const { detector } = state.swinging;
  const { headings, armAtAddress } = state.calibrating;
  if (detector.stillness.still && headings && armAtAddress !== null) {
    if (detector.phase === 'address' || isUnsure(state.rezero))
      rezero(state.rezero, frame, headings, armAtAddress);
  }
  followRotation(state, frame);
  const cut = followCut(state, frame, signals, swing !== null);
  for (const ended of [swing, cut]) if (ended !== null) takeSwing(state, ended, emit);
  const holdS =
    detector.phase === 'top' && detector.holdFromS !== null ? frame.timeS - detector.holdFromS : 0;
  tellPhase(
    state,
    swing?.detected.kind === 'rehearsal' ? 'caught' : detector.phase,
    frame.timeS,
    holdS,
    emit,
  );
}

/** What the signal cut off: seen by where it was before and what gravity says after. */
function followCut(
  state: AnalysisState,
  frame: BodyFrame,
  signals: SwingSignals,
  seen: boolean,
): SwingReadings | null {
  const { phase, lastStillS, holdFromS } = state.swinging.detector;
  const { timeS, turnDeg, turnRate, lateralDeg } = signals;
  // each frame makes one: named field by field, which is many times faster than a spread
  const cut: CutSignals = {
    timeS,
    astray: state.rezero.astray,
    phase,
    held: holdFromS !== null,
    set: phase === 'address' && looksSet(state.rezero, frame),
    turnDeg,
    turnRate,
    lateralDeg,
    startS: lastStillS ?? timeS,
  };
  return readCut(state, stepCut(state.cut, cut, seen));
}

const readCut = (state: AnalysisState, cut: CutSwing | null): SwingReadings | null =>
  cut && cutReadings(cut, shocksBetween(state.swinging, cut.startS, cut.endS));

/** Live axial rotation: counted from the still top until the swing is over. */
function followRotation(state: AnalysisState, frame: BodyFrame): void {
  const { phase, stillness } = state.swinging.detector;
  const rate = axialRate(frame);
  const dt = state.lastFrameS === null ? 0 : frame.timeS - state.lastFrameS;
  const counting = phase === 'top' || phase === 'released';
  if (!counting) state.keptRotationDeg = null;
  else if (phase === 'top' && stillness.still) state.keptRotationDeg = 0;
  else
    state.keptRotationDeg =
      (state.keptRotationDeg ?? 0) + ((rate + state.lastAxialRate) / 2) * Math.min(dt, 0.05);
  state.lastAxialRate = rate;
}

/** Told on every change, and while holding so that the hold can be shown to fill. */
function tellPhase(
  state: AnalysisState,
  phase: Phase,
  atS: number,
  holdS: number,
  emit: Emit,
): void {
  const changed = phase !== state.phase;
  state.phase = phase;
  if (changed || phase === 'top') emit({ kind: 'phase', phase, atS, holdS });
}

function takeEvent(state: AnalysisState, event: SessionEvent, emit: Emit): void {
  const atS = eventEndS(event);
  if (event.type === 'pause' || event.type === 'resume') {
    interrupt(state, emit);
    state.paused = event.type === 'pause';
    tellPhase(state, state.paused ? 'paused' : 'waiting', atS, 0, emit);
  } else if (isMark(event)) takeMark(state, event);
  else if (event.type === 'pain') takePain(state, event, emit);
  else if (stepCalibrating(state.calibrating, event, state.settings.known)) {
    interrupt(state, emit);
    if (event.type === 'address-reference') takeReference(state.rezero);
    tellCalibration(state, atS, emit);
  }
}

/** What comes next does not belong to what was going on: a movement half seen is none. */
function interrupt(state: AnalysisState, emit: Emit): void {
  const ended = closeSwinging(state.swinging);
  if (ended !== null) takeSwing(state, ended, emit);
  Object.assign(state.swinging.detector, createDetector());
  Object.assign(state.cut, createCut());
}

function tellCalibration(state: AnalysisState, atS: number, emit: Emit): void {
  const { calibration, mountings, addressSeen } = state.calibrating;
  if (calibration === null) return;
  emit({ kind: 'calibration', ...calibration });
  const ready = mountings !== null && addressSeen;
  tellPhase(state, ready ? 'waiting' : 'calibrating', atS, 0, emit);
}
