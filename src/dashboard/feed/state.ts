import type { PracticeView } from '../../streaming/contract.ts';
import type { Interruption } from './interruption.ts';

/** How the newest message came. Another object for each. */
export interface Arrival {
  readonly kind: 'snapshot' | 'batch';
  /** How much later than the fastest message it came, ms. */
  readonly lateMs: number;
  /** The service's session clock when it was sent, s. */
  readonly sessionS: number;
}

export interface FeedState {
  readonly connection: 'connecting' | 'live' | 'lost';
  /** The newest view; stays while the connection is lost, so that nothing on the screen vanishes. */
  readonly view: PracticeView | null;
  readonly arrival: Arrival | null;
  /** Until another practice begins or the person has read it. */
  readonly interrupted: Interruption | null;
}

export const NOTHING_YET: FeedState = {
  connection: 'connecting',
  view: null,
  arrival: null,
  interrupted: null,
};
