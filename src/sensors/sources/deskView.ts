import type { SensorRole } from '../sample.ts';
import type { LinkState } from './source.ts';

// What the sensors page shows and may ask for; plain data, for the service and the browser alike.

/** One thing to do. */
export interface MendStep {
  readonly say: string;
  /** The command to type; `null` where there is none. */
  readonly run: string | null;
}

/** Why no sensor can be reached, and what to do about it. */
export interface DeskProblem {
  readonly message: string;
  readonly mend: readonly MendStep[];
  /** The system's own words; empty where it gave none. */
  readonly detail: string;
}

export interface DeskSensor {
  readonly id: string;
  readonly name: string;
  /** What kind it is, in words. */
  readonly kind: string;
  /** Where it is worn; `null` while nobody said. */
  readonly role: SensorRole | null;
  readonly state: LinkState;
  readonly reason: string | null;
  /** While `retrying`: from when it was told, so long until the next try. */
  readonly retryInMs: number | null;
  readonly batteryPct: number | null;
  readonly rssiDbm: number | null;
  readonly nominalRateHz: number | null;
  /** Over the last whole seconds; `null` before there is one. */
  readonly measuredRateHz: number | null;
  readonly lostPct: number | null;
  readonly lastPacketAgeMs: number | null;
  readonly clockResidualMs: number | null;
  readonly malformed: number;
  readonly canBlink: boolean;
  /** Angular speed, deg/s, every `TRACE_STEP_S` over the last `TRACE_S`, oldest first; `null` where nothing came. */
  readonly trace: readonly (number | null)[];
}

export const TRACE_S = 5;
export const TRACE_STEP_S = 0.05;

export type DeskSync =
  | { readonly state: 'idle' }
  | { readonly state: 'listening'; readonly leftS: number }
  | { readonly state: 'done'; readonly offsetMs: number; readonly taps: number }
  | { readonly state: 'failed'; readonly reason: string };

export interface DeskView {
  readonly problem: DeskProblem | null;
  readonly ready: boolean;
  readonly searching: boolean;
  /** A practice with these sensors runs: no search, it would disturb the links. */
  readonly recording: boolean;
  /** Worn ones first. */
  readonly sensors: readonly DeskSensor[];
  /** The one that is clearly being moved now. */
  readonly shaken: string | null;
  /** Waits for a tap on the sensor to be worn here. */
  readonly tapFor: SensorRole | null;
  /** The last such wait ended without a tap that was clearly one sensor's. */
  readonly tapMissed: SensorRole | null;
  /** Why it will not be remembered who is worn where, in words; `null` where it will. */
  readonly notKept: string | null;
  readonly sync: DeskSync;
}

export type DeskCommand =
  | { readonly type: 'open' | 'close' | 'swap' | 'cancel-tap' | 'sync' }
  | { readonly type: 'assign'; readonly id: string; readonly role: SensorRole }
  | { readonly type: 'assign-by-tap'; readonly role: SensorRole }
  | { readonly type: 'forget' | 'identify'; readonly id: string };
