import type { JointAngles } from '../../body/segments.ts';
import type { OwnRange } from '../../coaching/plan.ts';
import type { ImuSample } from '../../sensors/sample.ts';
import type { SessionEvent } from '../../sensors/sessionEvent.ts';
import { type CountState, newCount, stepCount } from './count.ts';
import { type RangeState, newRange, rangeAngle, stepRange } from './range.ts';
import { type GuidePart, type GuideStep, PARTS, STEP_KINDS, type StepKind } from './steps.ts';
import { type StillState, newStill, stepStill } from './still.ts';

/** What the screen says of the step under way. */
export interface GuideView {
  readonly part: GuidePart;
  readonly step: GuideStep;
  /** Place within its part, from 0, and how many there are. */
  readonly index: number;
  readonly of: number;
  /**
   * `asked`: just said, not watched yet. `slow`: nothing like it was seen for long.
   * `swapped`: the other sensor did what was asked of this one.
   */
  readonly status: 'asked' | 'watching' | 'slow' | 'swapped' | 'done';
  /** Movements seen and wanted; 0 of 0 where none are counted. */
  readonly count: number;
  readonly wanted: number;
  /** 0..1 */
  readonly progress: number;
  /** The range end so far, deg. */
  readonly endDeg: number | null;
}

export type GuideOutput =
  | { readonly kind: 'ask'; readonly step: GuideStep }
  | { readonly kind: 'event'; readonly event: SessionEvent }
  | { readonly kind: 'range'; readonly range: OwnRange }
  | { readonly kind: 'partDone'; readonly part: GuidePart };

/** A part of the guided start under way. Plain data; stepped by the samples' own time. */
export interface GuideState {
  readonly part: GuidePart;
  index: number;
  /** Session s at which the step was asked for; `null` until the first sample after it. */
  askedS: number | null;
  /** Session s from which the step's window counts. */
  fromS: number;
  status: GuideView['status'];
  still: StillState;
  count: CountState;
  /** The same movements as the sensor does them that should not. */
  other: CountState;
  range: RangeState;
  rangeOut: boolean;
  progress: number;
}

/** Time to hear what is asked before it is watched, s: stillness during the words does not count, a quick bow does. */
const LISTEN_S = { still: 2.5, count: 1, range: 1.5 } as const;
/** Nothing like it seen for so long: it is asked again, s. */
const SLOW_S = 20;
/** A counted movement is over when all is still for so long, s. */
const SETTLED_S = 0.4;
/** A range end is taken when one is back and still for so long, s. */
const RANGE_SETTLED_S = 0.8;

type Emit = (output: GuideOutput) => void;

export function startGuide(part: GuidePart, emit: Emit): GuideState {
  const state: GuideState = {
    part,
    index: 0,
    askedS: null,
    fromS: 0,
    status: 'asked',
    still: newStill(),
    count: newCount(),
    other: newCount(),
    range: newRange(),
    rangeOut: false,
    progress: 0,
  };
  ask(state, emit);
  return state;
}

const stepOf = ({ part, index }: GuideState): GuideStep => PARTS[part][index] ?? 'address';

function ask(state: GuideState, emit: Emit): void {
  state.askedS = null;
  state.status = 'asked';
  state.count = newCount();
  state.other = newCount();
  state.range = newRange();
  state.rangeOut = false;
  state.progress = 0;
  emit({ kind: 'ask', step: stepOf(state) });
}

function finishStep(state: GuideState, emit: Emit): void {
  if (state.index + 1 < PARTS[state.part].length) {
    state.index += 1;
    ask(state, emit);
    return;
  }
  state.status = 'done';
  emit({ kind: 'partDone', part: state.part });
}

function finishWindow(
  state: GuideState,
  type: SessionEvent['type'],
  fromS: number,
  toS: number,
  emit: Emit,
): void {
  emit({
    kind: 'event',
    event: { type, onsetS: fromS, durationS: toS - fromS, value: null },
  });
  finishStep(state, emit);
}

type Of<K extends StepKind['kind']> = Extract<StepKind, { kind: K }>;

function watchStill(state: GuideState, step: Of<'still'>, timeS: number, emit: Emit): void {
  const { sinceS } = state.still;
  const fromS = sinceS === null ? timeS : Math.max(sinceS, state.fromS);
  state.progress = Math.min(1, (timeS - fromS) / step.seconds);
  if (timeS - fromS >= step.seconds) finishWindow(state, step.event, fromS, timeS, emit);
}

function watchCount(state: GuideState, step: Of<'count'>, sample: ImuSample, emit: Emit): void {
  if (sample.sensor === step.sensor) stepCount(state.count, sample, step.swingDeg);
  else if (sample.sensor !== 'club') stepCount(state.other, sample, step.swingDeg);
  state.progress = Math.min(1, state.count.count / step.wanted);
  const { sinceS } = state.still;
  const settled = sinceS !== null && sample.timeS - sinceS >= SETTLED_S;
  if (state.count.count >= step.wanted && settled) {
    finishWindow(state, step.event, state.fromS, sample.timeS, emit);
    return;
  }
  const swapped = state.count.count === 0 && state.other.count >= step.wanted;
  if (swapped && settled) state.status = 'swapped';
  if (!swapped && state.status === 'swapped') state.status = 'watching';
}

/** Takes one sample of the worn sensors. */
export function stepGuide(state: GuideState, sample: ImuSample, emit: Emit): void {
  if (state.status === 'done') return;
  stepStill(state.still, sample);
  const { timeS } = sample;
  state.askedS ??= timeS;
  const step = STEP_KINDS[stepOf(state)];
  if (timeS - state.askedS < LISTEN_S[step.kind]) return;
  if (state.status === 'asked') {
    state.status = 'watching';
    state.fromS = timeS;
  }
  if (step.kind === 'still') watchStill(state, step, timeS, emit);
  if (step.kind === 'count') watchCount(state, step, sample, emit);
  if (state.status === 'watching' && timeS - state.fromS > SLOW_S) state.status = 'slow';
}

/** Takes one instant of the angles: for the range check. */
export function stepGuideAngles(
  state: GuideState,
  timeS: number,
  angles: JointAngles,
  emit: Emit,
): void {
  const step = STEP_KINDS[stepOf(state)];
  if (step.kind !== 'range' || state.status === 'asked' || state.status === 'done') return;
  const deg = rangeAngle(step.key, angles);
  const endDeg = stepRange(state.range, timeS, deg);
  if (endDeg !== null && endDeg > step.outDeg) state.rangeOut = true;
  const back = deg === null || deg < step.backDeg;
  const { sinceS } = state.still;
  if (!state.rangeOut || !back || sinceS === null || timeS - sinceS < RANGE_SETTLED_S) return;
  emit({ kind: 'range', range: { [step.key]: Math.round(endDeg ?? 0) } });
  finishStep(state, emit);
}

/** Leaves out the step under way: it stays unmeasured. */
export const skipStep = (state: GuideState, emit: Emit): void => finishStep(state, emit);

export function guideView(state: GuideState): GuideView {
  const step = stepOf(state);
  const kind = STEP_KINDS[step];
  return {
    part: state.part,
    step,
    index: state.index,
    of: PARTS[state.part].length,
    status: state.status,
    count: kind.kind === 'count' ? Math.min(state.count.count, kind.wanted) : 0,
    wanted: kind.kind === 'count' ? kind.wanted : 0,
    progress: Math.round(state.progress * 50) / 50,
    endDeg: kind.kind === 'range' ? roundOrNull(state.range.bestDeg) : null,
  };
}

const roundOrNull = (deg: number | null): number | null => (deg === null ? null : Math.round(deg));
