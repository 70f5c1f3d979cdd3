import type { Answer } from '../clock/asked.ts';
import type { ImuSample, SensorRole } from '../sample.ts';
import type { SessionEvent } from '../sessionEvent.ts';

export type LinkState =
  'searching' | 'found' | 'connecting' | 'preparing' | 'streaming' | 'lost' | 'retrying' | 'ended';

/** What a source knows of one sensor's link, beyond its samples. */
export interface SensorLink {
  readonly sensor: SensorRole;
  readonly state: LinkState;
  readonly name: string;
  /** Tells this sensor from all others; left out where the name has to do. */
  readonly id?: string;
  /** Why it is lost, or what is going on, in words; `null` where there is nothing to say. */
  readonly reason: string | null;
  /** 0-100, `null` where not known. */
  readonly batteryPct: number | null;
  /** Received signal strength, dBm; `null` where not known. */
  readonly rssiDbm: number | null;
  /** Rate the device was asked for, Hz; `null` where not known. */
  readonly nominalRateHz: number | null;
}

export interface SourceListener {
  /** One packet's samples, oldest first, all of one sensor. */
  samples(batch: readonly ImuSample[]): void;
  event(event: SessionEvent): void;
  /** What a device answered to a question for its time, for the recording. */
  answer?(sensor: SensorRole, answer: Answer): void;
  link(link: SensorLink): void;
  /** No more will come. `error` in words where it ended badly. */
  end(error: string | null): void;
}

/** Where samples come from. No caller knows which kind it has. */
export interface SensorSource {
  readonly kind: 'synthetic' | 'replay' | 'ble';
  /** Shown to the person: true for every source that is not a live body. */
  readonly simulated: boolean;
  start(listener: SourceListener): void;
  stop(): Promise<void>;
  /**
   * Tells a simulated golfer what a live one has just been asked to do: a step of the guided start, or
   * `practise` or `rest`. Live sources have no use for it.
   */
  ask?(step: string): void;
}
