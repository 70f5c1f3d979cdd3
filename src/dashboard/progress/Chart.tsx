import { useMemo } from 'preact/hooks';
import { type Range, shareOf, ticksOf } from '../review/plot/scale.ts';
import { timeTicks } from './timeTicks.ts';
import type { Band, CoursePoint } from './course.ts';
import {
  FEW,
  type MarkShape,
  type Scales,
  linePath,
  markAt,
  markSize,
  marksPath,
  nearest,
  quartilesPath,
} from './marks.ts';

export interface Series {
  readonly name: string;
  readonly shape: MarkShape;
  readonly points: readonly CoursePoint[];
}

/** What every chart of a page shares. */
export interface Axis {
  readonly width: number;
  /** Epoch ms. */
  readonly time: Range;
  readonly sessionsMs: readonly number[];
  readonly chosen: number;
  readonly choose: (session: number) => void;
  readonly planChangesMs: readonly number[];
  readonly warningsMs: readonly number[];
  readonly marksMs: readonly number[];
}

const HEIGHT = 150;
const TOP = 16;
const BOTTOM = 22;
const LEFT = 52;
const RIGHT = 10;

const NO_BANDS: readonly Band[] = [];
const FLOOR = HEIGHT - BOTTOM;

function scalesOf(width: number, time: Range, range: Range): Scales {
  return {
    x: (ms) => LEFT + shareOf(time, ms) * (width - LEFT - RIGHT),
    y: (value) => FLOOR - shareOf(range, value) * (FLOOR - TOP),
  };
}

function bandPath({ fromMs, toMs, target }: Band, { x, y }: Scales, range: Range): string {
  const low = y(Math.max(range.low, target.min ?? range.low));
  const high = y(Math.min(range.high, target.max ?? range.high));
  return `M${x(fromMs)} ${low}V${high}H${x(toMs)}V${low}Z`;
}

/** The ends of the target that the plan sets. */
function edgePath({ fromMs, toMs, target }: Band, { x, y }: Scales): string {
  return [target.min, target.max]
    .flatMap((v) => (v === undefined ? [] : [`M${x(fromMs)} ${y(v)}H${x(toMs)}`]))
    .join('');
}

function Axes(props: {
  readonly range: Range;
  readonly axis: Axis;
  readonly scales: Scales;
  readonly label: (value: number) => string;
  readonly steps: readonly number[];
}) {
  const { range, axis, scales, label, steps } = props;
  const ticks = ticksOf(range, 5, steps);
  return (
    <>
      <path
        class="grid"
        d={ticks.map((v) => `M${LEFT} ${scales.y(v)}H${axis.width - RIGHT}`).join('')}
      />
      {ticks.map((v) => (
        <text key={v} class="tick" x={LEFT - 6} y={scales.y(v) + 4} text-anchor="end">
          {label(v)}
        </text>
      ))}
      {timeTicks(axis.time, Math.max(2, Math.floor(axis.width / 85))).map(({ ms, text }) => (
        <text key={ms} class="tick" x={scales.x(ms)} y={HEIGHT - 6} text-anchor="middle">
          {text}
        </text>
      ))}
    </>
  );
}

function Marks({ axis, scales: { x } }: { readonly axis: Axis; readonly scales: Scales }) {
  const { planChangesMs, warningsMs, marksMs } = axis;
  return (
    <>
      <path
        class="plan-line"
        d={planChangesMs.map((ms) => `M${x(ms)} ${TOP - 4}V${FLOOR}`).join('')}
      />
      <path class="plan-mark" d={planChangesMs.map((ms) => markAt('diamond', x(ms), 8)).join('')} />
      <path class="other-mark" d={marksMs.map((ms) => `M${x(ms)} 2V${FLOOR}`).join('')} />
      <path
        class="warning-mark"
        d={warningsMs.map((ms) => `M${x(ms)} ${FLOOR}v-9M${x(ms) - 4} ${FLOOR}h8`).join('')}
      />
    </>
  );
}

function Course(props: {
  readonly series: Series;
  readonly scales: Scales;
  readonly size: number;
}) {
  const { series, scales, size } = props;
  const { points, shape } = series;
  const many = points.filter((p) => p.spread.count >= FEW);
  const few = points.filter((p) => p.spread.count < FEW);
  return (
    <g class={`course course-${shape}`}>
      <path class="course-line" d={linePath(points, scales)} />
      <path class="quartiles" d={quartilesPath(points, scales)} />
      <path class="medians" d={marksPath(many, shape, scales, size)} />
      <path class="medians open" d={marksPath(few, shape, scales, size)} />
    </g>
  );
}

/** One measure over time: medians with quartiles, the target as it was, plan changes and warnings. */
export function Chart(props: {
  readonly axis: Axis;
  readonly range: Range;
  readonly series: readonly Series[];
  readonly bands?: readonly Band[];
  readonly label: (value: number) => string;
  /** That its axis may have. */
  readonly steps: readonly number[];
  readonly title: string;
}) {
  const { axis, range, series, bands = NO_BANDS, label, steps, title } = props;
  const { width, time } = axis;
  const drawn = useMemo(() => {
    const scales = scalesOf(width, time, range);
    const size = markSize(width, axis.sessionsMs.length);
    return (
      <>
        <path class="band" d={bands.map((b) => bandPath(b, scales, range)).join('')} />
        <path class="band-edge" d={bands.map((b) => edgePath(b, scales)).join('')} />
        <Axes {...{ range, axis, scales, label, steps }} />
        <Marks axis={axis} scales={scales} />
        {series.map((s) => (
          <Course key={s.name} series={s} scales={scales} size={size} />
        ))}
      </>
    );
  }, [width, time, range, bands, series, axis.marksMs]);
  const { x } = scalesOf(width, time, range);
  const chosenMs = axis.sessionsMs[axis.chosen];
  const point = (event: MouseEvent): void => {
    const box = (event.currentTarget as Element).getBoundingClientRect();
    axis.choose(nearest(axis.sessionsMs.map(x), event.clientX - box.left));
  };
  return (
    <svg
      class="progress-chart"
      viewBox={`0 0 ${width} ${HEIGHT}`}
      width={width}
      height={HEIGHT}
      role="img"
      aria-label={title}
      onClick={point}
    >
      {chosenMs !== undefined && <path class="chosen" d={`M${x(chosenMs)} ${TOP - 8}V${FLOOR}`} />}
      {drawn}
    </svg>
  );
}
