import { STANDARD_GRAVITY } from '../../math/gravity.ts';
import { median } from '../../math/stats.ts';
import { SessionError, type SessionErrorCode } from '../sessionError.ts';
import { SLOT_COUNT } from './channels.ts';

/** Specific force at rest may differ from standard gravity by this part. */
const NORM_TOLERANCE = 0.05;
/** A sensor at rest turns slower than this, rad/s: 10 deg/s, bias included. */
const REST_RATE = (10 * Math.PI) / 180;
/** Least rate that catches a release, Hz; a little room for a clock that runs slow. */
const LEAST_HZ = 50 * 0.96;
/** Length of a stretch that is looked at for rest, samples: about half a second. */
const STRETCH = 50;
/** Spread of the specific force over its mean in a stretch called rest: noise of good sensors is under 0.005. */
const REST_SPREAD = 0.02;
/** Turned between two rests before the gyroscope must show it, rad. */
const TURNED = (25 * Math.PI) / 180;

/** First rows of a track, `SLOT_COUNT` values each, SI as stated by channels.tsv. */
export interface Opening {
  readonly file: string;
  readonly rows: number;
  readonly values: Float64Array;
  /** End of the gyroscope's range, rad/s. */
  readonly gyroFullScale: number;
  /** On the body; a club that falls and lies may turn as it likes. */
  readonly worn: boolean;
}

/** Refuses a track whose numbers cannot be what its units say, naming the likely mistake. */
export function checkPlausible(opening: Opening): void {
  if (opening.rows === 0)
    throw new SessionError('no-samples', 'holds no samples', { file: opening.file });
  if (opening.rows < 2) return;
  checkRate(opening);
  const rests = restsOf(opening);
  checkNorm(opening, rests);
  checkRestRate(opening, rests);
  checkGyroRange(opening);
  if (opening.worn) checkGyroFollows(opening, rests);
}

function refuse(opening: Opening, code: SessionErrorCode, what: string): never {
  throw new SessionError(code, what, { file: opening.file });
}

function checkRate(opening: Opening): void {
  const steps: number[] = [];
  for (let row = 1; row < opening.rows; row++)
    steps.push(at(opening, row, 0) - at(opening, row - 1, 0));
  const hz = 1 / (median(steps) as number);
  if (hz >= LEAST_HZ) return;
  refuse(
    opening,
    'too-slow',
    `recorded at ${Number(hz.toPrecision(3))} samples a second; at least 50 are needed to see a release and a catch`,
  );
}

const at = (opening: Opening, row: number, slot: number): number =>
  opening.values[row * SLOT_COUNT + slot] as number;

const normAt = (opening: Opening, row: number, slot: number): number =>
  Math.hypot(at(opening, row, slot), at(opening, row, slot + 1), at(opening, row, slot + 2));

interface Rest {
  readonly from: number;
  readonly to: number;
  /** Mean specific force. */
  readonly acc: readonly number[];
  readonly norm: number;
  readonly rate: number;
  readonly spread: number;
}

/** Stretches in which the specific force is constant, whatever its unit; the stillest first. */
function restsOf(opening: Opening): readonly Rest[] {
  const rests: Rest[] = [];
  for (let from = 0; from + STRETCH <= opening.rows; from += STRETCH) {
    const rest = stretchOf(opening, from, from + STRETCH);
    if (rest.spread < REST_SPREAD) rests.push(rest);
  }
  return rests.sort((a, b) => a.spread - b.spread);
}

function stretchOf(opening: Opening, from: number, to: number): Rest {
  const acc = [1, 2, 3].map((slot) => meanOf(opening, slot, from, to));
  let squares = 0;
  let rate = 0;
  for (let row = from; row < to; row++) {
    for (let k = 0; k < 3; k++) squares += (at(opening, row, k + 1) - (acc[k] as number)) ** 2;
    rate += normAt(opening, row, 4);
  }
  const norm = Math.hypot(...acc);
  const spread = Math.sqrt(squares / (to - from)) / norm;
  return { from, to, acc, norm, rate: rate / (to - from), spread: norm > 0 ? spread : Infinity };
}

function meanOf(opening: Opening, slot: number, from: number, to: number): number {
  let sum = 0;
  for (let row = from; row < to; row++) sum += at(opening, row, slot);
  return sum / (to - from);
}

/** What |acc| at rest reads where the unit is not the stated one. */
const NORM_MISTAKES: readonly { readonly norm: number; readonly what: string }[] = [
  { norm: 1, what: 'this looks like g instead of m/s^2' },
  { norm: 1000, what: 'this looks like mg instead of m/s^2' },
  { norm: 980.665, what: 'this looks like cm/s^2 instead of m/s^2' },
  { norm: 32.174, what: 'this looks like ft/s^2 instead of m/s^2' },
  { norm: STANDARD_GRAVITY ** 2, what: 'this looks like m/s^2 labelled as g' },
  { norm: STANDARD_GRAVITY / 2, what: 'this looks like a wrong full-scale setting' },
  { norm: STANDARD_GRAVITY * 2, what: 'this looks like a wrong full-scale setting' },
  { norm: 2048, what: 'this looks like raw counts instead of m/s^2' },
];

function checkNorm(opening: Opening, rests: readonly Rest[]): void {
  const quiet = rests.slice(0, Math.max(1, Math.ceil(rests.length / 4)));
  const norm = median(quiet.map((rest) => rest.norm)) ?? overall(opening, 1);
  const tolerance = rests.length > 0 ? NORM_TOLERANCE : 0.5;
  if (Math.abs(norm / STANDARD_GRAVITY - 1) <= tolerance) return;
  const off = (mistake: { norm: number }) => Math.abs(norm / mistake.norm - 1);
  const guess = NORM_MISTAKES.filter((m) => off(m) <= tolerance).sort((a, b) => off(a) - off(b))[0];
  refuse(
    opening,
    'implausible-units',
    `at rest the accelerometer reads ${Number(norm.toPrecision(3))} m/s^2 where 9.81 is expected; ${
      guess?.what ?? 'check its units and its calibration'
    }`,
  );
}

function overall(opening: Opening, slot: number): number {
  const norms = Array.from({ length: opening.rows }, (_, row) => normAt(opening, row, slot));
  return median(norms) as number;
}

function checkRestRate(opening: Opening, rests: readonly Rest[]): void {
  const stillest = rests.reduce((least, rest) => Math.min(least, rest.rate), Infinity);
  if (rests.length === 0 || stillest <= REST_RATE) return;
  refuse(
    opening,
    'implausible-units',
    `at rest the gyroscope reads ${Number(stillest.toPrecision(3))} rad/s where almost 0 is expected; this looks like degrees instead of radians, or a sensor that was never still`,
  );
}

function checkGyroRange(opening: Opening): void {
  let most = 0;
  for (let row = 0; row < opening.rows; row++)
    for (let slot = 4; slot < 7; slot++) most = Math.max(most, Math.abs(at(opening, row, slot)));
  if (most <= opening.gyroFullScale * 1.01) return;
  refuse(
    opening,
    'implausible-units',
    `the gyroscope reads up to ${Number(most.toPrecision(3))} rad/s, past the end of its range (${Number(opening.gyroFullScale.toPrecision(3))} rad/s); this looks like degrees instead of radians`,
  );
}

/** Between two rests the gyroscope must have turned at least as far as the direction of gravity did. */
function checkGyroFollows(opening: Opening, rests: readonly Rest[]): void {
  const inTime = [...rests].sort((a, b) => a.from - b.from);
  for (let k = 1; k < inTime.length; k++) {
    const [before, after] = [inTime[k - 1] as Rest, inTime[k] as Rest];
    const tilted = angleBetween(before.acc, after.acc);
    if (tilted < TURNED) continue;
    const turned = turnedBetween(opening, before.from, after.to);
    if (turned === null || turned >= tilted / 3) continue;
    const labelled = tilted / turned > 20;
    refuse(
      opening,
      'implausible-units',
      `the sensor tilted by ${Math.round((tilted * 180) / Math.PI)} degrees while the gyroscope turned by ${Number(((turned * 180) / Math.PI).toPrecision(2))}; ${
        labelled
          ? 'this looks like radians labelled as degrees'
          : 'check the units of the gyroscope'
      }`,
    );
  }
}

function angleBetween(u: readonly number[], v: readonly number[]): number {
  const dot = u.reduce((sum, x, k) => sum + x * (v[k] as number), 0);
  return Math.acos(Math.min(1, Math.max(-1, dot / (Math.hypot(...u) * Math.hypot(...v)))));
}

/** Integral of |gyro|, rad; `null` where samples are missing for long enough to hide a turn. */
function turnedBetween(opening: Opening, from: number, to: number): number | null {
  let turned = 0;
  for (let row = from + 1; row < to; row++) {
    const dt = at(opening, row, 0) - at(opening, row - 1, 0);
    if (dt > 0.1) return null;
    turned += dt * normAt(opening, row, 4);
  }
  return turned;
}
