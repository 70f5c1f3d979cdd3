import type { Vec3 } from '../../math/vec3.ts';
import type { DeviceClock } from '../clock/clock.ts';

/** One reading in the sensor's own frame, SI: specific force m/s^2, angular rate rad/s. */
export interface Reading {
  readonly acc: Vec3;
  readonly gyro: Vec3;
  /** A raw value stood at the end of its range. */
  readonly saturated: boolean;
}

/** What one notification, or the last of several, carried. */
export interface Packet {
  /** Oldest first; at least one. */
  readonly readings: readonly Reading[];
  /** The device's packet counter, raw; `null` where it has none. */
  readonly sequence: number | null;
  /** The device's clock at the first reading, raw ticks; `null` where it has none. */
  readonly ticks: number | null;
}

export type PacketErrorCode = 'length' | 'version' | 'count' | 'header' | 'value' | 'continuation';

/** The only error a decoder throws: bytes that are not what the firmware's description says. */
export class PacketError extends Error {
  readonly code: PacketErrorCode;
  constructor(code: PacketErrorCode, message: string) {
    super(message);
    this.name = 'PacketError';
    this.code = code;
  }
}

/** What a stream's numbers mean; from the device itself or from its description. */
export interface StreamFormat {
  /** Nominal, Hz. */
  readonly rateHz: number;
  /** Ticks of the device's clock in a second and where it wraps; `null` for a device without one. */
  readonly ticks: { readonly perS: number; readonly modulus: number } | null;
  /** Where the packet counter wraps; `null` for a device without one. */
  readonly sequenceModulus: number | null;
}

export const deviceClock = (format: StreamFormat): DeviceClock =>
  format.ticks ? 'stamped' : 'counted';

/** Bytes of one device to readings. `State` is plain data and updated in place. */
export interface Decoder<State> {
  readonly format: StreamFormat;
  create(): State;
  /**
   * @param bytes one notification
   * @returns the packets it completes, often one, sometimes none
   * @throws PacketError and nothing else; the state is then ready for the next notification
   */
  decode(state: State, bytes: Uint8Array): Packet[];
}
