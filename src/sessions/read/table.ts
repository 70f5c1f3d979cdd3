import type { SessionFiles } from '../files/sessionFiles.ts';
import { type Place, SessionError } from '../sessionError.ts';
import { numberIn } from './number.ts';
import { readText } from './text.ts';

/** A small table with a header row. `column` counts fields from 1. */
export interface Table {
  readonly file: string;
  readonly columns: readonly string[];
  readonly rows: readonly Row[];
}

export interface Row {
  readonly line: number;
  readonly cells: readonly string[];
}

/** More than any table has; choices. */
const MOST_COLUMNS = 1000;
const MOST_ROWS = 10_000;

interface TableLimits {
  /** Leave out a last row without a line feed that is not whole: its writer was cut off. */
  readonly tornEnd?: boolean;
  /** Rows below the header, and what one is called. */
  readonly most?: number;
  readonly called?: string;
}

/** @throws SessionError where it is no table, or has more rows or columns than it may. */
export async function readTable(
  files: SessionFiles,
  file: string,
  { tornEnd = false, most = MOST_ROWS, called = 'row' }: TableLimits = {},
): Promise<Table> {
  const text = await readText(files, file);
  const lines = text.split(/\r?\n/);
  const columns = (lines[0] ?? '').split('\t').map((c) => c.trim());
  if (columns.length === 1 && /[,;]/.test(lines[0] ?? ''))
    throw new SessionError('missing-column', 'columns must be parted by tabs, not by commas', {
      file,
      line: 1,
    });
  if (columns.length > MOST_COLUMNS)
    throw new SessionError('too-many', `${columns.length} columns; at most ${MOST_COLUMNS}`, {
      file,
      line: 1,
    });
  const rows: Row[] = [];
  for (const [at, line] of lines.entries()) {
    if (at === 0 || line.trim() === '') continue;
    const cells = line.split('\t').map((c) => c.trim());
    if (cells.length !== columns.length) {
      if (tornEnd && at === lines.length - 1) break;
      throw new SessionError(
        'column-count',
        `${cells.length} columns where the header has ${columns.length}`,
        { file, line: at + 1, column: Math.min(cells.length, columns.length) + 1 },
      );
    }
    if (rows.length === most)
      throw new SessionError('too-many', `more than ${most} ${called}s`, { file, line: at + 1 });
    rows.push({ line: at + 1, cells });
  }
  return { file, columns, rows };
}

/** Index of the first of `names` that the table has. */
export function columnOf(table: Table, ...names: string[]): number {
  const at = table.columns.findIndex((c) => names.includes(c));
  if (at >= 0) return at;
  throw new SessionError('missing-column', `the column "${names[0]}" is missing`, {
    file: table.file,
    line: 1,
  });
}

export const cellPlace = (table: Table, row: Row, column: number): Place => ({
  file: table.file,
  line: row.line,
  column: column + 1,
});

/** The number in a cell, `null` where it is missing; text is refused. */
export function numberAt(table: Table, row: Row, column: number): number | null {
  const text = row.cells[column] ?? '';
  const value = numberIn(text);
  if (value === null || value === Infinity || value === -Infinity)
    throw new SessionError(
      'not-a-number',
      `"${text.slice(0, 40)}" is not a number`,
      cellPlace(table, row, column),
    );
  return Number.isNaN(value) ? null : value;
}
