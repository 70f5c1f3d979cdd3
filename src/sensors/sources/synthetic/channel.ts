/** Value, first and second derivative of one coordinate at one time (rad or m, and per s). */
export interface Jet {
  readonly x: number;
  readonly v: number;
  readonly a: number;
}

/** A point that the coordinate passes with the given rate and acceleration. */
export interface Knot extends Jet {
  readonly timeS: number;
}

/** Knots in order of time; before the first and after the last the coordinate rests. */
export type Channel = Knot[];

export const REST: Jet = { x: 0, v: 0, a: 0 };
export const jet = (x: number, v = 0, a = 0): Jet => ({ x, v, a });
export const addJets = (p: Jet, q: Jet): Jet => jet(p.x + q.x, p.v + q.v, p.a + q.a);
export const scaleJet = (p: Jet, k: number): Jet => jet(p.x * k, p.v * k, p.a * k);
/** Product rule. */
export const multiplyJets = (p: Jet, q: Jet): Jet =>
  jet(p.x * q.x, p.v * q.x + p.x * q.v, p.a * q.x + 2 * p.v * q.v + p.x * q.a);

/**
 * Quintic between two knots: the shortest polynomial that meets value, rate and acceleration at both
 * ends. From rest to rest it is the minimum-jerk movement (Flash T, Hogan N 1985 J Neurosci 5:1688).
 */
export function quintic(p: Knot, q: Knot, timeS: number): Jet {
  const T = q.timeS - p.timeS;
  const s = (timeS - p.timeS) / T;
  const d = q.x - p.x;
  const v0 = p.v * T;
  const v1 = q.v * T;
  const a0 = (p.a * T * T) / 2;
  const a1 = (q.a * T * T) / 2;
  const c3 = 10 * d - 6 * v0 - 4 * v1 - 3 * a0 + a1;
  const c4 = -15 * d + 8 * v0 + 7 * v1 + 3 * a0 - 2 * a1;
  const c5 = 6 * d - 3 * v0 - 3 * v1 - a0 + a1;
  return jet(
    p.x + s * (v0 + s * (a0 + s * (c3 + s * (c4 + s * c5)))),
    (v0 + s * (2 * a0 + s * (3 * c3 + s * (4 * c4 + s * 5 * c5)))) / T,
    (2 * a0 + s * (6 * c3 + s * (12 * c4 + s * 20 * c5))) / (T * T),
  );
}

/** Part of a rest-to-rest movement that is done at `s` (0..1) of its duration. */
export function movementDone(s: number): number {
  const u = Math.min(1, Math.max(0, s));
  return u * u * u * (10 + u * (-15 + 6 * u));
}

/** Number of knots at or before a time. */
function knotsUntil(channel: Channel, timeS: number): number {
  let low = 0;
  let high = channel.length;
  while (low < high) {
    const mid = (low + high) >> 1;
    if ((channel[mid]?.timeS ?? Infinity) <= timeS) low = mid + 1;
    else high = mid;
  }
  return low;
}

/** The coordinate as planned. */
export function channelAt(channel: Channel, timeS: number): Jet {
  const n = knotsUntil(channel, timeS);
  const before = channel[n - 1];
  const after = channel[n];
  if (before && after) return quintic(before, after, timeS);
  return jet((before ?? after)?.x ?? 0);
}

/**
 * Muscles take up a movement over this time, s: what the body does is the plan averaged over it, so
 * that force starts and stops without a kink, which an accelerometer would take for a shock. A choice
 * of the order of muscle activation times; half power at 11 Hz.
 */
export const TAKE_UP_S = 0.04;

// Three-point Gauss-Legendre: exact for the quintics between knots.
const GAUSS = [
  { at: -Math.sqrt(0.6), weight: 5 / 18 },
  { at: 0, weight: 8 / 18 },
  { at: Math.sqrt(0.6), weight: 5 / 18 },
] as const;

/** Integral of the planned coordinate over a span without a knot inside. */
function integral(channel: Channel, fromS: number, toS: number): number {
  const half = (toS - fromS) / 2;
  const sum = GAUSS.reduce(
    (a, g) => a + g.weight * channelAt(channel, fromS + half * (1 + g.at)).x,
    0,
  );
  return sum * 2 * half;
}

const rests = (p: Knot, q: Knot): boolean =>
  p.x === q.x && p.v === 0 && q.v === 0 && p.a === 0 && q.a === 0;

/** The coordinate as the body follows it: the plan averaged over the take-up time around `timeS`. */
export function movedAt(channel: Channel, timeS: number): Jet {
  const [a, b] = [timeS - TAKE_UP_S / 2, timeS + TAKE_UP_S / 2];
  const [i, j] = [knotsUntil(channel, a), knotsUntil(channel, b)];
  const [before, after] = [channel[i - 1], channel[i]];
  if (i === j && (!before || !after || rests(before, after))) return jet((before ?? after)?.x ?? 0);
  const [p, q] = [channelAt(channel, a), channelAt(channel, b)];
  const cuts = [a, ...channel.slice(i, j).map((k) => k.timeS), b];
  const sum = cuts
    .slice(1)
    .reduce((total, to, k) => total + integral(channel, cuts[k] ?? to, to), 0);
  return jet(sum / TAKE_UP_S, (q.x - p.x) / TAKE_UP_S, (q.v - p.v) / TAKE_UP_S);
}

/** Where the coordinate will rest after all that is planned. */
export const lastValue = (channel: Channel): number => channel.at(-1)?.x ?? 0;

/** Sums of times differ in the last digits: closer than this is the same time, s. */
const SAME_TIME_S = 1e-9;

/** Appends a knot; one that repeats the last is dropped. @throws RangeError where it comes before it. */
export function addKnot(channel: Channel, timeS: number, at: Jet): void {
  const last = channel.at(-1);
  if (last && timeS - last.timeS < SAME_TIME_S) {
    const same = at.x === last.x && at.v === last.v && at.a === last.a;
    if (same && last.timeS - timeS < SAME_TIME_S) return;
    throw new RangeError(`knot at ${timeS} s does not come after the one at ${last.timeS} s`);
  }
  channel.push({ timeS, ...at });
}

/** From rest to rest. */
export function moveTo(channel: Channel, x: number, fromS: number, toS: number): void {
  addKnot(channel, fromS, jet(lastValue(channel)));
  addKnot(channel, toS, jet(x));
}

/** Drops knots that no time from `timeS` on needs. */
export function forgetBefore(channel: Channel, timeS: number): void {
  let n = 0;
  while (n + 1 < channel.length && (channel[n + 1]?.timeS ?? Infinity) <= timeS) n++;
  if (n > 0) channel.splice(0, n);
}
