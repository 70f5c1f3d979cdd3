import type { Answer } from '../../clock/asked.ts';
import {
  breakStream,
  countMalformed,
  createStream,
  type StreamState,
  takeClock,
  takePacket,
} from '../../clock/stream.ts';
import { type Decoder, PacketError } from '../../decode/packet.ts';
import type { ImuSample, SensorRole } from '../../sample.ts';
import type { StreamSetup } from './drivers/driver.ts';
import { driverOf } from './drivers/drivers.ts';
import type { Wish } from './messages.ts';

/** One sensor's bytes to samples, over any number of connections. */
export class Reception {
  readonly role: SensorRole;
  readonly wish: Wish;
  stream: StreamState | null = null;
  #decoder: Decoder<unknown> | null = null;
  #state: unknown = null;

  constructor(role: SensorRole, wish: Wish) {
    this.role = role;
    this.wish = wish;
  }

  /** A new connection of the same format goes on with the clock it had; only half packets are dropped. */
  connect(setup: StreamSetup): void {
    const decoder = driverOf(this.wish.driver).decoder(setup);
    this.#decoder = decoder;
    this.#state = decoder.create();
    const { stream } = this;
    const same = stream && JSON.stringify(stream.format) === JSON.stringify(decoder.format);
    if (same) breakStream(stream);
    else this.stream = createStream(this.role, decoder.format);
  }

  /** Malformed bytes give no sample and are counted. */
  take(bytes: Uint8Array, arrivalS: number): ImuSample[] {
    const { stream } = this;
    if (!stream || !this.#decoder) return [];
    try {
      return this.#decoder
        .decode(this.#state, bytes)
        .flatMap((packet) => takePacket(stream, packet, arrivalS));
    } catch (error) {
      if (!(error instanceof PacketError)) throw error;
      countMalformed(stream, error);
      return [];
    }
  }

  /** The device told its clock when it was asked. */
  answered(ticks: number, sentS: number): Answer | null {
    return this.stream && takeClock(this.stream, ticks, sentS);
  }
}
