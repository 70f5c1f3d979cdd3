import type { SessionEventType } from '../../sensors/sessionEvent.ts';
import type { RangeKey } from './range.ts';

/** What a person is asked to do, one after the other. */
export const GUIDE_STEPS = [
  'stand',
  'bow',
  'armRaise',
  'standAgain',
  'rangeRotation',
  'rangeBend',
  'rangeTrailSide',
  'rangeLeadSide',
  'address',
  'recheckStand',
  'recheckBow',
  'recheckArmRaise',
] as const;
export type GuideStep = (typeof GUIDE_STEPS)[number];

export type GuidePart = 'calibrate' | 'recheck' | 'range' | 'address';

export const PARTS: Record<GuidePart, readonly GuideStep[]> = {
  calibrate: ['stand', 'bow', 'armRaise', 'standAgain'],
  range: ['rangeRotation', 'rangeBend', 'rangeTrailSide', 'rangeLeadSide'],
  address: ['address'],
  recheck: ['recheckStand', 'recheckBow', 'recheckArmRaise'],
};

/** How a step is known to be done. */
export type StepKind =
  | { readonly kind: 'still'; readonly event: SessionEventType; readonly seconds: number }
  | {
      readonly kind: 'count';
      readonly event: SessionEventType;
      readonly sensor: 'chest' | 'trailArm';
      readonly wanted: number;
      /** Least size of one movement, deg. */
      readonly swingDeg: number;
    }
  | {
      readonly kind: 'range';
      readonly key: RangeKey;
      /** The way out has begun here and is over there, deg. */
      readonly outDeg: number;
      readonly backDeg: number;
    };

const THREE = 3;

export const STEP_KINDS: Record<GuideStep, StepKind> = {
  stand: { kind: 'still', event: 'calibration-stand', seconds: 3 },
  bow: {
    kind: 'count',
    event: 'calibration-bow',
    sensor: 'chest',
    wanted: THREE,
    swingDeg: 20,
  },
  armRaise: {
    kind: 'count',
    event: 'calibration-armRaise',
    sensor: 'trailArm',
    wanted: THREE,
    swingDeg: 40,
  },
  standAgain: { kind: 'still', event: 'calibration-stand', seconds: 2 },
  rangeRotation: { kind: 'range', key: 'externalRotationDeg', outDeg: 20, backDeg: -Infinity },
  rangeBend: { kind: 'range', key: 'flexionDeg', outDeg: 25, backDeg: 12 },
  rangeTrailSide: { kind: 'range', key: 'lateralTrailDeg', outDeg: 10, backDeg: 5 },
  rangeLeadSide: { kind: 'range', key: 'lateralLeadDeg', outDeg: 10, backDeg: 5 },
  address: { kind: 'still', event: 'address-reference', seconds: 2 },
  recheckStand: { kind: 'still', event: 'recheck-stand', seconds: 2 },
  recheckBow: { kind: 'count', event: 'recheck-bow', sensor: 'chest', wanted: 1, swingDeg: 20 },
  recheckArmRaise: {
    kind: 'count',
    event: 'recheck-armRaise',
    sensor: 'trailArm',
    wanted: 1,
    swingDeg: 40,
  },
};
