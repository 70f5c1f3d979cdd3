/** One thing that is wrong; `message` is a sentence that names the path. */
export interface Problem {
  /** Dotted, as in `targets.holdS.min`. */
  readonly path: string;
  readonly message: string;
}

export type Bounds = readonly [low: number, high: number];
export type Json = Readonly<Record<string, unknown>>;

/**
 * Reads untrusted JSON field by field. What is missing takes its fallback; what is wrong is noted, and
 * takes the fallback too, so that one reading finds every problem.
 */
export class JsonReader {
  readonly problems: Problem[] = [];

  refuse(path: string, must: string): void {
    this.problems.push({ path, message: `${path} ${must}.` });
  }

  /** @param root where the object is the whole document its fields' paths stand alone */
  object(value: unknown, path: string, known: readonly string[], root = false): Json {
    if (value === undefined) return {};
    if (typeof value !== 'object' || value === null || Array.isArray(value)) {
      this.refuse(path, `must be an object, not ${describe(value)}`);
      return {};
    }
    for (const key of Object.keys(value).filter((k) => !known.includes(k))) {
      const at = root ? printable(key) : `${path}.${printable(key)}`;
      this.refuse(at, `is not known; known here: ${known.join(', ')}`);
    }
    return value as Json;
  }

  number(value: unknown, path: string, [low, high]: Bounds, fallback: number): number {
    if (value === undefined) return fallback;
    if (typeof value === 'number' && value >= low && value <= high) return value + 0; // no -0
    this.refuse(path, `must be a number from ${low} to ${high}, not ${describe(value)}`);
    return fallback;
  }

  whole(value: unknown, path: string, bounds: Bounds, fallback: number): number {
    const n = this.number(value, path, bounds, fallback);
    if (Number.isInteger(n)) return n;
    this.refuse(path, `must be a whole number, not ${n}`);
    return fallback;
  }

  text(value: unknown, path: string, longest: number, fallback: string): string {
    if (value === undefined) return fallback;
    if (typeof value !== 'string') {
      this.refuse(path, `must be a text, not ${describe(value)}`);
      return fallback;
    }
    if (value.length > longest) this.refuse(path, `must have at most ${longest} characters`);
    if (CONTROL.test(value)) this.refuse(path, 'must not hold control characters');
    return value;
  }

  oneOf<T extends string>(value: unknown, path: string, choices: readonly T[], fallback: T): T {
    if (value === undefined) return fallback;
    const found = choices.find((c) => c === value);
    if (found === undefined)
      this.refuse(path, `must be one of ${choices.join(', ')}, not ${describe(value)}`);
    return found ?? fallback;
  }

  list(value: unknown, path: string, most: number): readonly unknown[] | undefined {
    if (value === undefined) return undefined;
    if (!Array.isArray(value)) {
      this.refuse(path, `must be a list, not ${describe(value)}`);
      return undefined;
    }
    if (value.length > most) this.refuse(path, `must have at most ${most} items`);
    return value.slice(0, most);
  }
}

/** Control characters other than the line end. */
const CONTROL = /[^\P{Cc}\n]/u;

function describe(value: unknown): string {
  if (value === null) return 'null';
  if (Array.isArray(value)) return 'a list';
  if (typeof value === 'string') return `the text "${printable(value)}"`;
  return typeof value === 'object' ? 'an object' : String(value);
}

/** A piece of the input that may be shown: short, without control characters. */
const printable = (text: string): string => text.slice(0, 40).replace(/\p{Cc}/gu, '?');
