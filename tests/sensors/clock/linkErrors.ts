import { percentile } from '../../../src/math/stats.ts';
import {
  createClock,
  type DeviceClock,
  observeAnswer,
  observePacket,
  sessionTime,
} from '../../../src/sensors/clock/clock.ts';
import { fitWhole } from './fitWhole.ts';
import { type Answer, answers, type Link, type Packet, packets } from './links.ts';

/** Error of session time for each packet, s: constant parts do not matter, only what differs between sensors. */
type Method = (run: readonly Packet[], kind: DeviceClock, answers: readonly Answer[]) => number[];

/** The time of arrival itself. */
const naive: Method = (run) => run.map((p) => p.arrivalS - p.trueS);

/** Least squares line through all arrivals of the last 30 s, as far as known live. */
const leastSquares: Method = (run) => {
  const errors: number[] = [];
  let from = 0;
  const sum = { n: 0, x: 0, y: 0, xx: 0, xy: 0 };
  const x0 = run[0]?.deviceS ?? 0;
  const add = (p: Packet, sign: 1 | -1): void => {
    const x = p.deviceS - x0;
    const y = p.arrivalS - x;
    sum.n += sign;
    sum.x += sign * x;
    sum.y += sign * y;
    sum.xx += sign * x * x;
    sum.xy += sign * x * y;
  };
  for (const p of run) {
    add(p, 1);
    for (let old = run[from]; old && p.deviceS - old.deviceS > 30; old = run[++from]) add(old, -1);
    const x = p.deviceS - x0;
    const spread = sum.n * sum.xx - sum.x * sum.x;
    const slope = sum.n > 50 ? (sum.n * sum.xy - sum.x * sum.y) / spread : 0;
    errors.push((sum.y - slope * sum.x) / sum.n + slope * x + x - p.trueS);
  }
  return errors;
};

const live: Method = (run, kind, answers) => {
  const clock = createClock(kind);
  let next = 0;
  return run.map((p) => {
    for (let a = answers[next]; a && a.arrivalS < p.arrivalS; a = answers[++next])
      observeAnswer(clock, a.deviceS, a.sentS);
    observePacket(clock, p.deviceS, p.arrivalS);
    return sessionTime(clock, p.deviceS) - p.trueS;
  });
};

const final: Method = (run, kind, answers) => {
  const fit = fitWhole(run, kind, answers);
  return run.map((p) => fit.slope * p.deviceS + fit.offset - p.trueS);
};

const METHODS = { naive, leastSquares, live, final };
export type MethodName = keyof typeof METHODS;

export interface Spread {
  readonly medianMs: number;
  readonly p95Ms: number;
}

/** Absolute error between two sensors over the same link kind, after the first 10 s, over several seeds. */
export function betweenSensors(
  method: MethodName,
  link: Omit<Link, 'seed'>,
  seeds: number,
  kind: DeviceClock = 'stamped',
): Spread {
  const errors: number[] = [];
  for (let seed = 1; seed <= seeds; seed++) {
    const run = (s: number, ppm: number): number[] =>
      METHODS[method](
        [...packets({ ...link, ppm, seed: s })],
        kind,
        link.asked ? [...answers({ ...link, ppm, seed: s })] : [],
      );
    const a = run(2 * seed, link.ppm);
    const b = run(2 * seed + 1, -link.ppm / 2);
    for (let i = Math.ceil(10 * link.rateHz); i < Math.min(a.length, b.length); i += 7)
      errors.push(Math.abs((a[i] ?? 0) - (b[i] ?? 0)) * 1000);
  }
  return { medianMs: percentile(errors, 0.5) ?? NaN, p95Ms: percentile(errors, 0.95) ?? NaN };
}
