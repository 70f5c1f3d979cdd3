import { fileURLToPath } from 'node:url';
import type { DriverKind } from '../../src/sensors/sources/ble/drivers/driver.ts';
import type { RadioProcessOptions } from '../../src/sensors/sources/ble/radioProcess.ts';

/** What stands around the adapter of a radio process under test; plain data, for an environment variable. */
export interface Room {
  readonly sensors: readonly {
    readonly kind: DriverKind;
    readonly address: string;
    readonly name?: string;
    readonly ppm?: number;
    readonly perPacket?: number;
    /** Notifications that it can hold; default 60. */
    readonly buffer?: number;
    /** Default: readings that count up, for order and loss. */
    readonly motion?: 'still' | 'tapped';
  }[];
  /** Where a `Body` moves the sensors (open profile) that have no motion of their own. */
  readonly body?: string;
  /** Whole times as fast as life; default 1. */
  readonly speed?: number;
  readonly seed?: number;
  readonly loss?: number;
  readonly script?: readonly {
    readonly atMs: number;
    readonly sensor: number;
    readonly action: 'drop' | 'off' | 'on';
  }[];
}

const here = (name: string): string => fileURLToPath(new URL(name, import.meta.url));
const preloaded = (name: string): string[] => ['--import', 'tsx', '--import', here(name)];

/** A radio process in this room; `null` for a machine without an adapter. */
export const inRoom = (room: Room | null, lock: string): RadioProcessOptions => ({
  execArgv: preloaded('./preload.ts'),
  env: { STILLCATCH_RADIO_LOCK: lock, VIRTUAL_RADIO: room ? JSON.stringify(room) : '' },
});

/** A radio process on a machine where the optional package was left out. */
export const withoutNoble = (lock: string): RadioProcessOptions => ({
  execArgv: preloaded('./withoutOptional.ts'),
  env: { STILLCATCH_RADIO_LOCK: lock },
});
