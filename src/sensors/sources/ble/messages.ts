import type { DriverKind, StreamSetup } from './drivers/driver.ts';
import type { RadioProblemCode } from './problem.ts';
import type { LinkState } from '../source.ts';

/** A sensor that should be kept connected. */
export interface Wish {
  /** The radio's own name for it; the same on the same computer. */
  readonly id: string;
  readonly driver: DriverKind;
  readonly name: string;
}

/** From the service to the radio's process. */
export type ToRadio =
  | { readonly type: 'want'; readonly wishes: readonly Wish[] }
  /** Look for sensors that nobody asked for, too. */
  | { readonly type: 'scan'; readonly on: boolean }
  | { readonly type: 'identify'; readonly id: string }
  /** Links that a dead process left behind in the adapter. */
  | { readonly type: 'hangUp'; readonly handles: readonly number[] };

/** From the radio's process to the service. Times are of the shared monotonic clock, ms. */
export type FromRadio =
  | { readonly type: 'adapter'; readonly problem: RadioProblemCode | null; readonly detail: string }
  | {
      readonly type: 'seen';
      readonly id: string;
      readonly name: string;
      readonly driver: DriverKind;
      readonly rssiDbm: number;
    }
  | {
      readonly type: 'link';
      readonly id: string;
      readonly state: LinkState;
      readonly reason: string | null;
      /** For `retrying`: in how many ms. */
      readonly retryInMs: number | null;
    }
  | { readonly type: 'setup'; readonly id: string; readonly setup: StreamSetup }
  | {
      readonly type: 'packet';
      readonly id: string;
      readonly atMs: number;
      readonly bytes: Uint8Array;
    }
  /** The device answered a question that left at `sentMs`: its clock stood at `ticks`, raw. */
  | {
      readonly type: 'clock';
      readonly id: string;
      readonly sentMs: number;
      readonly ticks: number;
    }
  | { readonly type: 'battery'; readonly id: string; readonly pct: number }
  | { readonly type: 'rssi'; readonly id: string; readonly rssiDbm: number }
  /** The adapter's number of an open link; `null` when it is closed. */
  | { readonly type: 'handle'; readonly id: string; readonly handle: number | null }
  /** The adapter came back or a link hangs: only a new process has a clean radio stack. */
  | { readonly type: 'startMeAgain' };

/** Both processes read the same monotonic clock of the machine. */
export const monotonicMs = (): number => Number(process.hrtime.bigint() / 1000n) / 1000;
