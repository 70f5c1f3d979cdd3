import { MEASURE_INFO } from '../../../coaching/measureInfo.ts';
import { type Plan, TARGET_MEASURES, type TargetMeasure } from '../../../coaching/plan.ts';
import type { HubProgress, PlanVersion } from '../../../streaming/hubContract/students.ts';
import { h } from '../../strings/hub.ts';
import { t } from '../../strings/strings.ts';
import { type CoursePoint, pointsOf, rangeOf } from './points.ts';

const words = h.report;
const WIDTH = 320;
const HEIGHT = 110;
const LEFT = 4;
/** Fewer sessions than this show no course. */
const FEW = 3;

interface CourseProps {
  readonly sessions: HubProgress['sessions'];
  readonly plans: readonly PlanVersion[];
  readonly lessons: HubProgress['lessons'];
  readonly plan: Plan;
  readonly range: { readonly fromMs: number; readonly toMs: number };
}

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
  const within = (ms: number): boolean => ms >= props.range.fromMs && ms <= props.range.toMs;
  const changes = props.plans.filter(
    ({ number, validFromMs }) => number > 1 && within(validFromMs),
  );
  return (
    <>
      {changes.map(({ id, validFromMs }) => (
        <path key={id} class="plan-mark" d={`M${x(validFromMs)} 0V${HEIGHT}`} />
      ))}
      {props.lessons
        .filter(({ atMs }) => within(atMs))
        .map(({ id, atMs }) => (
          <path key={id} class="lesson-mark" d={`M${x(atMs)} 0V${HEIGHT}`} />
        ))}
    </>
  );
}

function Target({ measure, plan, y }: { measure: TargetMeasure; plan: Plan; y: Scale }) {
  const target = plan.targets[measure];
  if (target === null) return null;
  const [top, bottom] = [
    target.max === undefined ? 0 : y(target.max),
    target.min === undefined ? HEIGHT : y(target.min),
  ];
  return <rect class="target" x={LEFT} width={WIDTH - LEFT} y={top} height={bottom - top} />;
}

/** An end of the axis is a number, also where a value of that size reads "together". */
const endText = (measure: TargetMeasure, value: number): string =>
  MEASURE_INFO[measure].signed
    ? t.measures.difference(measure, value)
    : t.measures.value(measure, value);

function One({ measure, props }: { readonly measure: TargetMeasure; readonly props: CourseProps }) {
  const { plan, range } = props;
  const points = pointsOf(props.sessions, measure);
  if (points.length === 0) return null;
  const [low, high] = rangeOf(points, measure, plan.targets[measure]);
  const x: Scale = (ms) =>
    LEFT + 6 + ((ms - range.fromMs) / (range.toMs - range.fromMs)) * (WIDTH - LEFT - 12);
  const y: Scale = (value) => HEIGHT - ((value - low) / (high - low)) * HEIGHT;
  const { measures } = t;
  const target = plan.targets[measure];
  return (
    <figure class="course">
      <figcaption>
        <b>{measures.label(measure)}</b>
        {target !== null && `, ${measures.target(measure, target)}`}
      </figcaption>
      <div class="course-drawing">
        <div class="course-ends" aria-hidden="true">
          <span>{endText(measure, high)}</span>
          <span>{endText(measure, low)}</span>
        </div>
        <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={measures.label(measure)}>
          <Target measure={measure} plan={plan} y={y} />
          <Marks props={props} x={x} />
          {points.map((p) => (
            <Point key={`${p.kind} ${p.atMs}`} p={p} x={x} y={y} />
          ))}
        </svg>
      </div>
    </figure>
  );
}

/** Every measure that the plan asks for over the months, one small drawing each. */
export function Course(props: CourseProps) {
  const asked = TARGET_MEASURES.filter((measure) => props.plan.targets[measure] !== null);
  return (
    <>
      {props.sessions.length < FEW && <p>{words.few(props.sessions.length)}</p>}
      <div class="courses">
        {asked.map((measure) => (
          <One key={measure} measure={measure} props={props} />
        ))}
      </div>
      <p class="fine">{words.measuresNote}</p>
    </>
  );
}
