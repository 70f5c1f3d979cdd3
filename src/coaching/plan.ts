/** Measures that a plan can set a target for, in the order in which they are judged. Names carry the unit. */
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

/** The band a measure should reach, both ends included; a side that is left out is open. */
export interface Target {
  readonly min?: number;
  readonly max?: number;
}

/** Stands beside every target wherever one is shown. */
export const TARGET_BASIS = 'coaching choice, not a published norm';

/** Steps from the movement alone to the full mix: common practice, no source. */
export const STAGES = {
  movement: {
    name: 'Movement only',
    text: 'Rehearsals without balls, until the sequence feels easy.',
    asksForBalls: false,
  },
  'short-swings': {
    name: 'With short swings',
    text: 'Rehearsals, with balls in between at a short, easy swing.',
    asksForBalls: true,
  },
  'full-mix': {
    name: 'Full mix',
    text: 'Rehearsals, with balls in between at full swing.',
    asksForBalls: true,
  },
} as const;

export type Stage = keyof typeof STAGES;

/** The student's own comfortable ends, measured in an optional range check. Degrees; left out = not measured. */
export interface OwnRange {
  readonly externalRotationDeg?: number;
  readonly flexionDeg?: number;
  readonly lateralTrailDeg?: number;
  readonly lateralLeadDeg?: number;
}

export const OWN_RANGE_KEYS = [
  'externalRotationDeg',
  'flexionDeg',
  'lateralTrailDeg',
  'lateralLeadDeg',
] as const satisfies readonly (keyof OwnRange)[];

/** What the coach asks. Defaults are coaching choices without published basis. */
export interface Plan {
  readonly schema: 1;
  readonly name: string;
  readonly stage: Stage;
  /** So many rehearsals before so many balls. */
  readonly ratio: { readonly rehearsals: number; readonly balls: number };
  /** `null`: the plan does not ask for this measure. */
  readonly targets: Readonly<Record<TargetMeasure, Target | null>>;
  readonly ownRange: OwnRange;
  readonly volume: {
    /** Most repetitions (rehearsals and balls) in one session. */
    readonly perSession: number;
    readonly perWeek: number;
  };
  readonly checklist: readonly string[];
  readonly note: string;
}

/** Ratio, checklist and camera: common practice, no source. Targets and volume: choices, no published norm. */
export const DEFAULT_PLAN: Plan = {
  schema: 1,
  name: 'Hold, release, catch',
  stage: 'full-mix',
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
  checklist: [
    'Trail foot turned out about 20 degrees',
    'Trail arm a little softer',
    'Shoulders square',
    'Camera in line with the stance line, about breastbone height',
    'For face on: camera square to the stance line, at the same height',
  ],
  note: '',
};

/** How many rehearsals and balls the plan asks for in turn; no balls in the stage of movement only. */
export const askedRatio = (plan: Pick<Plan, 'ratio' | 'stage'>): Plan['ratio'] =>
  STAGES[plan.stage].asksForBalls ? plan.ratio : { ...plan.ratio, balls: 0 };
