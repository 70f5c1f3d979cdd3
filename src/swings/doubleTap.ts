import { degrees } from '../math/angle.ts';
import { norm } from '../math/vec3.ts';
import type { ImuSample } from '../sensors/sample.ts';
import { type ShockSample, type ShockState, createShock, stepShock } from './shock.ts';

/** Choices of the design, from simulation: m/s^2 of the high-passed acceleration, s, deg/s. */
export const DOUBLE_TAP = {
  /** A knock is larger than any footfall's. */
  least: 4,
  /** And shorter than this: a blow, not a movement. */
  longestS: 0.09,
  /** From the first to the second. */
  apartS: { least: 0.15, most: 0.5 },
  /** No other knock so long before and after: three taps, or steps, are none. */
  aloneS: 0.6,
  /** The larger of the two is at most so many times the smaller. */
  alike: 4,
  /** The arm's sensor feels at most this share of it: a ball, a catch or a step reaches both. */
  armShare: 0.6,
  /** Within this of a knock the arm's own reading counts; both clocks agree better than that. */
  togetherS: 0.04,
  /** Root mean square of the chest's angular speed about and between the knocks, themselves left out. */
  stillDegPerS: 15,
  aboutKnockS: 0.06,
  /** The trunk is looked at from so long before the first. */
  beforeS: 0.5,
} as const;

/** Everything older is forgotten, s. */
const KEPT_S = 3;

interface Knock {
  readonly timeS: number;
  endS: number;
  size: number;
}

/** Plain data. */
export interface DoubleTapState {
  readonly chest: ShockState;
  readonly arm: ShockState;
  /** Session s of the newest reading of each; `null` before the first. */
  chestS: number | null;
  armS: number | null;
  knocks: Knock[];
  /** The arm's shocks that are not mere noise, in order. */
  armShocks: ShockSample[];
  /** The chest's angular speed, deg/s. */
  speeds: { readonly timeS: number; readonly degPerS: number }[];
}

/** Two taps on the chest sensor, session s. */
export interface DoubleTap {
  readonly firstS: number;
  readonly secondS: number;
}

export const createDoubleTap = (): DoubleTapState => ({
  chest: createShock(),
  arm: createShock(),
  chestS: null,
  armS: null,
  knocks: [],
  armShocks: [],
  speeds: [],
});

function noteKnock({ knocks }: DoubleTapState, { timeS, size }: ShockSample): void {
  if (size < DOUBLE_TAP.least) return;
  const last = knocks.at(-1);
  if (last !== undefined && timeS - last.endS <= DOUBLE_TAP.aboutKnockS) {
    last.endS = timeS;
    last.size = Math.max(last.size, size);
  } else knocks.push({ timeS, endS: timeS, size });
}

function noteChest(s: DoubleTapState, { timeS, acc, gyro }: ImuSample): void {
  s.chestS = timeS;
  s.speeds.push({ timeS, degPerS: degrees(norm(gyro)) });
  noteKnock(s, stepShock(s.chest, timeS, acc));
  const fromS = timeS - KEPT_S;
  if ((s.speeds[0]?.timeS ?? timeS) < fromS) s.speeds.shift();
  if ((s.knocks[0]?.timeS ?? timeS) < fromS) s.knocks.shift();
  while ((s.armShocks[0]?.timeS ?? timeS) < fromS) s.armShocks.shift();
}

function noteArm(s: DoubleTapState, { timeS, acc }: ImuSample): void {
  s.armS = timeS;
  const shock = stepShock(s.arm, timeS, acc);
  if (shock.size > DOUBLE_TAP.least * 0.1) s.armShocks.push(shock);
}

const isKnock = ({ timeS, endS }: Knock): boolean => endS - timeS <= DOUBLE_TAP.longestS;

function arePair(a: Knock, b: Knock): boolean {
  const apartS = b.timeS - a.timeS;
  const { least, most } = DOUBLE_TAP.apartS;
  const ratio = Math.max(a.size, b.size) / Math.min(a.size, b.size);
  return isKnock(a) && isKnock(b) && apartS >= least && apartS <= most && ratio <= DOUBLE_TAP.alike;
}

const reachesArm = ({ armShocks }: DoubleTapState, { timeS, endS, size }: Knock): boolean =>
  armShocks.some(
    (shock) =>
      shock.timeS >= timeS - DOUBLE_TAP.togetherS &&
      shock.timeS <= endS + DOUBLE_TAP.togetherS &&
      shock.size > DOUBLE_TAP.armShare * size,
  );

function trunkIsStill({ speeds }: DoubleTapState, a: Knock, b: Knock, untilS: number): boolean {
  const beside = speeds.filter(
    ({ timeS }) =>
      timeS >= a.timeS - DOUBLE_TAP.beforeS &&
      timeS <= untilS &&
      [a, b].every(
        (k) => timeS < k.timeS - DOUBLE_TAP.aboutKnockS || timeS > k.endS + DOUBLE_TAP.aboutKnockS,
      ),
  );
  const sum = beside.reduce((all, { degPerS }) => all + degPerS * degPerS, 0);
  return beside.length > 0 && Math.sqrt(sum / beside.length) <= DOUBLE_TAP.stillDegPerS;
}

/** What the two newest knocks are, once both sensors have told enough after them. */
function decide(s: DoubleTapState): DoubleTap | null {
  const [before, a, b] = [s.knocks.at(-3), s.knocks.at(-2), s.knocks.at(-1)];
  if (a === undefined || b === undefined) return null;
  const untilS = b.timeS + DOUBLE_TAP.aloneS;
  if (s.chestS === null || s.chestS < untilS) return null;
  if (s.armS === null || s.armS < b.endS + DOUBLE_TAP.togetherS) return null;
  s.knocks = [];
  const alone = before === undefined || a.timeS - before.endS > DOUBLE_TAP.aloneS;
  const fits = alone && arePair(a, b) && ![a, b].some((k) => reachesArm(s, k));
  return fits && trunkIsStill(s, a, b, untilS) ? { firstS: a.timeS, secondS: b.timeS } : null;
}

/**
 * Takes one sample of either sensor. A double tap is told `aloneS` after its second tap: two short knocks on the chest
 * sensor alone, the trunk still. Mounting does not matter.
 */
export function stepDoubleTap(s: DoubleTapState, sample: ImuSample): DoubleTap | null {
  if (sample.sensor === 'chest') noteChest(s, sample);
  else if (sample.sensor === 'trailArm') noteArm(s, sample);
  return decide(s);
}
