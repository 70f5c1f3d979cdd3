import Type, { type TSchema } from 'typebox';
import Compile from 'typebox/compile';
import type { WarningId } from '../coaching/judgement.ts';
import { PAIN_SIGNS, SAFETY_TEXTS } from '../coaching/safetyTexts.ts';
import type { Command } from './contract.ts';

const literals = <T extends string>(...values: readonly T[]) =>
  Type.Union(values.map((value) => Type.Literal(value)));

const command = <T extends Record<string, TSchema>>(fields: T) =>
  Type.Object(fields, { additionalProperties: false });

const KINDS = ['rehearsal', 'ball', 'practiceSwing', 'ignored'] as const;
const WARNING_IDS = Object.keys(SAFETY_TEXTS) as WarningId[];

const PAIN = Type.Integer({ minimum: 0, maximum: 10 });
const SIGNS = Type.Array(literals(...PAIN_SIGNS), { maxItems: PAIN_SIGNS.length });
/** As long as a page lets a person write, and a little more for what one cannot see. */
const NOTE = Type.String({ maxLength: 2000 });

const schema = Type.Union([
  command({ type: Type.Literal('acknowledge'), id: literals(...WARNING_IDS) }),
  command({
    type: Type.Literal('correct'),
    index: Type.Integer({ minimum: 1, maximum: 1e6 }),
    kind: literals(...KINDS),
  }),
  command({
    type: literals('undo', 'pause', 'resume', 'next', 'skip', 'again', 'recheck', 'finish'),
  }),
  command({ type: Type.Literal('double-tap'), on: Type.Boolean() }),
  command({ type: Type.Literal('pain'), rating: PAIN, signs: SIGNS }),
  command({
    type: Type.Literal('safety'),
    answers: command({
      clubConfirmed: Type.Boolean(),
      historyConfirmed: Type.Boolean(),
      warmedUp: Type.Boolean(),
      redFlag: Type.Boolean(),
      pain: Type.Union([PAIN, Type.Null()]),
      signs: SIGNS,
    }),
  }),
  command({ type: Type.Literal('stop-read') }),
  command({
    type: Type.Literal('about'),
    hand: Type.Optional(literals('left', 'right')),
    name: Type.Optional(Type.String({ maxLength: 200 })),
  }),
  command({ type: Type.Literal('close'), pain: PAIN, signs: SIGNS, note: NOTE }),
  command({
    type: Type.Literal('begin'),
    kind: literals('demo', 'guided'),
    hand: literals('left', 'right'),
    sensors: literals('demo', 'bluetooth'),
  }),
]);

const validator = Compile(schema);

/** The command, or a sentence that says what is wrong with it. */
export function readCommand(value: unknown): Command | string {
  if (validator.Check(value)) return value as Command;
  const type = (value as { type?: unknown } | null)?.type;
  const named = typeof type === 'string' ? `"${type.slice(0, 40)}"` : 'a message without a type';
  return `The service does not understand ${named}: its fields are missing, unknown or out of range.`;
}
