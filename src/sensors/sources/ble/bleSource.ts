import {
  breakStream,
  countMalformed,
  createStream,
  type StreamHealth,
  streamHealth,
  type StreamState,
  takePacket,
} from '../../clock/stream.ts';
import { type Decoder, PacketError } from '../../decode/packet.ts';
import type { SensorRole } from '../../sample.ts';
import type { SensorLink, SensorSource, SourceListener } from '../source.ts';
import type { StreamSetup } from './drivers/driver.ts';
import { driverOf } from './drivers/drivers.ts';
import type { Wish } from './messages.ts';
import type { LinkStatus, Radio } from './radio.ts';

export interface Assignment {
  readonly role: SensorRole;
  readonly sensor: Wish;
}

/** One sensor of a session. */
interface Worn {
  readonly role: SensorRole;
  readonly wish: Wish;
  stream: StreamState | null;
  decoder: Decoder<unknown> | null;
  decoderState: unknown;
}

export interface BleSource extends SensorSource {
  readonly kind: 'ble';
  /** For each sensor that has connected at least once. */
  health(): Partial<Record<SensorRole, StreamHealth>>;
}

const sameFormat = (a: StreamState | null, decoder: Decoder<unknown>): a is StreamState =>
  a !== null && JSON.stringify(a.format) === JSON.stringify(decoder.format);

/** A connection of the same kind goes on with the clock it had; only half packets are dropped. */
function connect(worn: Worn, setup: StreamSetup): void {
  const decoder = driverOf(worn.wish.driver).decoder(setup);
  worn.decoder = decoder;
  worn.decoderState = decoder.create();
  if (sameFormat(worn.stream, decoder)) breakStream(worn.stream);
  else worn.stream = createStream(worn.role, decoder.format);
}

function decode(worn: Worn, bytes: Uint8Array, arrivalS: number): ReturnType<typeof takePacket> {
  const { stream, decoder } = worn;
  if (!stream || !decoder) return [];
  try {
    return decoder
      .decode(worn.decoderState, bytes)
      .flatMap((packet) => takePacket(stream, packet, arrivalS));
  } catch (error) {
    if (!(error instanceof PacketError)) throw error;
    countMalformed(stream, error);
    return [];
  }
}

const linkOf = (worn: Worn, status: LinkStatus): SensorLink => ({
  sensor: worn.role,
  state: status.state,
  name: worn.wish.name,
  reason: status.reason,
  batteryPct: status.batteryPct,
  rssiDbm: status.rssiDbm,
  nominalRateHz: worn.stream?.format.rateHz ?? null,
});

/**
 * Samples of the assigned sensors in session time; onset is the call of `start`.
 * A link that comes and goes never ends the source.
 */
export function createBleSource(
  radio: Radio,
  assignments: readonly Assignment[],
  nowMs: () => number,
): BleSource {
  const worn = new Map<string, Worn>();
  for (const { role, sensor } of assignments)
    worn.set(sensor.id, { role, wish: sensor, stream: null, decoder: null, decoderState: null });
  let onsetMs = nowMs();
  let undo: (() => void)[] = [];

  const start = (listener: SourceListener): void => {
    onsetMs = nowMs();
    for (const w of worn.values()) w.stream = null;
    for (const link of radio.status.links) {
      const w = worn.get(link.wish.id);
      if (w && link.setup) connect(w, link.setup);
    }
    undo = [
      radio.listen({
        link(status) {
          const w = worn.get(status.wish.id);
          if (w) listener.link(linkOf(w, status));
        },
        setup(id, setup) {
          const w = worn.get(id);
          if (w) connect(w, setup);
        },
        packet(id, atMs, bytes) {
          const w = worn.get(id);
          const arrivalS = (atMs - onsetMs) / 1000;
          const samples = w && arrivalS >= 0 ? decode(w, bytes, arrivalS) : [];
          if (samples.length > 0) listener.samples(samples);
        },
      }),
      radio.hold(assignments.map((a) => a.sensor)),
      radio.beginRecording(),
    ];
    for (const link of radio.status.links) {
      const w = worn.get(link.wish.id);
      if (w) listener.link(linkOf(w, link));
    }
  };

  return {
    kind: 'ble',
    simulated: false,
    start,
    async stop() {
      for (const f of undo.splice(0)) f();
    },
    health() {
      const nowS = (nowMs() - onsetMs) / 1000;
      const all: Partial<Record<SensorRole, StreamHealth>> = {};
      for (const w of worn.values()) if (w.stream) all[w.role] = streamHealth(w.stream, nowS);
      return all;
    },
  };
}
