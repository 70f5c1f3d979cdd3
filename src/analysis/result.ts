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
}
