import { MEASURE_INFO } from '../../../coaching/measureInfo.ts';
import { type Plan, TARGET_MEASURES, type TargetMeasure } from '../../../coaching/plan.ts';
import { timeTicks } from '../../progress/timeTicks.ts';
import { shareOf } from '../../review/plot/scale.ts';
import { h } from '../../strings/hub.ts';
import { t } from '../../strings/strings.ts';
import { CourseLegend } from './CourseLegend.tsx';
import { type CoursePoint, type CourseProps, axisOf, marksIn, pointsOf } from './points.ts';

const words = h.report;
const WIDTH = 320;
const HEIGHT = 116;
/** Of the plot, within the drawing: room for the values on the left and the dates below. */
const PLOT = { left: 58, right: 314, top: 8, bottom: 94 } as const;
/** Fewer sessions than this show no course. */
const FEW = 3;

type Scale = (value: number) => number;

function Point({ p, x, y }: { readonly p: CoursePoint; readonly x: Scale; readonly y: Scale }) {
  const [cx, cy] = [x(p.atMs), y(p.median)];
  return (
    <g class={p.kind}>
      <path class="half" d={`M${cx} ${y(p.low)}V${y(p.high)}`} />
      {p.kind === 'rehearsals' ? (
        <circle cx={cx} cy={cy} r="3" />
      ) : (
        <path class="ball" d={`M${cx} ${cy - 4}l4 7h-8z`} />
      )}
    </g>
  );
}

function Marks({ props, x }: { readonly props: CourseProps; readonly x: Scale }) {
  const { changes, met } = marksIn(props);
  const line = (ms: number): string => `M${x(ms)} ${PLOT.top}V${PLOT.bottom}`;
  return (
    <>
      {changes.map(({ id, validFromMs }) => (
        <path key={id} class="plan-mark" d={line(validFromMs)} />
      ))}
      {met.map(({ id, atMs }) => (
        <path key={id} class="lesson-mark" d={line(atMs)} />
      ))}
    </>
  );
}

function Target({ measure, plan, y }: { measure: TargetMeasure; plan: Plan; y: Scale }) {
  const target = plan.targets[measure];
  if (target === null) return null;
  const top = target.max === undefined ? PLOT.top : y(target.max);
  const bottom = target.min === undefined ? PLOT.bottom : y(target.min);
  const { left, right } = PLOT;
  return <rect class="target" x={left} width={right - left} y={top} height={bottom - top} />;
}

/** A value of the axis is a number, also where a value of that size reads "together". */
const tickText = (measure: TargetMeasure, value: number): string =>
  MEASURE_INFO[measure].signed
    ? t.measures.difference(measure, value)
    : t.measures.value(measure, value);

function ValueAxis(props: {
  readonly measure: TargetMeasure;
  readonly ticks: readonly number[];
  readonly y: Scale;
}) {
  const { measure, ticks, y } = props;
  return (
    <g class="axis">
      <path d={`M${PLOT.left} ${PLOT.top}V${PLOT.bottom}`} />
      {ticks.map((value) => (
        <g key={value}>
          <path d={`M${PLOT.left - 4} ${y(value)}h4`} />
          <text x={PLOT.left - 7} y={y(value) + 4} text-anchor="end">
            {tickText(measure, value)}
          </text>
        </g>
      ))}
    </g>
  );
}

/** The first and the last day; a small line where a month or a week begins. */
function DateAxis({ range, x }: { readonly range: CourseProps['range']; readonly x: Scale }) {
  const { left, right, bottom } = PLOT;
  const ticks = timeTicks({ low: range.fromMs, high: range.toMs }, 12);
  return (
    <g class="axis">
      <path d={`M${left} ${bottom}H${right}`} />
      {ticks.map(({ ms }) => (
        <path key={ms} d={`M${x(ms)} ${bottom}v4`} />
      ))}
      <text x={left} y={bottom + 17}>
        {h.shell.day(range.fromMs)}
      </text>
      <text x={right} y={bottom + 17} text-anchor="end">
        {h.shell.day(range.toMs)}
      </text>
    </g>
  );
}

function One({ measure, props }: { readonly measure: TargetMeasure; readonly props: CourseProps }) {
  const { plan, range } = props;
  const points = pointsOf(props.sessions, measure);
  if (points.length === 0) return null;
  const target = plan.targets[measure];
  const { ticks, ...values } = axisOf(points, measure, target);
  const dates = { low: range.fromMs, high: range.toMs };
  const x: Scale = (ms) => PLOT.left + 5 + shareOf(dates, ms) * (PLOT.right - PLOT.left - 10);
  const y: Scale = (value) => PLOT.bottom - shareOf(values, value) * (PLOT.bottom - PLOT.top);
  const { measures } = t;
  return (
    <figure class="course">
      <figcaption>
        <b>{measures.label(measure)}</b>
        {target !== null && `, ${measures.target(measure, target)}`}
      </figcaption>
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={measures.label(measure)}>
        <Target measure={measure} plan={plan} y={y} />
        <Marks props={props} x={x} />
        {points.map((p) => (
          <Point key={`${p.kind} ${p.atMs}`} p={p} x={x} y={y} />
        ))}
        <ValueAxis measure={measure} ticks={ticks} y={y} />
        <DateAxis range={range} x={x} />
      </svg>
    </figure>
  );
}

/** Every measure that the plan asks for over the months, one small drawing each. */
export function Course(props: CourseProps) {
  const asked = TARGET_MEASURES.filter((measure) => props.plan.targets[measure] !== null);
  return (
    <>
      {props.sessions.length < FEW && <p>{words.few(props.sessions.length)}</p>}
      <CourseLegend asked={asked} props={props} />
      <div class="courses">
        {asked.map((measure) => (
          <One key={measure} measure={measure} props={props} />
        ))}
      </div>
    </>
  );
}
