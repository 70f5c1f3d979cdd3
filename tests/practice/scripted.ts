import type { AnalysisOutput, Phase } from '../../src/analysis/contract.ts';
import { judgeRehearsal } from '../../src/coaching/judge.ts';
import type { JudgedRepetition } from '../../src/coaching/judgement.ts';
import { DEFAULT_PLAN, type Plan } from '../../src/coaching/plan.ts';
import { radians } from '../../src/math/angle.ts';
import { aboutX, aboutY, aboutZ, multiply } from '../../src/math/quat.ts';
import { ZERO, vec3 } from '../../src/math/vec3.ts';
import type { AnalysisChain } from '../../src/practice/chain.ts';
import type { ImuSample, SensorRole } from '../../src/sensors/sample.ts';
import type { SensorLink, SensorSource, SourceListener } from '../../src/sensors/sources/source.ts';
import type { Ball, Measures, Rehearsal } from '../../src/swings/repetition.ts';

/** A source driven by hand: a test says what arrives and when. Not a simulator; its samples are all alike. */
export class HandSource implements SensorSource {
  readonly kind = 'synthetic';
  readonly simulated = true;
  listener: SourceListener | null = null;
  stopped = false;

  start(listener: SourceListener): void {
    this.listener = listener;
    for (const sensor of ['chest', 'trailArm'] as const) listener.link(link(sensor));
  }

  async stop(): Promise<void> {
    this.stopped = true;
  }

  /** One packet of `count` samples each for both sensors, the last at `timeS`. */
  packets(timeS: number, count = 2): void {
    for (const sensor of ['chest', 'trailArm'] as const) {
      const batch = Array.from({ length: count }, (_, i) =>
        sample(sensor, timeS - (count - 1 - i) / 100),
      );
      this.listener?.samples(batch);
    }
  }
}

export const link = (sensor: SensorRole, change: Partial<SensorLink> = {}): SensorLink => ({
  sensor,
  state: 'streaming',
  name: sensor === 'chest' ? 'A1' : 'B2',
  reason: null,
  batteryPct: null,
  rssiDbm: null,
  nominalRateHz: 100,
  ...change,
});

export const sample = (sensor: SensorRole, timeS: number): ImuSample => ({
  sensor,
  timeS,
  acc: vec3(0, 9.81, 0),
  gyro: ZERO,
  deviceTimeS: timeS,
  arrivalTimeS: timeS,
  saturated: false,
});

const NO_MEASURES: Measures = {
  flexionTopDeg: 8,
  flexionCatchDeg: 34,
  flexionGainDeg: 26,
  turnExplainedDeg: 19,
  addedFlexionDeg: 7.2,
  leanChangeDeg: 1.4,
  turnTopDeg: -92,
  turnTowardTargetDeg: 48.3,
  lateralChangeDeg: 20,
  externalRotationTopDeg: 66,
  elevationTopDeg: 74,
  keptRotationDeg: -6.1,
  chestLeadMs: 62,
  releaseToCatchMs: 382,
  fallCm: 72,
};

export function rehearsal(
  index: number,
  change: Partial<Omit<Rehearsal, 'measures'>> & { readonly measures?: Partial<Measures> } = {},
  plan: Plan = DEFAULT_PLAN,
): JudgedRepetition {
  const { measures, ...rest } = change;
  const one: Rehearsal = {
    kind: 'rehearsal',
    index,
    startS: index * 10,
    topS: index * 10 + 0.8,
    releaseS: index * 10 + 2,
    armStartS: index * 10 + 2.06,
    catchS: index * 10 + 2.38,
    endS: index * 10 + 2.6,
    catchConfidence: 0.9,
    holdS: 1.21,
    flags: [],
    ...rest,
    measures: { ...NO_MEASURES, ...measures },
  };
  return { ...one, verdict: judgeRehearsal(one, plan) };
}

export const ball = (index: number): Ball => ({
  kind: 'ball',
  index,
  startS: index * 10,
  topS: index * 10 + 0.8,
  deliveryS: index * 10 + 1,
  impactS: index * 10 + 1.05,
  endS: index * 10 + 1.4,
  flags: [],
  measures: { ...NO_MEASURES, keptRotationDeg: -18, addedFlexionDeg: 2.9, releaseToCatchMs: null },
});

/** A chain that says what a test told it to, at the session time it was told. */
export interface ScriptState {
  readonly due: { readonly atS: number; readonly output: AnalysisOutput }[];
}

export function scriptedChain(
  script: readonly { readonly atS: number; readonly output: AnalysisOutput }[],
): AnalysisChain<ScriptState> {
  return {
    start: () => ({ due: [...script].sort((a, b) => a.atS - b.atS) }),
    step: (state, input, emit) => {
      if (input.kind !== 'sample') return;
      for (;;) {
        const next = state.due[0];
        if (next === undefined || next.atS > input.sample.timeS) return;
        state.due.shift();
        emit(next.output);
      }
    },
    finish: () => undefined,
  };
}

export const phase = (name: Phase, atS: number, holdS = 0): AnalysisOutput => ({
  kind: 'phase',
  phase: name,
  atS,
  holdS,
});

/** A frame with the given turn and flexion, everything else at rest. */
export function frame(
  timeS: number,
  turnDeg: number,
  flexionDeg: number,
  keptRotationDeg: number | null = null,
  lift = 0,
): AnalysisOutput {
  const thorax = multiply(aboutY(radians(turnDeg)), aboutZ(radians(-flexionDeg)));
  const inThorax = multiply(aboutZ(radians(20 + 55 * lift)), aboutX(radians(-10 - 25 * lift)));
  return {
    kind: 'frame',
    frame: {
      timeS,
      thorax,
      humerus: multiply(thorax, multiply(inThorax, aboutY(radians(-60 * lift)))),
      thoraxRate: ZERO,
      humerusRate: ZERO,
      gap: false,
      saturated: false,
    },
    angles: {
      flexionDeg,
      lateralDeg: 0,
      leanDeg: flexionDeg,
      turnDeg,
      elevationDeg: 70,
      planeDeg: 40,
      externalRotationDeg: 60,
      valid: true,
    },
    keptRotationDeg,
  };
}
