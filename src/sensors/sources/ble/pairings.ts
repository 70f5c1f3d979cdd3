import { mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import type { SensorRole } from '../../sample.ts';
import type { Assignment } from './bleSource.ts';
import { DRIVER_KINDS } from './drivers/driver.ts';

const ROLES: readonly SensorRole[] = ['chest', 'trailArm', 'club'];
const LONGEST = 200;

const isText = (v: unknown): v is string => typeof v === 'string' && v.length <= LONGEST;

function isAssignment(value: unknown): value is Assignment {
  const { role, sensor } = (value ?? {}) as Partial<Assignment>;
  return (
    ROLES.some((r) => r === role) &&
    DRIVER_KINDS.some((k) => k === sensor?.driver) &&
    isText(sensor?.id) &&
    sensor.id !== '' &&
    isText(sensor.name)
  );
}

/** Each place has one sensor and each sensor one place; the later wins. */
export function withAssignment(all: readonly Assignment[], added: Assignment): Assignment[] {
  const { role, sensor } = added;
  return [...all.filter((a) => a.role !== role && a.sensor.id !== sensor.id), added];
}

/** Which sensor is worn where, kept in a file. A file that is missing or spoilt is as if empty. */
export class Pairings {
  readonly #file: string | null;
  #all: readonly Assignment[] = [];
  #unwritable: string | null = null;

  /** @param file `null` keeps them in memory only */
  constructor(file: string | null) {
    this.#file = file;
    if (file !== null) this.#all = read(file);
  }

  get all(): readonly Assignment[] {
    return this.#all;
  }

  /** The file that could not be written last time; `null` where it could. */
  get unwritable(): string | null {
    return this.#unwritable;
  }

  /** Holds in any case, also where the file cannot be written. */
  set(all: readonly Assignment[]): void {
    this.#all = all.map(({ role, sensor: { id, driver, name } }) => ({
      role,
      sensor: { id, driver, name },
    }));
    if (this.#file !== null) this.#unwritable = write(this.#file, this.#all) ? null : this.#file;
  }
}

function read(file: string): Assignment[] {
  try {
    const { pairings } = JSON.parse(readFileSync(file, 'utf8')) as { pairings?: unknown };
    const valid = Array.isArray(pairings) ? pairings.filter(isAssignment) : [];
    return valid.reduce<Assignment[]>(withAssignment, []);
  } catch {
    return [];
  }
}

/** Whole or not at all: a new file takes the old one's place. @returns whether it did */
function write(file: string, pairings: readonly Assignment[]): boolean {
  try {
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(`${file}.new`, `${JSON.stringify({ schema: 1, pairings }, null, 2)}\n`);
    renameSync(`${file}.new`, file);
    return true;
  } catch {
    return false;
  }
}
