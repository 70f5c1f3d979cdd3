import type { SessionFiles } from '../files/sessionFiles.ts';
import { SessionError } from '../sessionError.ts';
import { type Channels, SLOT_COUNT } from './channels.ts';
import { CR, type Cursor, LF, TAB, readCell, textOf } from './number.ts';

/** Longer than any row of numbers. */
const LONGEST_LINE = 64 * 1024;
/** A clock that jumps back farther was started again. */
const BACKWARDS_S = 1;
/** Longer than any practice; milliseconds or calendar time in the time column end up here. */
const LONGEST_S = 24 * 3600;

/** Rows of one track in SI, `SLOT_COUNT` values each, NaN where missing. Valid until the next block is asked for. */
export interface MotionBlock {
  readonly rows: number;
  readonly values: Float64Array;
}

/** Rows that were passed over, counted while a track is read. */
export interface Skipped {
  /** A value of the six was missing. */
  missing: number;
  /** Not later than the row before. */
  notLater: number;
}

interface Reading extends Cursor {
  line: number;
  lineStart: number;
  lastTimeS: number;
  values: Float64Array;
  rows: number;
  readonly file: string;
  readonly channels: Channels;
  readonly skipped: Skipped;
}

/** Streams a motion.tsv. Times rise strictly; a last line without line feed is torn and left out. */
export async function* motionBlocks(
  files: SessionFiles,
  file: string,
  channels: Channels,
  skipped: Skipped,
): AsyncGenerator<MotionBlock> {
  const reading: Reading = {
    bytes: new Uint8Array(0),
    at: 0,
    fault: -1,
    line: 1,
    lineStart: 0,
    lastTimeS: -Infinity,
    values: new Float64Array(0),
    rows: 0,
    file,
    channels,
    skipped,
  };
  let rest: Uint8Array = new Uint8Array(0);
  for await (const chunk of files.chunks(file)) {
    const bytes = rest.length === 0 ? chunk : Buffer.concat([rest, chunk]);
    const end = bytes.lastIndexOf(LF) + 1;
    if (end > 0) {
      readLines(reading, bytes.subarray(0, end));
      if (reading.rows > 0) yield { rows: reading.rows, values: reading.values };
    }
    // copied: the chunk's memory is used again for the next one
    rest = new Uint8Array(bytes.subarray(end));
    if (rest.length > LONGEST_LINE) throw notLines(reading, rest);
  }
}

function notLines(reading: Reading, rest: Uint8Array): SessionError {
  const place = { file: reading.file, line: reading.line };
  return rest.includes(0)
    ? new SessionError('binary', 'is not a text file', place)
    : new SessionError('too-long', 'a line without end: this is not a table of numbers', place);
}

/** Parses whole lines into `reading.values`. */
function readLines(reading: Reading, bytes: Uint8Array): void {
  const columns = reading.channels.names.length;
  // the shortest row kept has a separator a column and a digit in each of the seven that are needed
  const most = (Math.ceil(bytes.length / (columns + 7)) + 1) * SLOT_COUNT;
  if (reading.values.length < most) reading.values = new Float64Array(most);
  reading.bytes = bytes;
  reading.at = 0;
  reading.rows = 0;
  skipByteOrderMark(reading);
  while (reading.at < bytes.length) {
    reading.lineStart = reading.at;
    if (readRow(reading, columns)) keepRow(reading);
    reading.line++;
  }
}

function skipByteOrderMark(reading: Reading): void {
  const { bytes } = reading;
  if (reading.line === 1 && bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf)
    reading.at = 3;
}

/** Reads one row into the next place of `values`; false for an empty line. */
function readRow(reading: Reading, columns: number): boolean {
  const { bytes, values, channels } = reading;
  const base = reading.rows * SLOT_COUNT;
  if (isLineEnd(bytes, reading.at)) {
    endLine(reading);
    return false;
  }
  values[base + 7] = NaN;
  values[base + 8] = NaN;
  for (let column = 0; column < columns; column++) {
    const value = readCell(reading);
    const slot = channels.slots[column] as number;
    if (slot >= 0) values[base + slot] = value * (channels.factors[slot] as number);
    if (column < columns - 1) {
      if (bytes[reading.at] !== TAB) throw wrongCount(reading, columns);
      reading.at++;
    }
  }
  if (reading.fault >= 0) throw textInRow(reading);
  if (!isLineEnd(bytes, reading.at)) throw wrongCount(reading, columns);
  endLine(reading);
  return true;
}

const isLineEnd = (bytes: Uint8Array, at: number): boolean =>
  bytes[at] === LF || (bytes[at] === CR && bytes[at + 1] === LF);

function endLine(reading: Reading): void {
  reading.at += reading.bytes[reading.at] === CR ? 2 : 1;
}

/** Counts the row in, unless a value is missing or its time is not later than the last. */
function keepRow(reading: Reading): void {
  const { values } = reading;
  const base = reading.rows * SLOT_COUNT;
  let sum = 0;
  for (let k = 0; k < 7; k++) sum += values[base + k] as number;
  if (!Number.isFinite(sum)) {
    reading.skipped.missing++;
    return;
  }
  const timeS = values[base] as number;
  if (timeS <= reading.lastTimeS) {
    if (timeS < reading.lastTimeS - BACKWARDS_S) throw backwards(reading, timeS);
    reading.skipped.notLater++;
    return;
  }
  if (timeS > LONGEST_S) throw tooLate(reading, timeS);
  reading.lastTimeS = timeS;
  reading.rows++;
}

function backwards(reading: Reading, timeS: number): SessionError {
  return new SessionError(
    'time-backwards',
    `time goes back from ${reading.lastTimeS} to ${timeS} s: the clock was started again, so this is more than one recording`,
    rowPlace(reading, 'time'),
  );
}

function tooLate(reading: Reading, timeS: number): SessionError {
  return new SessionError(
    'too-long',
    `time ${timeS} s is more than a day: seconds from the start of the recording are expected; this looks like milliseconds or calendar time`,
    rowPlace(reading, 'time'),
  );
}

function rowPlace(reading: Reading, name: string) {
  const column = reading.channels.names.indexOf(name) + 1;
  return { file: reading.file, line: reading.line, column };
}

function lineText(reading: Reading): string {
  const end = reading.bytes.indexOf(LF, reading.lineStart);
  return textOf(reading.bytes, reading.lineStart, end).replace(/\r$/, '');
}

function wrongCount(reading: Reading, columns: number): SessionError {
  const cells = lineText(reading).split('\t');
  if (cells.some((cell) => !printable(cell))) return binary(reading);
  const hint =
    cells.length === 1 && /[,;]/.test(cells[0] ?? '')
      ? '; columns must be parted by tabs, not by commas'
      : '';
  return new SessionError(
    'column-count',
    `${cells.length} columns where channels.tsv lists ${columns}${hint}`,
    { file: reading.file, line: reading.line, column: Math.min(cells.length, columns + 1) },
  );
}

function textInRow(reading: Reading): SessionError {
  const cells = lineText(reading).split('\t');
  const before = textOf(reading.bytes, reading.lineStart, reading.fault);
  const column = before.split('\t').length;
  const cell = cells[column - 1] ?? '';
  const place = { file: reading.file, line: reading.line, column };
  if (!printable(cell)) return binary(reading);
  if (reading.line === 1 && cells.every((c) => /^[A-Za-z_]/.test(c)))
    return new SessionError(
      'header-row',
      'begins with a header row; a motion.tsv has none (names stand in channels.tsv)',
      place,
    );
  const hint = /^[+-]?\d+,\d+$/.test(cell) ? ': decimals need a point, not a comma' : '';
  return new SessionError('not-a-number', `"${cell.slice(0, 40)}" is not a number${hint}`, place);
}

function binary(reading: Reading): SessionError {
  const place = { file: reading.file, line: reading.line };
  return new SessionError('binary', 'is not a text file', place);
}

// latin-1 text of a UTF-8 file: only control characters tell a binary file
const printable = (text: string): boolean => ![...text].some((c) => c < ' ' || c === '\x7f');
