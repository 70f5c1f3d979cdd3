import type { FieldTextKey } from '../../../coaching/jsonReader.ts';

/** What is wrong with a field of a form; the field's label stands before it. */
export const FIELDS: Readonly<Record<FieldTextKey, string>> = {
  object: 'this part cannot be read.',
  unknown: 'this is not known here.',
  number: 'a number from {low} to {high}, please.',
  whole: 'a whole number, please, not {found}.',
  text: 'a text, please.',
  longest: 'at most {most} characters, please.',
  control: 'no control characters, please.',
  'one-of': 'one of the choices, please.',
  list: 'a list, please.',
  items: 'at most {most} lines, please.',
  schema: 'this version does not read such a plan.',
  'empty-band': 'at least one end, please.',
  'min-above-max': '“at least” ({min}) is above “at most” ({max}).',
  'week-below-session': 'not fewer than in one session ({perSession}).',
};
