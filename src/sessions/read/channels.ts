import { STANDARD_GRAVITY } from '../../math/gravity.ts';
import { checkWord } from '../files/names.ts';
import type { SessionFiles } from '../files/sessionFiles.ts';
import { SessionError } from '../sessionError.ts';
import { type Row, type Table, cellPlace, columnOf, numberAt, readTable } from './table.ts';

/** Values of a parsed row, in this order. */
export const SLOTS = [
  'time',
  'acc_x',
  'acc_y',
  'acc_z',
  'gyro_x',
  'gyro_y',
  'gyro_z',
  'device_time',
  'arrival_time',
] as const;
/** A column of our own behind the standard ones. */
export const FULL_SCALE = 'full_scale';
export const SLOT_COUNT = SLOTS.length;
const OPTIONAL = new Set<string>(['device_time', 'arrival_time']);

interface Unit {
  readonly quantity: string;
  readonly si: string;
  /** Accepted spellings and what one of them is in SI. */
  readonly factors: Readonly<Record<string, number>>;
}

const SECONDS: Unit = {
  quantity: 'time',
  si: 's',
  factors: { s: 1, sec: 1, ms: 1e-3, us: 1e-6, µs: 1e-6, μs: 1e-6 },
};
const ACCELERATION: Unit = {
  quantity: 'acceleration',
  si: 'm/s^2',
  factors: {
    'm/s^2': 1,
    'm/s2': 1,
    'm/s²': 1,
    g: STANDARD_GRAVITY,
    g0: STANDARD_GRAVITY,
    mg: STANDARD_GRAVITY / 1000,
  },
};
const ANGULAR_RATE: Unit = {
  quantity: 'angular rate',
  si: 'rad/s',
  factors: {
    'rad/s': 1,
    'deg/s': Math.PI / 180,
    '°/s': Math.PI / 180,
    dps: Math.PI / 180,
  },
};

/** How the columns of one motion.tsv become SI values. */
export interface Channels {
  /** Names in file order. */
  readonly names: readonly string[];
  /** For each column of the file the slot it fills, or -1. */
  readonly slots: Int8Array;
  /** For each slot the factor to SI. */
  readonly factors: Float64Array;
  readonly placement: string;
  /** End of the range, SI; `null` where the table does not say. */
  readonly accFullScale: number | null;
  readonly gyroFullScale: number | null;
}

/** Motion sensors have about ten. A choice. */
const MOST_CHANNELS = 1000;

/** Reads channels.tsv: names may stand in any order, unknown ones are ignored. */
export async function readChannels(files: SessionFiles, file: string): Promise<Channels> {
  const table = await readTable(files, file, { most: MOST_CHANNELS, called: 'channel' });
  const nameColumn = columnOf(table, 'name');
  const unitColumn = columnOf(table, 'units');
  const placementColumn = table.columns.indexOf('placement');
  const names = table.rows.map((row) => row.cells[nameColumn] ?? '');
  const slots = Int8Array.from(names, (name) => (SLOTS as readonly string[]).indexOf(name));
  const factors = new Float64Array(SLOT_COUNT).fill(1);
  const seen = new Set<string>();
  for (const [at, row] of table.rows.entries()) {
    const name = names[at] as string;
    checkWord(name, 'the name of a channel', file);
    if (seen.has(name))
      throw new SessionError(
        'bad-channel',
        `the channel "${name}" appears twice`,
        cellPlace(table, row, nameColumn),
      );
    seen.add(name);
    const slot = slots[at] as number;
    if (slot >= 0) factors[slot] = factorOf(table, row, unitColumn, unitOf(slot));
  }
  refuseMissing(names, file);
  const placement = placementColumn < 0 ? '' : (table.rows[0]?.cells[placementColumn] ?? '');
  return {
    names,
    slots,
    factors,
    placement: placement === 'n/a' ? '' : checkWord(placement, 'the placement', file),
    accFullScale: fullScaleOf(table, names, factors, 'acc_x'),
    gyroFullScale: fullScaleOf(table, names, factors, 'gyro_x'),
  };
}

function fullScaleOf(
  table: Table,
  names: readonly string[],
  factors: Float64Array,
  name: (typeof SLOTS)[number],
): number | null {
  const column = table.columns.indexOf(FULL_SCALE);
  const row = table.rows[names.indexOf(name)];
  if (column < 0 || row === undefined) return null;
  const stated = numberAt(table, row, column);
  if (stated !== null && !(stated > 0))
    throw new SessionError(
      'bad-field',
      'the end of a range must be above 0',
      cellPlace(table, row, column),
    );
  return stated === null ? null : stated * (factors[SLOTS.indexOf(name)] as number);
}

function unitOf(slot: number): Unit {
  if (slot >= 1 && slot <= 3) return ACCELERATION;
  return slot >= 4 && slot <= 6 ? ANGULAR_RATE : SECONDS;
}

function factorOf(table: Table, row: Row, column: number, unit: Unit): number {
  const stated = row.cells[column] ?? '';
  const factor = unit.factors[stated] ?? unit.factors[stated.toLowerCase()];
  if (factor !== undefined) return factor;
  throw new SessionError(
    'bad-units',
    `"${stated}" is not a known unit of ${unit.quantity}: use ${unit.si} (also understood: ${Object.keys(unit.factors).slice(1).join(', ')})`,
    cellPlace(table, row, column),
  );
}

function refuseMissing(names: readonly string[], file: string): void {
  const missing = SLOTS.filter((slot) => !OPTIONAL.has(slot) && !names.includes(slot));
  if (missing.length === 0) return;
  throw new SessionError(
    'missing-channel',
    `the channel${missing.length > 1 ? 's' : ''} ${missing.join(', ')} ${missing.length > 1 ? 'are' : 'is'} missing (found: ${names.slice(0, 20).join(', ') || 'none'})`,
    { file },
  );
}
