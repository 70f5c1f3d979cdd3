import { CARRIED } from '../../coaching/nextStep.ts';
import {
  type PracticeCounts,
  type UncountedSession,
  standingOf,
} from '../../coaching/notCounted.ts';
import { useMemo, useState } from 'preact/hooks';
import type { ProgressEntry } from '../../streaming/sessionsContract.ts';
import { t } from '../strings/strings.ts';
import { CalendarStrip } from './Calendar.tsx';
import type { Axis } from './Chart.tsx';
import { ChosenSession } from './ChosenSession.tsx';
import { Legend } from './Legend.tsx';
import { type Label, MeasurePanel, Panel } from './Panel.tsx';
import { SinceLine } from './SinceLine.tsx';
import { ProgressTable } from './ProgressTable.tsx';
import {
  DAY_MS,
  RANGES,
  type RangeName,
  type Step,
  countsInRange,
  inRange,
  stepsOf,
} from './course.ts';
import { carryOverCourse, measureCourses, painCourse, passedCourse } from './courses.ts';
import { useWidth } from './useWidth.ts';

const words = t.progress;

/** Something else that happened on a day: a lesson, another club. */
export interface ProgressMark {
  /** ISO 8601. */
  readonly at: string;
  readonly text: string;
}

export interface ProgressViewProps {
  /** Oldest first. */
  readonly sessions: readonly ProgressEntry[];
  /** Where a session is opened. */
  readonly sessionHref: (id: string) => string;
  readonly marks?: readonly ProgressMark[];
  /** All other sessions; left out for none. */
  readonly notCounted?: readonly UncountedSession[];
  /** ISO 8601; the end of the ranges that can be chosen. */
  readonly now: string;
}

/** Fewer sessions than this are no course. A choice. */
const FEW = 5;
/** Charts stand two abreast from this width on, px. */
const TWO_ABREAST = 960;
const GAP = 32;

const columnOf = (width: number): number =>
  width >= TWO_ABREAST ? Math.floor((width - GAP) / 2) : width;

const NO_MARKS: readonly ProgressMark[] = [];

function RangeChoice(props: {
  readonly range: RangeName;
  readonly choose: (range: RangeName) => void;
}) {
  return (
    <fieldset class="choice range-choice">
      <legend>{words.range}</legend>
      {RANGES.map((name) => (
        <label key={name} class={name === props.range ? 'chosen' : undefined}>
          <input
            type="radio"
            name="progress-range"
            checked={name === props.range}
            onChange={() => props.choose(name)}
          />
          {words.ranges[name]}
        </label>
      ))}
    </fieldset>
  );
}

const percentLabel: Label = (v) => t.measures.percent(v / 100, [CARRIED]);
const painLabel: Label = (v) => `${v}`;

function Charts(props: {
  readonly steps: readonly Step[];
  readonly axis: Axis;
  readonly endMs: number;
}) {
  const { steps, axis, endMs } = props;
  const measures = useMemo(() => measureCourses(steps, endMs), [steps, endMs]);
  const [passed, carry, pain] = useMemo(
    () => [passedCourse(steps), carryOverCourse(steps), painCourse(steps)],
    [steps],
  );
  return (
    <>
      <Panel
        title={words.passed}
        course={passed!}
        axis={axis}
        label={percentLabel}
        note={words.passedNote}
      />
      {[...measures].map(([measure, course]) => (
        <MeasurePanel key={measure} measure={measure} course={course} axis={axis} />
      ))}
      <Panel
        title={words.carryOver}
        course={carry!}
        axis={axis}
        label={percentLabel}
        note={words.carryOverNote}
      />
      <Panel
        title={words.painTitle}
        course={pain!}
        axis={axis}
        label={painLabel}
        note={words.painNote}
      />
      <ProgressTable steps={steps} measures={[...measures.keys()]} />
    </>
  );
}

const atMsOf = (steps: readonly Step[]): readonly number[] => steps.map((s) => s.atMs);

function Shown(props: ProgressViewProps & { readonly steps: readonly Step[] }) {
  const { steps, marks = NO_MARKS, sessionHref } = props;
  const endMs = Date.parse(props.now);
  const [element, width] = useWidth();
  const [chosen, choose] = useState(steps.length - 1);
  const startMs = steps[0]!.atMs;
  const shared = useMemo(
    () => ({
      time: { low: startMs - DAY_MS / 2, high: Math.max(endMs, startMs + 7 * DAY_MS) },
      sessionsMs: atMsOf(steps),
      planChangesMs: atMsOf(steps.filter((s) => s.planBefore !== null)),
      warningsMs: atMsOf(steps.filter((s) => s.warnings > 0)),
      marksMs: marks.map((m) => Date.parse(m.at)).filter((ms) => ms >= startMs && ms <= endMs),
    }),
    [steps, marks, startMs, endMs],
  );
  return (
    <>
      {steps.length < FEW && (
        <p class="empty">{steps.length === 1 ? words.one : words.few(steps.length)}</p>
      )}
      <CalendarStrip steps={steps} fromMs={startMs} toMs={endMs} />
      <ChosenSession {...{ steps, chosen, choose, sessionHref }} />
      {marks.length > 0 && (
        <p class="fine">
          {words.marks}: {marks.map((m) => `${words.date(Date.parse(m.at))} ${m.text}`).join('; ')}
        </p>
      )}
      <Legend marks={marks.length > 0} />
      <div ref={element} class="progress-charts">
        <Charts
          steps={steps}
          axis={{ ...shared, width: columnOf(width), chosen, choose }}
          endMs={endMs}
        />
      </div>
    </>
  );
}

const NO_OTHERS: readonly UncountedSession[] = [];

function OthersLine({ others }: { readonly others: PracticeCounts }) {
  const lines = t.counts.notCounted(others.notCounted);
  return lines.length === 0 ? null : <p class="fine">{lines.join(' ')}</p>;
}

/** In place of the charts: what there is, in words that do not deny a session that is listed. */
function NothingYet({ others, none }: { readonly others: PracticeCounts; readonly none: string }) {
  const standing = standingOf(others);
  if (standing === 'simulated') return <p class="empty">{t.counts.onlySimulated}</p>;
  if (standing === 'none') return <p class="empty">{none}</p>;
  return (
    <p class="empty">{[t.counts.noneYet, ...t.counts.notCounted(others.notCounted)].join(' ')}</p>
  );
}

/** Each measure over sessions, rehearsals and balls apart, beside the plan as it was; from plain data. */
export function ProgressView(props: ProgressViewProps) {
  const { sessions, now } = props;
  const [range, setRange] = useState<RangeName>('all');
  const all = useMemo(() => stepsOf(sessions), [sessions]);
  const steps = useMemo(() => inRange(all, range, Date.parse(now)), [all, range, now]);
  const { notCounted = NO_OTHERS } = props;
  const others = countsInRange(notCounted, all.length === 0 ? 'all' : range, Date.parse(now));
  if (all.length === 0) return <NothingYet others={others} none={words.none} />;
  return (
    <div class="progress">
      <SinceLine steps={all} />
      <RangeChoice range={range} choose={setRange} />
      {steps.length === 0 ? (
        <NothingYet others={others} none={words.noneInRange} />
      ) : (
        <>
          <Shown key={range} {...props} steps={steps} />
          <OthersLine others={others} />
        </>
      )}
    </div>
  );
}
