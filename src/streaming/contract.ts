import type { HostCommand } from '../practice/host.ts';
import type { CurveView, PracticeView } from '../practice/view.ts';
import type { DeskCommand, DeskView } from '../sensors/sources/deskView.ts';

export * from '../practice/calibrationSteps.ts';
export type { GuideView } from '../practice/guide/guide.ts';
export type { GuideStep } from '../practice/guide/steps.ts';
export type { RepetitionMoments } from '../practice/moments.ts';
export type { PoseView } from '../practice/pose.ts';
export {
  DISK_TEXTS,
  type DiskKey,
  KEEPING_TEXTS,
  type KeepingKey,
} from '../practice/keepingTexts.ts';
export { REFUSALS as REFUSAL_TEXTS, type RefusalKey } from '../practice/refusals.ts';
export * from '../practice/stops.ts';
export { sensorProblems } from '../practice/sensorCheck.ts';
export * from '../practice/view.ts';
export * from '../sensors/sources/deskView.ts';
export * from '../sensors/sources/radioTexts.ts';

/** Most batches a client gets in any second. */
export const BATCHES_PER_SECOND = 30;
/** No message from the service is larger than this, in bytes of JSON. */
export const MAX_MESSAGE_BYTES = 131_072;
/** No message from a page may be larger than this; the service hangs up on a larger one. */
export const MAX_COMMAND_BYTES = 16_384;
/** Batches that may be under way to one page before it counts as slow. */
export const MAX_UNSEEN = 12;
/** Most new curve points in one batch; a page that missed more gets a snapshot. */
export const MAX_BATCH_POINTS = 120;

/** Every page hears from the service at least this often, ms; one that hears nothing for longer knows that it is alone. */
export const ALIVE_EVERY_MS = 500;

/** The service's clocks at the moment a message was made. */
export interface ServiceClock {
  /** Monotonic, ms. */
  readonly atMs: number;
  /** Session time of the practice under way, s. */
  readonly sessionS: number;
}

/** What changed since the last batch: whole sections replace the page's own, `points` are appended to its curve. */
export interface Batch {
  readonly sequence: number;
  readonly clock: ServiceClock;
  readonly sections: Partial<Omit<PracticeView, 'curve'>>;
  readonly points: CurveView;
}

export interface Snapshot {
  /** Sequence of the last batch that is already in it. */
  readonly sequence: number;
  readonly clock: ServiceClock;
  /** Which run of the service this is: another one after a restart. */
  readonly service: string;
  readonly view: PracticeView;
}

/** What a page may ask for. */
export type Command = HostCommand;

export type CommandReply =
  { readonly ok: true } | { readonly ok: false; /** In words. */ readonly error: string };

export interface ServerEvents {
  /** On every connect, and to a page that fell behind. */
  snapshot(snapshot: Snapshot): void;
  batch(batch: Batch): void;
  /** Says only that the service runs. */
  alive(): void;
  /** To pages that opened the sensors page, a few times a second. */
  desk(view: DeskView): void;
}

export interface ClientEvents {
  command(command: Command, reply: (reply: CommandReply) => void): void;
  /** The page has taken everything up to this sequence. */
  seen(sequence: number): void;
  desk(command: DeskCommand, reply: (reply: CommandReply) => void): void;
}
