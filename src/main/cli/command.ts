import { type ParseArgsConfig, parseArgs } from 'node:util';
import { optionWords } from '../words.ts';

type Options = NonNullable<ParseArgsConfig['options']>;

/** Where a command writes and whether somebody watches. */
export interface CliIo {
  /** To standard output; resolves when there is room for more. */
  out(text: string): Promise<void>;
  err(text: string): void;
  /** Standard error is a terminal: progress may be shown there. */
  readonly watched: boolean;
}

export interface Invocation {
  readonly values: Readonly<Record<string, string | boolean | undefined>>;
  readonly positionals: readonly string[];
  readonly io: CliIo;
}

export interface Command {
  readonly name: string;
  readonly summary: string;
  /** All of `--help` for it. */
  readonly help: string;
  readonly options: Options;
  run(invocation: Invocation): Promise<void>;
}

/** The command line is wrong; one sentence. */
export class UsageError extends Error {
  override readonly name = 'UsageError';
}

/** @throws UsageError in words where an option is unknown or lacks its value. */
export function parse(
  command: Command,
  args: readonly string[],
): Pick<Invocation, 'values' | 'positionals'> {
  try {
    const { values, positionals } = parseArgs({
      args: [...args],
      options: { ...command.options, help: { type: 'boolean', short: 'h' } },
      allowPositionals: true,
      strict: true,
    });
    return { values: values as Invocation['values'], positionals };
  } catch (error) {
    throw new UsageError(optionWords(error));
  }
}

/** The one session that a command works on. */
export function onlySession({ positionals }: Invocation): string {
  const [path, ...more] = positionals;
  if (path === undefined || path === '')
    throw new UsageError('Name the session: a folder or a .zip');
  if (more.length > 0) throw new UsageError(`One session at a time, not ${positionals.length}`);
  return path;
}

export function textOption({ values }: Invocation, name: string): string | undefined {
  const value = values[name];
  return typeof value === 'string' ? value : undefined;
}

export function numberOption(
  invocation: Invocation,
  name: string,
  [low, high]: readonly [number, number],
): number | undefined {
  const text = textOption(invocation, name);
  if (text === undefined) return undefined;
  const value = /^[+-]?\d+(\.\d+)?$/.test(text) ? Number(text) : NaN;
  if (value >= low && value <= high) return value;
  throw new UsageError(`--${name} must be a number from ${low} to ${high}, not "${text}"`);
}

export function wholeOption(
  invocation: Invocation,
  name: string,
  [low, high]: readonly [number, number],
): number | undefined {
  const value = numberOption(invocation, name, [low, high]);
  if (value === undefined || Number.isInteger(value)) return value;
  throw new UsageError(`--${name} must be a whole number, not "${value}"`);
}

export function choiceOption<T extends string>(
  invocation: Invocation,
  name: string,
  choices: readonly T[],
): T | undefined {
  const text = textOption(invocation, name);
  if (text === undefined || (choices as readonly string[]).includes(text))
    return text as T | undefined;
  throw new UsageError(`--${name} must be one of ${choices.join(', ')}, not "${text}"`);
}
