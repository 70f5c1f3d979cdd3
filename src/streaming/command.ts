import Type, { type TSchema } from 'typebox';
import Compile from 'typebox/compile';
import type { WarningId } from '../coaching/judgement.ts';
import { SAFETY_TEXTS } from '../coaching/safetyTexts.ts';
import type { Command } from './contract.ts';

const literals = <T extends string>(...values: readonly T[]) =>
  Type.Union(values.map((value) => Type.Literal(value)));

const command = <T extends Record<string, TSchema>>(fields: T) =>
  Type.Object(fields, { additionalProperties: false });

const KINDS = ['rehearsal', 'ball', 'practiceSwing', 'ignored'] as const;
const WARNING_IDS = Object.keys(SAFETY_TEXTS) as WarningId[];

const schema = Type.Union([
  command({ type: Type.Literal('acknowledge'), id: literals(...WARNING_IDS) }),
  command({
    type: Type.Literal('correct'),
    index: Type.Integer({ minimum: 1, maximum: 1e6 }),
    kind: literals(...KINDS),
  }),
  command({ type: literals('undo', 'pause', 'resume') }),
]);

const validator = Compile(schema);

/** The command, or a sentence that says what is wrong with it. */
export function readCommand(value: unknown): Command | string {
  if (validator.Check(value)) return value as Command;
  const type = (value as { type?: unknown } | null)?.type;
  const named = typeof type === 'string' ? `"${type.slice(0, 40)}"` : 'a message without a type';
  return `The service does not understand ${named}: its fields are missing, unknown or out of range.`;
}
