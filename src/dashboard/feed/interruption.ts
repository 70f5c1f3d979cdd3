import type { PracticeView, Stage } from '../../streaming/contract.ts';

/** The service was started again while a practice ran in this page. */
export interface Interruption {
  /** Where what was recorded of it lies; `null` where nothing was. */
  readonly sessionId: string | null;
}

const AT_REST: readonly Stage[] = ['idle', 'after', 'over', 'stopped'];

const wasRunning = ({ stage, source }: PracticeView): boolean =>
  !AT_REST.includes(stage) && source.state !== 'ended' && source.state !== 'failed';

/** @param last what the page saw last of the run of the service that ended */
export const interruptionOf = (last: PracticeView): Interruption | null =>
  wasRunning(last) ? { sessionId: last.keeping?.sessionId ?? null } : null;
