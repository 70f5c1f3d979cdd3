import type { Vec3 } from '../math/vec3.ts';
import { type PairingState, createPairing } from '../body/pairing.ts';
import { type LedgerBook, emptyLedger } from '../coaching/ledger.ts';
import { type RangeWatch, startRangeWatch } from '../coaching/rangeWatch.ts';
import type { SafetyWarning } from '../coaching/judgement.ts';
import { type AccBiasState, createAccBias } from '../orientation/accBias.ts';
import { type TrackState, createTrack } from '../orientation/track.ts';
import type { SessionEvent } from '../sensors/sessionEvent.ts';
import { type CutState, createCut } from '../swings/cutSwing.ts';
import { type ShockState, createShock } from '../swings/shock.ts';
import { type CalibratingState, createCalibrating } from './calibrating.ts';
import type { AnalysisSettings, Phase } from './contract.ts';
import { type ClockSpread, createClockSpread } from './quality.ts';
import type { JudgedRepetition } from './result.ts';
import { type RezeroState, createRezero } from './rezero.ts';
import { type SwingingState, createSwinging } from './swinging.ts';

/** One worn sensor's part of the chain. */
export interface SensorState {
  readonly track: TrackState;
  readonly accBias: AccBiasState;
  /** What the offset became and when, not yet reached by the paired sensors. */
  readonly accBiasSteps: { readonly timeS: number; readonly bias: Vec3 }[];
  readonly clock: ClockSpread;
}

/** Everything the chain knows. Plain data: JSON and back continues the same run. */
export interface AnalysisState {
  settings: AnalysisSettings;
  readonly chest: SensorState;
  readonly trailArm: SensorState;
  readonly shock: ShockState;
  readonly pairing: PairingState;
  /** Events not yet reached by the samples, by their end. */
  pending: SessionEvent[];
  readonly calibrating: CalibratingState;
  readonly rezero: RezeroState;
  readonly swinging: SwingingState;
  readonly cut: CutState;
  phase: Phase;
  paused: boolean;
  /** Axial rotation since the last still top, deg. */
  keptRotationDeg: number | null;
  lastAxialRate: number;
  lastFrameS: number | null;
  /** As detected. */
  readonly repetitions: JudgedRepetition[];
  /** Each of them measured as the other kinds, in the same order. */
  readonly others: (readonly JudgedRepetition[])[];
  readonly ledger: LedgerBook;
  /** Marks have changed the ledger since it was told, and when they last were, session s. */
  marksUntold: boolean;
  marksToldS: number;
  readonly warnings: SafetyWarning[];
  readonly ownRange: RangeWatch;
  /** First pain rating of the session, 0-10. */
  painAtStart: number | null;
}

const createSensor = (): SensorState => ({
  track: createTrack(),
  accBias: createAccBias(),
  accBiasSteps: [],
  clock: createClockSpread(),
});

export const start = (settings: AnalysisSettings): AnalysisState => ({
  settings,
  chest: createSensor(),
  trailArm: createSensor(),
  shock: createShock(),
  pairing: createPairing(),
  pending: [],
  calibrating: createCalibrating(),
  rezero: createRezero(),
  swinging: createSwinging(),
  cut: createCut(),
  phase: 'calibrating',
  paused: false,
  keptRotationDeg: null,
  lastAxialRate: 0,
  lastFrameS: null,
  repetitions: [],
  others: [],
  ledger: emptyLedger(settings.plan),
  marksUntold: false,
  marksToldS: 0,
  warnings: [],
  ownRange: startRangeWatch(),
  painAtStart: null,
});
