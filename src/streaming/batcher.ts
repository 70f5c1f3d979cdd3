import { type CurveColumns, appendCurve, emptyCurve } from '../practice/curve.ts';
import type { PracticeChange } from '../practice/livePractice.ts';
import type { Section } from '../practice/reduce.ts';
import {
  BATCHES_PER_SECOND,
  type Batch,
  MAX_BATCH_POINTS,
  type PracticeView,
  type ServiceClock,
} from './contract.ts';

/** What waits to be sent, and when the last ones went. */
export interface Batcher {
  sequence: number;
  sections: Set<Section>;
  points: CurveColumns;
  urgent: boolean;
  /** Times of the batches of the last second, ms. */
  readonly sentMs: number[];
}

/** Display goes at this pace, so that a few batches of each second are left for what is urgent. */
const PACE_MS = 40;
const URGENT: readonly Section[] = [
  'stage',
  'strip',
  'last',
  'ledger',
  'warnings',
  'calibration',
  'source',
];

export const newBatcher = (): Batcher => ({
  sequence: 0,
  sections: new Set(),
  points: emptyCurve(),
  urgent: false,
  sentMs: [],
});

/** Notes a change. `phaseChanged`: another phase, not only a longer hold. */
export function noteChange(batcher: Batcher, change: PracticeChange, phaseChanged: boolean): void {
  for (const section of change.sections) batcher.sections.add(section);
  appendCurve(batcher.points, change.points);
  batcher.urgent ||= phaseChanged || URGENT.some((section) => change.sections.has(section));
}

/** Ms to wait before the next batch may go; `null` where nothing waits. */
export function waitMs(batcher: Batcher, nowMs: number): number | null {
  if (batcher.sections.size === 0 && batcher.points.timeS.length === 0) return null;
  while ((batcher.sentMs[0] ?? nowMs) <= nowMs - 1000) batcher.sentMs.shift();
  const oldest = batcher.sentMs[0];
  if (batcher.sentMs.length >= BATCHES_PER_SECOND && oldest !== undefined) {
    return oldest + 1000 - nowMs;
  }
  const last = batcher.sentMs.at(-1);
  return batcher.urgent || last === undefined ? 0 : Math.max(0, last + PACE_MS - nowMs);
}

/** What waits need not be sent any more. */
export function forgetWaiting(batcher: Batcher): void {
  batcher.sections = new Set();
  batcher.points = emptyCurve();
  batcher.urgent = false;
}

const tail = <T>(column: readonly T[]): readonly T[] => column.slice(-MAX_BATCH_POINTS);

/** More curve points wait than one batch may carry: only a snapshot has them all. */
export const isTooLong = ({ points }: Batcher): boolean => points.timeS.length > MAX_BATCH_POINTS;

/** Takes what waits as one batch. */
export function takeBatch(batcher: Batcher, view: PracticeView, clock: ServiceClock): Batch {
  const changed = [...batcher.sections].filter((section) => section !== 'curve');
  const { timeS, flexionDeg, turnDeg, keptRotationDeg } = batcher.points;
  const batch = {
    sequence: ++batcher.sequence,
    clock,
    sections: Object.fromEntries(changed.map((section) => [section, view[section]])),
    points: {
      timeS: tail(timeS),
      flexionDeg: tail(flexionDeg),
      turnDeg: tail(turnDeg),
      keptRotationDeg: tail(keptRotationDeg),
    },
  };
  forgetWaiting(batcher);
  batcher.sentMs.push(clock.atMs);
  return batch;
}
