import { carryOver } from '../coaching/carryOver.ts';
import { ledgerOf } from '../coaching/ledger.ts';
import { poolsOf } from '../coaching/pools.ts';
import { standingRepetitions } from './labels.ts';
import { closeCalibration } from './calibrating.ts';
import { sensorQuality } from './quality.ts';
import type { AnalysisResult } from './result.ts';
import type { AnalysisState } from './state.ts';

/** The session's result as it stands. */
export function result(state: AnalysisState, sessionId: string): AnalysisResult {
  const repetitions = standingRepetitions(state);
  const { rehearsals, balls } = poolsOf(repetitions);
  return {
    schema: 1,
    session: { id: sessionId, hand: state.settings.hand, durationS: lastTimeS(state) },
    calibration: closeCalibration(state.calibrating).quality,
    quality: {
      chest: sensorQuality(state.chest.track, state.chest.clock),
      trailArm: sensorQuality(state.trailArm.track, state.trailArm.clock),
    },
    repetitions,
    ledger: ledgerOf(state.ledger),
    carryOver: carryOver(rehearsals, balls),
    warnings: state.warnings,
  };
}

/** Time of the last reading that either sensor's track has taken: a wild stamp is not one. */
export const lastTimeS = ({ chest, trailArm }: AnalysisState): number =>
  Math.max(0, chest.track.last?.timeS ?? 0, trailArm.track.last?.timeS ?? 0);
