import type { Plan } from '../../coaching/plan.ts';
import type { LabelKind } from '../../streaming/hubContract/review.ts';
import type { SessionTable, WarningTable } from '../db/tables.ts';
import type { SessionPaths } from '../sessionPaths.ts';

/** What a worker is asked to do. */
export interface Job {
  readonly sessionId: string;
  readonly paths: SessionPaths;
  readonly plan: Plan;
  readonly labels: readonly { readonly topS: number; readonly kind: LabelKind }[];
}

/** Columns of the session that follow from its analysis. */
export type ResultColumns = Pick<
  SessionTable,
  | 'durationS'
  | 'analysed'
  | 'version'
  | 'problem'
  | 'rehearsals'
  | 'scored'
  | 'passed'
  | 'balls'
  | 'practiceSwings'
  | 'ballsInMix'
  | 'ledger'
  | 'warnings'
  | 'spreads'
  | 'carryOver'
  | 'differences'
>;

export type JobWarning = Pick<WarningTable, 'warningId' | 'atS' | 'text'>;

export interface JobFailure {
  readonly ok: false;
  readonly problem: string;
  /** It would fail again, the recording itself is why. */
  readonly lasting: boolean;
  /** The disk is full: once there is room, it may well succeed. */
  readonly noRoom: boolean;
}

export type JobAnswer =
  | {
      readonly ok: true;
      readonly columns: ResultColumns;
      readonly warnings: readonly JobWarning[];
    }
  | JobFailure;
