import type { SensorRole } from '../../sample.ts';
import type { LinkState, SensorSource, SourceListener } from '../source.ts';
import {
  type Arrival,
  type ReplayInput,
  createArrivalOrder,
  takeInput,
  takeRest,
} from './arrivals.ts';

export interface ReplayOptions {
  /** A recording's samples and events in order of session time. */
  readonly inputs: AsyncIterable<readonly ReplayInput[]>;
  /** Sensors that the recording has, with what is known of them. */
  readonly sensors: Partial<
    Record<SensorRole, { readonly name: string; readonly nominalRateHz: number | null }>
  >;
  /** Times as fast as life; default 1. `Infinity` does not wait at all. */
  readonly speed?: number;
  /** The recording itself is simulated; default false. It is a replay in any case. */
  readonly simulated?: boolean;
}

/** Most packets handed over before the event loop gets its turn. */
const MOST_AT_ONCE = 400;

/** Plays a recording as if its sensors were worn now: packet by packet in the order in which they arrived. */
export class ReplaySource implements SensorSource {
  readonly kind = 'replay';
  readonly simulated: boolean;
  readonly #options: ReplayOptions;
  readonly #speed: number;
  #stopped = false;
  #running: Promise<void> | null = null;
  #wake: () => void = () => {};

  /** @throws RangeError where the speed is not above 0. */
  constructor(options: ReplayOptions) {
    this.#options = options;
    this.#speed = options.speed ?? 1;
    if (!(this.#speed > 0)) throw new RangeError(`speed must be above 0, not ${this.#speed}`);
    this.simulated = options.simulated ?? false;
  }

  start(listener: SourceListener): void {
    if (this.#running !== null) throw new Error('the source has been started already');
    this.#report(listener, 'streaming', null);
    this.#running = this.#run(listener);
  }

  async stop(): Promise<void> {
    this.#stopped = true;
    this.#wake();
    await this.#running;
  }

  async #run(listener: SourceListener): Promise<void> {
    let error: string | null = null;
    try {
      await this.#play(listener);
    } catch (caught) {
      error = caught instanceof Error ? caught.message : String(caught);
    }
    if (this.#stopped) return;
    this.#report(listener, 'ended', error ?? 'The recording is over.');
    listener.end(error);
  }

  async #play(listener: SourceListener): Promise<void> {
    const startedMs = performance.now();
    let firstS: number | null = null;
    let atOnce = 0;
    for await (const arrival of arrivalsOf(this.#options.inputs)) {
      firstS ??= arrival.atS;
      const dueMs = startedMs + ((arrival.atS - firstS) / this.#speed) * 1000;
      const waitMs = dueMs - performance.now();
      if (waitMs > 1 || ++atOnce >= MOST_AT_ONCE) {
        await this.#pause(waitMs);
        atOnce = 0;
      }
      if (this.#stopped) return;
      if (arrival.kind === 'event') listener.event(arrival.event);
      else listener.samples(arrival.samples);
    }
  }

  #pause(ms: number): Promise<void> {
    return new Promise((resolve) => {
      if (this.#stopped) return resolve();
      if (ms <= 1) return void setImmediate(resolve);
      const timer = setTimeout(resolve, ms);
      this.#wake = () => {
        clearTimeout(timer);
        resolve();
      };
    });
  }

  #report(listener: SourceListener, state: LinkState, reason: string | null): void {
    for (const [sensor, known] of Object.entries(this.#options.sensors))
      listener.link({
        sensor: sensor as SensorRole,
        state,
        name: known.name,
        reason,
        batteryPct: null,
        rssiDbm: null,
        nominalRateHz: known.nominalRateHz,
      });
  }
}

async function* arrivalsOf(inputs: AsyncIterable<readonly ReplayInput[]>): AsyncGenerator<Arrival> {
  const order = createArrivalOrder();
  for await (const batch of inputs) for (const input of batch) yield* takeInput(order, input);
  yield* takeRest(order);
}
