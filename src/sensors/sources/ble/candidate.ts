import { norm, type Vec3 } from '../../../math/vec3.ts';
import { degrees } from '../../../math/angle.ts';
import { type StreamHealth, streamHealth } from '../../clock/stream.ts';
import type { TapTrace } from '../../clock/tapSync.ts';
import type { ImuSample } from '../../sample.ts';
import { createShake, type ShakeState, stepShake } from '../../shake.ts';
import { TRACE_S, TRACE_STEP_S } from '../deskView.ts';
import type { StreamSetup } from './drivers/driver.ts';
import type { Wish } from './messages.ts';
import { Reception } from './reception.ts';

const POINTS = Math.round(TRACE_S / TRACE_STEP_S);

/** A sensor on the sensors page: its packets, drawn and felt, not measured. */
export class Candidate {
  readonly wish: Wish;
  readonly #reception: Reception;
  readonly #shake: ShakeState = createShake();
  #trace: { bin: number; value: number }[] = [];
  #taps: { timeS: number[]; norm: number[] } | null = null;

  constructor(wish: Wish) {
    this.wish = wish;
    // The place does not matter here: nothing of this goes into a session.
    this.#reception = new Reception('chest', wish);
  }

  connect(setup: StreamSetup): void {
    this.#reception.connect(setup);
  }

  get connected(): boolean {
    return this.#reception.stream !== null;
  }

  take(bytes: Uint8Array, arrivalS: number): void {
    for (const sample of this.#reception.take(bytes, arrivalS)) this.#feel(sample);
  }

  answered(ticks: number, sentS: number): void {
    this.#reception.answered(ticks, sentS);
  }

  health(nowS: number): StreamHealth | null {
    const { stream } = this.#reception;
    return stream && streamHealth(stream, nowS);
  }

  /** How much it is being moved, m/s^2; old news counts for nothing. */
  level(nowS: number): number {
    return nowS - (this.#shake.timeS ?? -Infinity) < 0.5 ? this.#shake.level : 0;
  }

  /** Angular speed, deg/s, oldest first; `null` where no data came. */
  trace(nowS: number): (number | null)[] {
    const last = Math.floor(nowS / TRACE_STEP_S);
    const out = new Array<number | null>(POINTS).fill(null);
    for (const { bin, value } of this.#trace) {
      const at = POINTS - 1 - (last - bin);
      if (at >= 0 && at < POINTS) out[at] = Math.round(value);
    }
    return out;
  }

  beginTaps(): void {
    this.#taps = { timeS: [], norm: [] };
  }

  endTaps(): TapTrace {
    const taps = this.#taps ?? { timeS: [], norm: [] };
    this.#taps = null;
    return taps;
  }

  #feel({ timeS, acc, gyro }: ImuSample): void {
    stepShake(this.#shake, timeS, acc);
    this.#taps?.timeS.push(timeS);
    this.#taps?.norm.push(Math.abs(norm(acc) - (this.#shake.restNorm ?? 0)));
    this.#draw(timeS, gyro);
  }

  #draw(timeS: number, gyro: Vec3): void {
    const bin = Math.floor(timeS / TRACE_STEP_S);
    const value = degrees(norm(gyro));
    const newest = this.#trace.at(-1);
    if (newest?.bin === bin) newest.value = Math.max(newest.value, value);
    else this.#trace.push({ bin, value });
    if (this.#trace.length > 2 * POINTS) this.#trace = this.#trace.slice(-POINTS);
  }
}
