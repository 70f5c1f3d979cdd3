import { type FullScale, readingAt, viewOf } from './counts.ts';
import { type Decoder, type Packet, PacketError } from './packet.ts';

// Frame `55 61` + acc, gyro, angle as 9 int16 LE; acc/32768 x 16 g, gyro/32768 x 2000 deg/s.
// Source: WITMOTION/WitBluetooth_BWT901BLE5_0. No counter, no time, no check sum.
const START = 0x55;
const DATA = 0x61;
/** Answer to a register read; same length, no motion in it. */
const REGISTER = 0x71;
const FRAME = 20;
const FULL_SCALE: FullScale = { accG: 16, gyroDegPerS: 2000 };

export interface WitMotionState {
  /** Bytes of a frame whose end has not come yet. */
  rest: number[];
}

const isKind = (byte: number | undefined): boolean => byte === DATA || byte === REGISTER;

const startsFrame = (bytes: readonly number[], at: number): boolean =>
  bytes[at] === START && (at + 1 === bytes.length || isKind(bytes[at + 1]));

function packetOf(frame: readonly number[]): Packet {
  const view = viewOf(Uint8Array.from(frame));
  return { readings: [readingAt(view, 2, FULL_SCALE)], sequence: null, ticks: null };
}

/** The rest of a lost frame must not be glued to a notification that stands alone: there is no check sum. */
function joined(rest: readonly number[], bytes: Uint8Array): number[] {
  const fresh = [...bytes];
  const standsAlone = fresh.length % FRAME === 0 && startsFrame(fresh, 0);
  return standsAlone ? fresh : [...rest, ...fresh];
}

function headerError(all: readonly number[], at: number): PacketError {
  return new PacketError('header', `Frame starts with ${all[at]} ${all[at + 1]}, not 85 97`);
}

/** A frame may be split over two notifications and one notification may hold several frames. */
function decode(state: WitMotionState, bytes: Uint8Array): Packet[] {
  const all = joined(state.rest, bytes);
  state.rest = [];
  const packets: Packet[] = [];
  for (let at = 0; at < all.length; at += FRAME) {
    if (!startsFrame(all, at)) {
      if (packets.length === 0) throw headerError(all, at);
      break;
    }
    if (at + FRAME > all.length) state.rest = all.slice(at);
    else if (all[at + 1] === DATA) packets.push(packetOf(all.slice(at, at + FRAME)));
  }
  return packets;
}

/** WitMotion's BLE 5 family at the rate it was set to. */
export const witMotionDecoder = (rateHz: number): Decoder<WitMotionState> => ({
  format: { rateHz, ticks: null, sequenceModulus: null },
  create: () => ({ rest: [] }),
  decode,
});
