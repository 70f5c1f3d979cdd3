/** Measures that a plan can set a target for. Names carry the unit. */
export const TARGET_MEASURES = [
  'holdS',
  'chestLeadMs',
  'leanChangeDeg',
  'addedFlexionDeg',
  'keptRotationDeg',
  'turnTowardTargetDeg',
  'releaseToCatchMs',
] as const;

export type TargetMeasure = (typeof TARGET_MEASURES)[number];

/** The band a measure should reach; a side that is left out is open. */
export interface Target {
  readonly min?: number;
  readonly max?: number;
}

/** The student's own comfortable ends, measured in an optional range check. Degrees; left out = not measured. */
export interface OwnRange {
  readonly externalRotationDeg?: number;
  readonly flexionDeg?: number;
  readonly lateralTrailDeg?: number;
  readonly lateralLeadDeg?: number;
}

/** What the coach asks. Defaults are coaching choices without published basis. */
export interface Plan {
  readonly schema: 1;
  readonly name: string;
  /** So many rehearsals before so many balls. */
  readonly ratio: { readonly rehearsals: number; readonly balls: number };
  readonly targets: Partial<Record<TargetMeasure, Target>>;
  readonly ownRange: OwnRange;
  readonly volume: {
    /** Most repetitions (rehearsals and balls) in one session. */
    readonly perSession: number;
    readonly perWeek: number;
  };
  readonly checklist: readonly string[];
  readonly note: string;
}

/** Two to one: common practice, no source. Targets: choices of the design, no published norm. */
export const DEFAULT_PLAN: Plan = {
  schema: 1,
  name: 'Hold, release, catch',
  ratio: { rehearsals: 2, balls: 1 },
  targets: {
    holdS: { min: 1 },
    chestLeadMs: { min: 20 },
    leanChangeDeg: { min: -3 },
    addedFlexionDeg: { min: 2 },
    keptRotationDeg: { min: -15 },
    turnTowardTargetDeg: { min: 25 },
    releaseToCatchMs: { max: 450 },
  },
  ownRange: {},
  volume: { perSession: 60, perWeek: 200 },
  checklist: ['Trail foot turned out about 20 degrees', 'Trail arm soft', 'Shoulders square'],
  note: '',
};
