import { t } from '../strings/strings.ts';

const WIDTH = 200;
const HEIGHT = 44;
/** A quick turn of the arm fills the height; slower movement still shows. */
const FULL_DEG_PER_S = 400;

const height = (degPerS: number): number =>
  HEIGHT - 2 - (HEIGHT - 4) * Math.sqrt(Math.min(1, degPerS / FULL_DEG_PER_S));

/** How the sensor moved over the last seconds: angular speed, root-scaled so that small movements show. */
export function Trace({
  values,
  name,
}: {
  readonly values: readonly number[];
  readonly name: string;
}) {
  const step = WIDTH / Math.max(1, values.length - 1);
  const points = values.map((v, i) => `${(i * step).toFixed(1)},${height(v).toFixed(1)}`).join(' ');
  const now = (values.at(-1) ?? 0).toFixed(0);
  return (
    <svg
      class="trace"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      preserveAspectRatio="none"
      role="img"
      aria-label={t.desk.trace(name, now)}
    >
      <polyline points={points} vector-effect="non-scaling-stroke" />
    </svg>
  );
}
