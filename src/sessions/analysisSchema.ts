import { Ajv } from 'ajv';
import Type, { type Static, type TSchema } from 'typebox';
import type { AnalysisResult } from '../analysis/result.ts';
import { TARGET_MEASURES } from '../coaching/plan.ts';

// JSON Schema of one session's result: what `analyse --json` prints, analysis.json holds and the hub takes.

const closed = { additionalProperties: false } as const;
const object = <P extends Record<string, TSchema>>(properties: P) =>
  Type.Object(properties, closed);
const oneOf = <const V extends readonly string[]>(values: V) =>
  Type.Unsafe<V[number]>({ type: 'string', enum: [...values] });
// not a union of two schemas: one type list keeps the messages of the validator short
const nullable = Type.Unsafe<number | null>({ type: ['number', 'null'] });
const passed = Type.Unsafe<boolean | null>({ type: ['boolean', 'null'] });
const share = Type.Number({ minimum: 0, maximum: 1 });
const count = Type.Integer({ minimum: 0 });

const calibrationProblem = object({
  code: oneOf([
    'missing-step',
    'moving-while-still',
    'too-few-repetitions',
    'axis-unclear',
    'axis-spread',
    'axis-not-square',
    'stand-mismatch',
    'swapped-sensors',
    'upside-down',
    'gyro-sign',
    'gravity-norm',
    'gap',
    'mounting-moved',
    'nothing-kept',
  ]),
  message: Type.String({ minLength: 1 }),
  refuses: Type.Boolean(),
});

const sensorCalibration = object({
  explained: nullable,
  spreadDeg: nullable,
  squarenessDeg: nullable,
});

const calibration = object({
  accepted: Type.Boolean(),
  problems: Type.Array(calibrationProblem),
  chest: sensorCalibration,
  trailArm: sensorCalibration,
});

const sensorQuality = object({
  rateHz: nullable,
  lostPct: Type.Number({ minimum: 0, maximum: 100 }),
  gaps: Type.Array(object({ fromS: Type.Number(), toS: Type.Number() })),
  saturated: count,
  clockResidualMs: nullable,
});

const measures = object({
  flexionTopDeg: nullable,
  flexionCatchDeg: nullable,
  flexionGainDeg: nullable,
  turnExplainedDeg: nullable,
  addedFlexionDeg: nullable,
  leanChangeDeg: nullable,
  turnTopDeg: nullable,
  turnTowardTargetDeg: nullable,
  lateralChangeDeg: nullable,
  externalRotationTopDeg: nullable,
  elevationTopDeg: nullable,
  keptRotationDeg: nullable,
  chestLeadMs: nullable,
  releaseToCatchMs: nullable,
  fallCm: nullable,
});

const flag = oneOf([
  'gap',
  'not-seen',
  'saturated',
  'drift',
  'catch-assumed',
  'catch-not-detected',
  'landed',
  'elevation-out-of-range',
  'release-measured',
  'together',
  'impact-not-detected',
  'impact-not-seen',
  'marked-by-hand',
]);

const check = object({
  measure: oneOf(TARGET_MEASURES),
  value: nullable,
  target: object({ min: Type.Optional(Type.Number()), max: Type.Optional(Type.Number()) }),
  passed,
});

const cue = object({
  code: oneOf([
    'good',
    'hold-longer',
    'hold-shorter',
    'chest-first',
    'arms-sooner',
    'keep-lean',
    'bend-down',
    'bend-less',
    'keep-arm-out',
    'arm-out-less',
    'turn-through',
    'turn-less',
    'catch-sooner',
    'catch-later',
    'missed-catch',
    'stay-easy',
    'not-scored',
  ]),
  text: Type.String({ minLength: 1 }),
});

const repetition = {
  index: Type.Integer({ minimum: 1 }),
  startS: Type.Number(),
  topS: Type.Number(),
  endS: Type.Number(),
  measures,
  flags: Type.Array(flag),
  marked: Type.Optional(
    object({
      detected: oneOf(['rehearsal', 'ball', 'practiceSwing']),
      ignored: Type.Boolean(),
    }),
  ),
};

const rehearsal = object({
  kind: Type.Literal('rehearsal'),
  ...repetition,
  releaseS: Type.Number(),
  armStartS: nullable,
  catchS: nullable,
  catchConfidence: share,
  holdS: Type.Number({ minimum: 0 }),
  verdict: object({ passed, checks: Type.Array(check), cue }),
});

const ball = object({
  kind: Type.Literal('ball'),
  ...repetition,
  deliveryS: Type.Number(),
  impactS: nullable,
});

const practiceSwing = object({
  kind: Type.Literal('practiceSwing'),
  ...repetition,
  deliveryS: Type.Number(),
});

export const warning = object({
  id: oneOf([
    'club',
    'history',
    'warm-up',
    'pain-now',
    'pain-high',
    'pain-next-day',
    'red-flag',
    'own-range',
    'trunk-own-range',
    'volume',
    'missed',
  ]),
  atS: Type.Number(),
  text: Type.String({ minLength: 1 }),
  times: Type.Optional(Type.Integer({ minimum: 2 })),
  lastS: Type.Optional(Type.Number()),
  swingsOnly: Type.Optional(Type.Literal(true)),
});

export const ANALYSIS_SCHEMA = Type.Object(
  {
    schema: Type.Literal(1),
    session: object({
      id: Type.String({ minLength: 1 }),
      hand: oneOf(['left', 'right']),
      durationS: Type.Number({ minimum: 0 }),
    }),
    calibration,
    quality: object({ chest: sensorQuality, trailArm: sensorQuality }),
    repetitions: Type.Array(Type.Union([rehearsal, ball, practiceSwing])),
    ledger: object({
      rehearsals: count,
      balls: count,
      ratio: nullable,
      ballsInMix: count,
      entries: Type.String({ pattern: '^[rb]*$' }),
    }),
    carryOver: object({ addedFlexion: nullable, keptRotation: nullable }),
    warnings: Type.Array(warning),
    madeBy: Type.Optional(
      object({ version: Type.String({ minLength: 1 }), analysis: count, events: count }),
    ),
    differsFromKept: Type.Optional(Type.String({ minLength: 1 })),
  },
  { $schema: 'http://json-schema.org/draft-07/schema#', title: 'Result of one session', ...closed },
);

type Described = Static<typeof ANALYSIS_SCHEMA>;
type DeepReadonly<T> = T extends readonly (infer E)[]
  ? readonly DeepReadonly<E>[]
  : T extends object
    ? { readonly [K in keyof T]: DeepReadonly<T[K]> }
    : T;
type Mutual<A, B> = [A] extends [B] ? ([B] extends [A] ? true : false) : false;
/** Is a schema's type that of what it describes? What may be written to does not count. */
export type Same<A, B> = Mutual<DeepReadonly<A>, DeepReadonly<B>>;
/** Does not compile where the schema and `AnalysisResult` differ. */
true satisfies Same<Described, AnalysisResult>;

const validate = new Ajv({ allErrors: false, strict: true, allowUnionTypes: true }).compile(
  ANALYSIS_SCHEMA,
);

/** What is wrong with `value` as a result, in words; `null` where nothing is. */
export function analysisProblem(value: unknown): string | null {
  if (validate(value)) return null;
  const error = validate.errors?.at(-1);
  return `${error?.instancePath || 'the result'} ${error?.message ?? 'is not one'}`;
}

export const isAnalysisResult = (value: unknown): value is AnalysisResult =>
  analysisProblem(value) === null;
