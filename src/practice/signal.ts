import type { Answer } from '../sensors/clock/asked.ts';
import type { ImuSample, SensorRole } from '../sensors/sample.ts';
import type { SessionEvent } from '../sensors/sessionEvent.ts';
import type { SensorLink } from '../sensors/sources/source.ts';

/** What a source or the guide said, with the host's time of arrival; a recorder can keep it. */
export type SourceSignal =
  | { readonly kind: 'samples'; readonly atMs: number; readonly batch: readonly ImuSample[] }
  | { readonly kind: 'event'; readonly atMs: number; readonly event: SessionEvent }
  | {
      readonly kind: 'answer';
      readonly atMs: number;
      readonly sensor: SensorRole;
      readonly answer: Answer;
    }
  | { readonly kind: 'link'; readonly atMs: number; readonly link: SensorLink }
  | { readonly kind: 'end'; readonly atMs: number; readonly error: string | null }
  | { readonly kind: 'tick'; readonly atMs: number };

export type SignalOf<K extends SourceSignal['kind']> = Extract<SourceSignal, { kind: K }>;
