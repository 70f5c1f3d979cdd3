import { homedir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import Type, { type Static } from 'typebox';
import Compile from 'typebox/compile';
import { isFile, optionWords } from './words.ts';

const schema = Type.Object({
  port: Type.Integer({ minimum: 0, maximum: 65535 }),
  replay: Type.Union([Type.String({ minLength: 1 }), Type.Null()]),
  sensors: Type.Union([Type.Literal('demo'), Type.Literal('bluetooth')]),
  seed: Type.Integer({ minimum: 0, maximum: 0xffffffff }),
  speed: Type.Number({ exclusiveMinimum: 0, maximum: 100 }),
  data: Type.String({ minLength: 1 }),
  hand: Type.Union([Type.Literal('left'), Type.Literal('right')]),
  secondScreen: Type.Boolean(),
});

/** What the student's service was asked to do. */
export type StudentSettings = Static<typeof schema> & {
  /** The port was asked for by name: another one will not do. */
  readonly portGiven: boolean;
};

export const DEFAULT_PORT = 7311;

/** Everything that is kept of a student; a copy of this folder is a backup. */
const DEFAULT_DATA = process.env['STILLCATCH_HOME'] ?? join(homedir(), '.stillcatch');

export const STUDENT_HELP = `Usage: npm start -- [options]

Opens the page on this computer and prints its address. Without sensors a simulated student can practise.

  --port N             port to listen on (default ${DEFAULT_PORT}, or the next free one; 0: any free one)
  --sensors demo|bluetooth   offer the simulated student (default) or real sensors first
  --replay <session>   play a recorded session (folder or .zip) at once
  --seed N             seed of the simulated student (default 1)
  --speed X            play X times as fast (default 1, at most 100)
  --hand left|right    the golfer's hand (default right; a recording knows its own)
  --data <folder>      where your sessions are kept (default ${DEFAULT_DATA})
  --second-screen      also show the practice, view only, to paired screens of your own network (see More > Second screen)
  --help               this text`;

const validator = Compile(schema);

const WANTED: Record<string, string> = {
  port: 'a whole number from 0 to 65535',
  seed: 'a whole number from 0 to 4294967295',
  speed: 'a number over 0, at most 100',
  hand: 'left or right',
  replay: 'the path of a session',
  sensors: 'demo or bluetooth',
  data: 'the path of a folder',
};

/** A wrong option, in one sentence. */
export class SettingsError extends Error {
  readonly code = 'settings';
}

const OPTIONS = {
  port: { type: 'string' },
  replay: { type: 'string' },
  sensors: { type: 'string' },
  seed: { type: 'string' },
  speed: { type: 'string' },
  hand: { type: 'string' },
  data: { type: 'string' },
  'second-screen': { type: 'boolean' },
  help: { type: 'boolean', short: 'h' },
} as const;

function parse(args: readonly string[]) {
  try {
    return parseArgs({ args: [...args], options: OPTIONS, strict: true, allowPositionals: false })
      .values;
  } catch (error) {
    throw new SettingsError(optionWords(error));
  }
}

const numberOr = (text: string | undefined, otherwise: number): number =>
  text === undefined ? otherwise : text.trim() === '' ? Number.NaN : Number(text);

/** @throws SettingsError where the data folder cannot be one. */
export function refuseFile(data: string): void {
  if (isFile(data)) throw new SettingsError(`--data must be a folder, but ${data} is a file.`);
}

/** Reads the command line once. `'help'` where only the help was asked for. */
export function readStudentSettings(args: readonly string[]): StudentSettings | 'help' {
  const given = parse(args);
  if (given.help === true) return 'help';
  const settings = {
    port: numberOr(given.port, DEFAULT_PORT),
    replay: given.replay ?? null,
    sensors: given.sensors ?? 'demo',
    seed: numberOr(given.seed, 1),
    speed: numberOr(given.speed, 1),
    hand: given.hand ?? 'right',
    data: given.data ?? DEFAULT_DATA,
    secondScreen: given['second-screen'] ?? false,
  };
  refuseFile(settings.data);
  if (validator.Check(settings)) return { ...settings, portGiven: given.port !== undefined };
  const wrong = Object.keys(WANTED).find((key) =>
    validator.Errors(settings).some((error) => error.instancePath === `/${key}`),
  );
  const name = wrong ?? 'option';
  throw new SettingsError(`--${name} must be ${WANTED[name] ?? 'valid'}.`);
}
