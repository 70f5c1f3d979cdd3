import type { CalibrationQuality } from '../body/calibrationResult.ts';
import type { CarryOver, JudgedRepetition, Ledger, SafetyWarning } from '../coaching/judgement.ts';

export type { JudgedRepetition } from '../coaching/judgement.ts';

export interface SensorQuality {
  /** Measured from the sensor's own times, Hz; `null` for fewer than two samples. */
  readonly rateHz: number | null;
  readonly lostPct: number;
  /** Losses too long to interpolate. */
  readonly gaps: readonly { readonly fromS: number; readonly toS: number }[];
  /** Samples with a count at the end of its range. */
  readonly saturated: number;
  /** Spread (95th percentile) of session time against the device clock's straight line, ms; `null` without device time. */
  readonly clockResidualMs: number | null;
}

/** Raised when the same recording gives other numbers than before. */
export const ANALYSIS = 2;

/** What made a result. */
export interface MadeBy {
  /** Version of the program. */
  readonly version: string;
  /** Of the analysis: the same one gives the same numbers. */
  readonly analysis: number;
  /** Events that it knew. */
  readonly events: number;
}

/** The result of one session; `stillcatch analyse --json`. Times are session s; numbers finite or null. */
export interface AnalysisResult {
  readonly schema: 1;
  readonly session: {
    readonly id: string;
    readonly hand: 'left' | 'right';
    readonly durationS: number;
  };
  readonly calibration: CalibrationQuality;
  readonly quality: { readonly chest: SensorQuality; readonly trailArm: SensorQuality };
  readonly repetitions: readonly JudgedRepetition[];
  readonly ledger: Ledger;
  readonly carryOver: CarryOver;
  readonly warnings: readonly SafetyWarning[];
  /** Left out by the versions that did not keep it. */
  readonly madeBy?: MadeBy;
  /** In `analyse --json` where the result kept with the recording is another one: why, in a sentence. */
  readonly differsFromKept?: string;
}

/** With the warnings that were told before the start. */
export const withSaid = (
  result: AnalysisResult,
  said: readonly SafetyWarning[],
): AnalysisResult => ({
  ...result,
  warnings: [...result.warnings, ...said].sort((a, b) => a.atS - b.atS),
});
