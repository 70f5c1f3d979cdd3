import type { TargetMeasure } from '../../coaching/plan.ts';
import { ANGLE_STEPS, ROUND_STEPS } from '../review/plot/scale.ts';
import { t } from '../strings/strings.ts';
import { type Axis, Chart } from './Chart.tsx';
import { Sign } from './Legend.tsx';
import type { CoursePoint } from './course.ts';
import type { Course } from './courses.ts';

const words = t.progress;

export type Label = (value: number) => string;

/** The values of the chosen session, in words. */
function Reading({ course, atMs, label }: { course: Course; atMs: number; label: Label }) {
  return (
    <ul class="reading">
      {course.series.map(({ name, shape, points }) => (
        <li key={name}>
          <Sign shape={shape} kind={shape} /> {readingOf(name, points, atMs, label, course.counted)}
        </li>
      ))}
    </ul>
  );
}

function readingOf(
  name: string,
  points: readonly CoursePoint[],
  atMs: number,
  label: Label,
  counted: boolean,
): string {
  const point = points.find((p) => p.atMs === atMs);
  if (point === undefined) return words.notTaken(name);
  const { low, median, high, count } = point.spread;
  const spread = high > low ? t.review.head.middle(label(low), label(high)) : '';
  return words.at(name, label(median), spread, counted ? count : null);
}

interface PanelProps {
  readonly title: string;
  readonly term?: string | null;
  readonly course: Course;
  readonly axis: Axis;
  readonly label: Label;
  /** On the axis; else as `label`. */
  readonly tick?: Label;
  readonly note?: string;
  readonly steps?: readonly number[];
}

/** One chart with its title, the chosen session's values and what is to be said of it. */
export function Panel({
  title,
  term,
  course,
  axis,
  label,
  tick = label,
  note,
  steps = ROUND_STEPS,
}: PanelProps) {
  const atMs = axis.sessionsMs[axis.chosen] ?? 0;
  const empty = course.series.every((s) => s.points.length === 0);
  return (
    <section class="progress-panel">
      <h3>
        {title} {term && <small>{term}</small>}
      </h3>
      {empty ? (
        <p class="empty">{words.nothing}</p>
      ) : (
        <>
          <Reading course={course} atMs={atMs} label={label} />
          {axis.width > 0 && (
            <Chart
              axis={axis}
              range={course.range}
              series={course.series}
              bands={course.bands}
              label={tick}
              steps={steps}
              title={words.chart(title)}
            />
          )}
        </>
      )}
      {note !== undefined && <p class="fine">{note}</p>}
    </section>
  );
}

/** A plain number with its unit: an axis has no "together". */
function tickOf(measure: TargetMeasure): Label {
  const { unit } = t.measures.info[measure];
  return (v) => `${t.written(String(v))}${unit === '°' ? '°' : ` ${unit}`}`;
}

/** The course of one measure. */
export function MeasurePanel(props: {
  readonly measure: TargetMeasure;
  readonly course: Course;
  readonly axis: Axis;
}) {
  const { name, term, unit, accuracy } = t.measures.info[props.measure];
  const { axis, course } = props;
  const atMs = axis.sessionsMs[axis.chosen] ?? 0;
  const target = course.bands.find((b) => b.fromMs <= atMs && atMs < b.toMs)?.target;
  return (
    <Panel
      {...props}
      title={name}
      term={term}
      label={(v) => t.measures.value(props.measure, v, target)}
      tick={tickOf(props.measure)}
      steps={unit === '°' ? ANGLE_STEPS : ROUND_STEPS}
      note={words.sure(accuracy.text)}
    />
  );
}
