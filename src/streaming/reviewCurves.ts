import type { AnalysisOutput } from '../analysis/contract.ts';
import type { JudgedRepetition } from '../analysis/result.ts';
import type { Quat } from '../math/quat.ts';
import type {
  CurvePose,
  OverviewEntry,
  QuaternionView,
  RepetitionCurves,
} from './sessionsContract.ts';

type Frame = Extract<AnalysisOutput, { readonly kind: 'frame' }>;

const BEFORE_S = 1.5;
/** The address is seen for a moment before it is left. */
const ADDRESS_S = 0.3;
/** A long hold is cut: the file stays small. */
const LONGEST_BEFORE_S = 6;
const AFTER_S = 1;
/** 104 points a second, a little sooner where the clock wavers. */
const STEP_S = 1 / 104;
const EARLY_S = 0.002;
const MOST_POSES = 120;
const MOST_POINTS = 60;

interface Window {
  readonly repetition: JudgedRepetition;
  /** The address may lie before the curves. */
  readonly listenS: number;
  readonly fromS: number;
  readonly toS: number;
  nextS: number;
  readonly frames: CurvePoint[];
  /** The pose nearest to the start of the backswing. */
  address: CurvePose | null;
}

interface CurvePoint extends CurvePose {
  readonly flexionDeg: number | null;
  readonly turnDeg: number | null;
  readonly leanDeg: number | null;
  readonly elevationDeg: number | null;
  readonly keptRotationDeg: number | null;
}

/** Gathers the curves of known repetitions while a recording runs through the analysis. */
export interface CurveGatherer {
  take(frame: Frame): void;
  curves(): readonly RepetitionCurves[];
}

export function gatherCurves(repetitions: readonly JudgedRepetition[]): CurveGatherer {
  const windows = repetitions.map(windowOf).sort((a, b) => a.listenS - b.listenS);
  const done: RepetitionCurves[] = [];
  let first = 0;
  return {
    take(frame) {
      const { timeS } = frame.frame;
      // Each is drawn up as soon as it is over: its frames go, and no long work is left for the end.
      while ((windows[first]?.toS ?? Infinity) < timeS) done.push(curvesOf(windows[first++]!));
      for (let i = first; (windows[i]?.listenS ?? Infinity) <= timeS; i++) {
        takeAddress(windows[i]!, frame);
        addTo(windows[i]!, frame);
      }
    },
    curves: () => {
      while (first < windows.length) done.push(curvesOf(windows[first++]!));
      return [...done].sort((a, b) => a.index - b.index);
    },
  };
}

const aroundOf = (r: JudgedRepetition): number => (r.kind === 'rehearsal' ? r.releaseS : r.topS);

function windowOf(repetition: JudgedRepetition): Window {
  const aroundS = aroundOf(repetition);
  const early = Math.max(repetition.startS - ADDRESS_S, aroundS - LONGEST_BEFORE_S);
  const fromS = Math.min(early, aroundS - BEFORE_S);
  return {
    repetition,
    listenS: Math.min(fromS, repetition.startS),
    fromS,
    toS: curvesEndS(repetition),
    nextS: fromS,
    frames: [],
    address: null,
  };
}

/** Within a tenth of a second, else it was lost. */
function takeAddress(window: Window, { frame }: Frame): void {
  const { startS } = window.repetition;
  if (window.address !== null || frame.gap) return;
  if (frame.timeS < startS - EARLY_S || frame.timeS > startS + 0.1) return;
  window.address = poseOf(frame);
}

const poseOf = ({ timeS, thorax, humerus }: Frame['frame']): CurvePose => ({
  timeS: rounded(timeS, 1e4) ?? 0,
  thorax: drawn(thorax),
  humerus: drawn(humerus),
});

function addTo(window: Window, { frame, angles, keptRotationDeg }: Frame): void {
  const { timeS, gap } = frame;
  if (timeS > window.toS || timeS < window.nextS - EARLY_S) return;
  window.nextS = Math.max(window.nextS + STEP_S, timeS);
  const shown = (deg: number | null): number | null => (gap ? null : rounded(deg, 100));
  window.frames.push({
    ...poseOf(frame),
    flexionDeg: shown(angles.flexionDeg),
    turnDeg: shown(angles.turnDeg),
    leanDeg: shown(angles.leanDeg),
    elevationDeg: shown(angles.elevationDeg),
    keptRotationDeg: shown(keptRotationDeg),
  });
}

const rounded = (value: number | null, per: number): number | null =>
  // Plus zero: JSON knows no -0.
  value === null || !Number.isFinite(value) ? null : Math.round(value * per) / per + 0;

/** Four digits: 0.01 deg. */
function drawn({ w, x, y, z }: Quat): QuaternionView {
  const [rw, rx, ry, rz] = [w, x, y, z].map((v) => rounded(v, 1e4) ?? 0);
  return { w: rw!, x: rx!, y: ry!, z: rz! };
}

const alignOf = (r: JudgedRepetition): number =>
  r.kind === 'rehearsal' ? r.releaseS : r.deliveryS;

/** Session s of the last frame that a repetition's curves can have. */
export const curvesEndS = (r: JudgedRepetition): number => aroundOf(r) + AFTER_S;

function curvesOf({ repetition, frames: gathered, address }: Window): RepetitionCurves {
  const frames = gathered.splice(0);
  // A body is not drawn where samples were lost.
  const whole = frames.filter((f) => f.flexionDeg !== null);
  return {
    index: repetition.index,
    kind: repetition.kind,
    alignS: alignOf(repetition),
    timeS: frames.map((f) => f.timeS),
    flexionDeg: frames.map((f) => f.flexionDeg),
    turnDeg: frames.map((f) => f.turnDeg),
    leanDeg: frames.map((f) => f.leanDeg),
    elevationDeg: frames.map((f) => f.elevationDeg),
    keptRotationDeg: frames.map((f) => f.keptRotationDeg),
    poses: spread(whole, MOST_POSES).map(({ timeS, thorax, humerus }) => ({
      timeS,
      thorax,
      humerus,
    })),
    address,
  };
}

/** At most `most` items, evenly apart, first and last among them. */
function spread<T>(items: readonly T[], most: number): readonly T[] {
  if (items.length <= most) return items;
  const step = (items.length - 1) / (most - 1);
  return Array.from({ length: most }, (_, i) => items[Math.round(i * step)]!);
}

/** The small multiple of one repetition. */
export function overviewOf(curves: RepetitionCurves, passed: boolean | null): OverviewEntry {
  const { index, kind, alignS, timeS, flexionDeg, turnDeg } = curves;
  const near = [...timeS.keys()].filter((i) => timeS[i]! >= alignS - BEFORE_S);
  const kept = spread(near, MOST_POINTS);
  return {
    index,
    kind,
    passed,
    alignS,
    offsetS: kept.map((i) => rounded(timeS[i]! - alignS, 1e4) ?? 0),
    flexionDeg: kept.map((i) => flexionDeg[i]!),
    turnDeg: kept.map((i) => turnDeg[i]!),
  };
}
