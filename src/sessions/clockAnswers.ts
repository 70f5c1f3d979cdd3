import type { Answer } from '../sensors/clock/asked.ts';
import type { SensorRole } from '../sensors/sample.ts';
import type { SessionFiles } from './files/sessionFiles.ts';
import { cellPlace, columnOf, numberAt, readTable, type Row, type Table } from './read/table.ts';
import { SessionError } from './sessionError.ts';

/** What sensors answered when they were asked for their time. Source data: the final clock fit needs it. */
export const ANSWERS_FILE = 'sourcedata/clockAnswers.tsv';
/** Four a second of each sensor, for half a day. A choice. */
const MOST_ANSWERS = 400_000;
const COLUMNS = ['sensor', 'device_time', 'sent_time'] as const;
export const ANSWERS_HEADER = `${COLUMNS.join('\t')}\n`;

/** One row: the device's clock, unwrapped, s, and when the question left, s from the recording's onset. */
export const answerRow = (sensor: SensorRole, { deviceS, sentS }: Answer): string =>
  `${sensor}\t${deviceS.toFixed(6)}\t${sentS.toFixed(6)}\n`;

/**
 * The answers of one sensor in the order in which they were asked; none where the recording has no such file.
 * @throws SessionError that names line and column where it is broken.
 */
export async function readAnswers(
  files: SessionFiles,
  sensor: SensorRole,
): Promise<readonly Answer[]> {
  if (!files.names.includes(ANSWERS_FILE)) return [];
  const table = await readTable(files, ANSWERS_FILE, {
    tornEnd: true,
    most: MOST_ANSWERS,
    called: 'answer',
  });
  const [sensorAt, deviceAt, sentAt] = COLUMNS.map((name) => columnOf(table, name)) as [
    number,
    number,
    number,
  ];
  return table.rows
    .filter((row) => row.cells[sensorAt] === sensor)
    .map((row) => ({
      deviceS: secondsAt(table, row, deviceAt),
      sentS: secondsAt(table, row, sentAt),
    }));
}

function secondsAt(table: Table, row: Row, column: number): number {
  const value = numberAt(table, row, column);
  if (value !== null) return value;
  throw new SessionError('missing-field', 'a time is missing', cellPlace(table, row, column));
}
