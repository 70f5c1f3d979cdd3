import type { QrRows } from '../../streaming/hubContract/people.ts';

/** Modules of light around the code, as its standard (ISO/IEC 18004) asks. */
const QUIET = 4;

const runs = (row: string): { x: number; length: number }[] =>
  [...row.matchAll(/1+/g)].map((run) => ({ x: run.index, length: run[0].length }));

/** A code to scan: always dark on light, whatever the look. */
export function Qr({ rows, label }: { readonly rows: QrRows; readonly label: string }) {
  const size = rows.length + 2 * QUIET;
  const path = rows
    .flatMap((row, y) =>
      runs(row).map(({ x, length }) => `M${x + QUIET} ${y + QUIET}h${length}v1h-${length}z`),
    )
    .join('');
  return (
    <svg class="qr" viewBox={`0 0 ${size} ${size}`} role="img" aria-label={label}>
      <rect width={size} height={size} class="qr-light" />
      <path d={path} class="qr-dark" />
    </svg>
  );
}
