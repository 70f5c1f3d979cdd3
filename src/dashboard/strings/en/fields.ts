import type { FieldTextKey } from '../../../coaching/jsonReader.ts';

/** What is wrong with a field of a form; the field's label stands before it. */
export const FIELDS: Readonly<Record<FieldTextKey, string>> = {
  object: 'cannot be read.',
  unknown: 'unknown field.',
  number: 'enter a number from {low} to {high}.',
  whole: 'enter a whole number, not {found}.',
  text: 'enter text.',
  longest: 'at most {most} characters.',
  control: 'no control characters.',
  'one-of': 'choose one of the options.',
  list: 'enter a list.',
  items: 'at most {most} lines.',
  schema: 'this plan needs another version of Stillcatch.',
  'empty-band': 'enter a minimum, a maximum or both.',
  'min-above-max': 'the minimum ({min}) is above the maximum ({max}).',
  'week-below-session': 'at least as many as in one session ({perSession}).',
};
