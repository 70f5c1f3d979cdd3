/** Rows of cells as lines with columns in line; a row that is a string is a line of its own. */
export function table(rows: readonly (readonly string[])[], gap = '  '): string[] {
  const widths: number[] = [];
  for (const row of rows)
    row.forEach((cell, k) => (widths[k] = Math.max(widths[k] ?? 0, width(cell))));
  return rows.map((row) =>
    row
      .map((cell, k) => pad(cell, widths[k] ?? 0))
      .join(gap)
      .trimEnd(),
  );
}

const width = (text: string): number => [...text].length;
const pad = (text: string, to: number): string => text + ' '.repeat(Math.max(0, to - width(text)));
