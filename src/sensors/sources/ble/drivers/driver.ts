import type { Decoder } from '../../../decode/packet.ts';

export const DRIVER_KINDS = ['openProfile', 'witMotion', 'movesense'] as const;
export type DriverKind = (typeof DRIVER_KINDS)[number];

export interface Advertisement {
  readonly name: string;
  /** Lower case, without dashes; 16-bit ones as four digits. */
  readonly serviceUuids: readonly string[];
}

/** GATT of one connected sensor. Every call ends: with a result, a time limit or the end of the link. */
export interface Gatt {
  has(characteristic: string): boolean;
  read(characteristic: string): Promise<Uint8Array>;
  write(characteristic: string, bytes: Uint8Array | readonly number[]): Promise<void>;
  /** One subscription per connection; `onBytes` is in place before it is asked for. */
  subscribe(characteristic: string, onBytes: (bytes: Uint8Array) => void): Promise<void>;
}

/** What preparing found out, as plain data: all that the decoder needs. */
export interface StreamSetup {
  readonly rateHz: number;
  /** Description read from the device, where it has one. */
  readonly info: Uint8Array | null;
}

/** One kind of sensor. To add one: a decoder, a driver file, a line in `drivers.ts`, a test of each. */
export interface Driver {
  readonly kind: DriverKind;
  /** What a person calls it. */
  readonly label: string;
  /** Connection interval to ask for, units of 1.25 ms. */
  readonly interval: { readonly min: number; readonly max: number };
  matches(advertisement: Advertisement): boolean;
  /** Services to look through, main one first; it must be there, others may be. */
  readonly services: readonly string[];
  prepare(gatt: Gatt, onBytes: (bytes: Uint8Array) => void): Promise<StreamSetup>;
  /** Makes the sensor show itself; `null` where it cannot. */
  readonly identify: ((gatt: Gatt) => Promise<void>) | null;
  /** The device's clock as it stands when it answers, raw ticks; `null` where it cannot tell. */
  readonly askClock: ((gatt: Gatt) => Promise<number | null>) | null;
  decoder(setup: StreamSetup): Decoder<unknown>;
}

export const BATTERY_SERVICE = '180f';
export const BATTERY_LEVEL = '2a19';
