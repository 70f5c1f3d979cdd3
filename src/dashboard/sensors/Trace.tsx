import { t } from '../strings/strings.ts';
import { HEIGHT, traceLines, type Values, WIDTH } from './traceLines.ts';

/** What came in so many last steps counts as now. */
const NOW_STEPS = 10;

/** How the sensor moved over the last seconds: angular speed, root-scaled so that small movements show. */
export function Trace({ values, name }: { readonly values: Values; readonly name: string }) {
  const now = values.slice(-NOW_STEPS).findLast((v) => v !== null) ?? null;
  return (
    <svg
      class="trace"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      preserveAspectRatio="none"
      role="img"
      aria-label={now === null ? t.desk.noTrace(name) : t.desk.trace(name, now.toFixed(0))}
    >
      {traceLines(values).map((points, i) => (
        <polyline key={i} points={points} vector-effect="non-scaling-stroke" />
      ))}
    </svg>
  );
}
