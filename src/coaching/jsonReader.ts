import { isWords } from '../sensors/plainText.ts';
import { type SentenceBook, fill } from '../sensors/sentence.ts';

/** One thing that is wrong; `message` is a sentence that names the path. */
export interface Problem {
  /** Dotted, as in `targets.holdS.min`. */
  readonly path: string;
  readonly message: string;
  /** Of `FIELD_TEXTS`, and what fills it: a form says it with its own label. */
  readonly key: FieldTextKey;
  readonly values: FieldValues;
}

type FieldValues = Readonly<Record<string, string | number>>;

/** What can be wrong with a field. */
export const FIELD_TEXTS = {
  object: '{path} must be an object, not {found}.',
  unknown: '{path} is unknown. Known here: {known}.',
  number: '{path} must be a number from {low} to {high}, not {found}.',
  whole: '{path} must be a whole number, not {found}.',
  text: '{path} must be text, not {found}.',
  longest: '{path} must have at most {most} characters.',
  control: '{path} must not contain control characters.',
  'one-of': '{path} must be one of {choices}, not {found}.',
  list: '{path} must be a list, not {found}.',
  items: '{path} must have at most {most} items.',
  schema: '{path} must be 1: this version reads no other.',
  'empty-band': '{path} needs a min or a max. Use null for no target.',
  'min-above-max': '{path} has a min ({min}) above its max ({max}).',
  'week-below-session': '{path} must not be below volume.perSession ({perSession}).',
} as const satisfies SentenceBook;
export type FieldTextKey = keyof typeof FIELD_TEXTS;

export type Bounds = readonly [low: number, high: number];
export type Json = Readonly<Record<string, unknown>>;

/**
 * Reads untrusted JSON field by field. What is missing takes its fallback; what is wrong is noted, and
 * takes the fallback too, so that one reading finds every problem.
 */
export class JsonReader {
  readonly problems: Problem[] = [];

  refuse(path: string, key: FieldTextKey, values: FieldValues = {}): void {
    const message = fill(FIELD_TEXTS[key], { path, ...values });
    this.problems.push({ path, message, key, values });
  }

  /** @param root where the object is the whole document its fields' paths stand alone */
  object(value: unknown, path: string, known: readonly string[], root = false): Json {
    if (value === undefined) return {};
    if (typeof value !== 'object' || value === null || Array.isArray(value)) {
      this.refuse(path, 'object', { found: describe(value) });
      return {};
    }
    for (const key of Object.keys(value).filter((k) => !known.includes(k))) {
      const at = root ? printable(key) : `${path}.${printable(key)}`;
      this.refuse(at, 'unknown', { known: known.join(', ') });
    }
    return value as Json;
  }

  number(value: unknown, path: string, [low, high]: Bounds, fallback: number): number {
    if (value === undefined) return fallback;
    if (typeof value === 'number' && value >= low && value <= high) return value + 0; // no -0
    this.refuse(path, 'number', { low, high, found: describe(value) });
    return fallback;
  }

  whole(value: unknown, path: string, bounds: Bounds, fallback: number): number {
    const n = this.number(value, path, bounds, fallback);
    if (Number.isInteger(n)) return n;
    this.refuse(path, 'whole', { found: n });
    return fallback;
  }

  text(value: unknown, path: string, longest: number, fallback: string): string {
    if (value === undefined) return fallback;
    if (typeof value !== 'string') {
      this.refuse(path, 'text', { found: describe(value) });
      return fallback;
    }
    if (value.length > longest) this.refuse(path, 'longest', { most: longest });
    if (!isWords(value) || TAB.test(value)) this.refuse(path, 'control');
    return value;
  }

  oneOf<T extends string>(value: unknown, path: string, choices: readonly T[], fallback: T): T {
    if (value === undefined) return fallback;
    const found = choices.find((c) => c === value);
    if (found === undefined)
      this.refuse(path, 'one-of', { choices: choices.join(', '), found: describe(value) });
    return found ?? fallback;
  }

  list(value: unknown, path: string, most: number): readonly unknown[] | undefined {
    if (value === undefined) return undefined;
    if (!Array.isArray(value)) {
      this.refuse(path, 'list', { found: describe(value) });
      return undefined;
    }
    if (value.length > most) this.refuse(path, 'items', { most });
    return value.slice(0, most);
  }
}

const TAB = /[\t\r]/;

function describe(value: unknown): string {
  if (value === null) return 'null';
  if (Array.isArray(value)) return 'a list';
  if (typeof value === 'string') return `the text "${printable(value)}"`;
  return typeof value === 'object' ? 'an object' : String(value);
}

/** A piece of the input that may be shown: short, without control characters. */
const printable = (text: string): string => text.slice(0, 40).replace(/\p{Cc}/gu, '?');
