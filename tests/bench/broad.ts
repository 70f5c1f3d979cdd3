import { existsSync, readFileSync, readdirSync, statSync } from 'node:fs';
import { basename, join } from 'node:path';
import { type Quat, multiply, quat } from '../../src/math/quat.ts';
import { vec3 } from '../../src/math/vec3.ts';
import type { ImuSample } from '../../src/sensors/sample.ts';

/** One recorded trial with optical truth, of the form of ../shared/datasets/broad/README.md. */
export interface Trial {
  readonly name: string;
  readonly samples: readonly ImuSample[];
  /** Sensor to earth (Y up); `null` where the optical system saw nothing. */
  readonly reference: readonly (Quat | null)[];
  readonly moving: readonly boolean[];
}

/** Bad input, in one sentence that names what and where. */
export class TrialError extends Error {}

const COLUMNS = 't gx gy gz ax ay az qw qx qy qz moving'.split(' ');

// The files' earth frame is East-North-Up; ours is X east, Y up, Z south: a quarter turn about east.
const EARTH = quat(Math.SQRT1_2, -Math.SQRT1_2, 0, 0);

export function trialFiles(folder: string): string[] {
  if (!existsSync(folder) || !statSync(folder).isDirectory())
    throw new TrialError(`No such folder: ${folder}`);
  const files = readdirSync(folder).filter((f) => f.endsWith('.csv'));
  if (files.length === 0) throw new TrialError(`No .csv file in ${folder}`);
  return files.sort().map((f) => join(folder, f));
}

export function readTrial(file: string): Trial {
  const [header = '', ...lines] = readFileSync(file, 'utf8')
    .replace(/^\uFEFF/, '')
    .split(/\r?\n/);
  const at = columnsOf(header, file);
  const rows = lines.flatMap((line, i) =>
    line.trim() === '' ? [] : [numbersOf(line.split(','), at, `${file}, line ${i + 2}`)],
  );
  if (rows.length === 0) throw new TrialError(`No rows in ${file}`);
  return {
    name: basename(file, '.csv'),
    samples: rows.map(sampleOf),
    reference: rows.map(referenceOf),
    moving: rows.map((r) => r[11] === 1),
  };
}

function columnsOf(header: string, file: string): number[] {
  const names = header.split(',').map((n) => n.trim());
  const missing = COLUMNS.filter((c) => !names.includes(c));
  if (missing.length > 0) throw new TrialError(`${file} has no column ${missing.join(', ')}`);
  return COLUMNS.map((c) => names.indexOf(c));
}

/** In the order of COLUMNS; an empty field of the reference is NaN. */
function numbersOf(fields: string[], at: readonly number[], where: string): number[] {
  return at.map((column, i) => {
    const text = fields[column]?.trim() ?? '';
    const reference = i >= 7 && i <= 10;
    const value = text === '' || text === 'n/a' ? Number.NaN : Number(text);
    if (!Number.isFinite(value) && !reference)
      throw new TrialError(`${where}, column ${COLUMNS[i] ?? ''}: "${text}" is not a number`);
    return value;
  });
}

const N = Number.NaN;

function sampleOf([t = N, gx = N, gy = N, gz = N, ax = N, ay = N, az = N]: number[]): ImuSample {
  return {
    sensor: 'chest',
    timeS: t,
    gyro: vec3(gx, gy, gz),
    acc: vec3(ax, ay, az),
    deviceTimeS: t,
    arrivalTimeS: null,
    saturated: false,
  };
}

function referenceOf(row: number[]): Quat | null {
  const [w = N, x = N, y = N, z = N] = row.slice(7, 11);
  return Number.isFinite(w + x + y + z) ? multiply(EARTH, quat(w, x, y, z)) : null;
}
