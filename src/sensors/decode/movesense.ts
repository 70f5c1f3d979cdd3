import { STANDARD_GRAVITY } from '../../math/gravity.ts';
import { radians } from '../../math/angle.ts';
import { scale, type Vec3, vec3 } from '../../math/vec3.ts';
import { viewOf } from './counts.ts';
import { type Decoder, type Packet, PacketError, type Reading } from './packet.ts';

// `[2, ref, u32 ms, n x 3 f32 acc (m/s^2), n x 3 f32 gyro (deg/s)]`, cut over `[2, ...]` and `[3, ...]` where the
// link's packets are too short. Source: movesense.com GATT SensorData Protocol; sensein/movesense-py docs/movesense-api.md.
const RESPONSE = 1;
const DATA = 2;
const DATA_PART_2 = 3;
const STAMP = 4;
const SAMPLE = 24;
/** Longest believable payload: 64 readings. */
const LONGEST = STAMP + 64 * SAMPLE;
/** Values at or over 99.8 % of the range it was left at (from memory: 8 g and 2000 deg/s) count as clipped. */
const ACC_RAIL = 0.998 * 8 * STANDARD_GRAVITY;
const GYRO_RAIL = 0.998 * 2000;

export interface MovesenseState {
  /** Payload of a first part whose second has not come yet; `null` between packets. */
  pending: number[] | null;
}

const vectorAt = (view: DataView, at: number): Vec3 =>
  vec3(view.getFloat32(at, true), view.getFloat32(at + 4, true), view.getFloat32(at + 8, true));

const largest = (v: Vec3): number => Math.max(Math.abs(v.x), Math.abs(v.y), Math.abs(v.z));

function reading(view: DataView, i: number, n: number): Reading {
  const acc = vectorAt(view, STAMP + 12 * i);
  const gyro = vectorAt(view, STAMP + 12 * (n + i));
  if (!(largest(acc) < 1e4 && largest(gyro) < 1e5))
    throw new PacketError('value', 'Packet with values that no sensor of this kind can give');
  const saturated = largest(acc) >= ACC_RAIL || largest(gyro) >= GYRO_RAIL;
  return { acc, gyro: scale(gyro, radians(1)), saturated };
}

function packetOf(payload: readonly number[]): Packet {
  const view = viewOf(Uint8Array.from(payload));
  const n = (payload.length - STAMP) / SAMPLE;
  const readings = Array.from({ length: n }, (_, i) => reading(view, i, n));
  return { readings, sequence: null, ticks: view.getUint32(0, true) };
}

const isWhole = (length: number): boolean => length > STAMP && (length - STAMP) % SAMPLE === 0;

function take(state: MovesenseState, payload: number[]): Packet[] {
  state.pending = null;
  if (payload.length > LONGEST)
    throw new PacketError('length', `Packet of ${payload.length} bytes is too long`);
  if (isWhole(payload.length)) return [packetOf(payload)];
  state.pending = payload;
  return [];
}

function decode(state: MovesenseState, bytes: Uint8Array): Packet[] {
  if (bytes.length < 2) throw new PacketError('length', `Packet of ${bytes.length} bytes`);
  const payload = [...bytes.subarray(2)];
  switch (bytes[0]) {
    case RESPONSE:
      return [];
    case DATA:
      // A first part still waiting has lost its second; the gap shows in the time stamps.
      return take(state, payload);
    case DATA_PART_2:
      if (!state.pending)
        throw new PacketError('continuation', 'Second part of a packet without the first');
      return take(state, [...state.pending, ...payload]);
    default:
      throw new PacketError('header', `Packet of unknown kind ${bytes[0]}`);
  }
}

/** Movesense's GATT sensor data, path /Meas/IMU6/`rateHz`. */
export const movesenseDecoder = (rateHz: number): Decoder<MovesenseState> => ({
  format: { rateHz, ticks: { perS: 1000, modulus: 2 ** 32 }, sequenceModulus: null },
  create: () => ({ pending: null }),
  decode,
});
