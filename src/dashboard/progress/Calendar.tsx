import { useLayoutEffect, useMemo, useRef } from 'preact/hooks';
import { t } from '../strings/strings.ts';
import { type Calendar, type Day, calendarOf } from './calendar.ts';
import type { Step } from './course.ts';
import { timeTicks } from './timeTicks.ts';

const words = t.progress.days;

const CELL = 13;
const LEFT = 26;
const TOP = 18;
/** Repetitions of the largest square. */
const MOST = 60;

const placeOf = ({ week, weekday }: Day) => ({
  x: LEFT + week * CELL + CELL / 2,
  y: TOP + weekday * CELL + CELL / 2,
});

function squareOf(day: Day): string {
  const { x, y } = placeOf(day);
  const side = 5 + 6 * Math.min(1, day.repetitions / MOST);
  return `M${x - side / 2} ${y - side / 2}h${side}v${side}h${-side}Z`;
}

function ringOf(day: Day): string {
  const { x, y } = placeOf(day);
  return `M${x - 6} ${y}a6 6 0 1 0 12 0a6 6 0 1 0 -12 0`;
}

function dotOf(day: Day): string {
  const { x, y } = placeOf(day);
  return `M${x - 1} ${y}h2`;
}

const pathsOf = ({ days }: Calendar) => ({
  dots: days
    .filter((d) => d.sessions === 0)
    .map(dotOf)
    .join(''),
  squares: days
    .filter((d) => d.sessions > 0)
    .map(squareOf)
    .join(''),
  rings: days
    .filter((d) => d.warnings > 0)
    .map(ringOf)
    .join(''),
});

/** Week of a time, for the names of the months. */
const weekAt = (days: readonly Day[], ms: number): number =>
  days.findLast((d) => d.atMs <= ms + 43_200_000)?.week ?? 0;

/** Every day of the range: practised or not, how much, with a warning or without. */
export function CalendarStrip(props: {
  readonly steps: readonly Step[];
  readonly fromMs: number;
  readonly toMs: number;
}) {
  const { steps, fromMs, toMs } = props;
  const calendar = useMemo(() => calendarOf(steps, fromMs, toMs), [steps, fromMs, toMs]);
  const { days, practised, longestBreak } = calendar;
  const { dots, squares, rings } = pathsOf(calendar);
  const scroll = useRef<HTMLDivElement>(null);
  // The latest days are looked at first.
  useLayoutEffect(() => scroll.current?.scrollTo({ left: scroll.current.scrollWidth }), [days]);
  const repetitions = steps.reduce((sum, s) => sum + s.repetitions, 0);
  const width = LEFT + ((days.at(-1)?.week ?? 0) + 1) * CELL + 8;
  const text = `${words.text(practised, days.length, steps.length, repetitions)} ${words.longest(longestBreak)}`;
  return (
    <section class="practice-days">
      <h2>{words.title}</h2>
      <p>{text}</p>
      <div class="calendar-scroll" ref={scroll} tabIndex={0} role="region" aria-label={words.title}>
        <svg width={width} height={TOP + 7 * CELL} role="img" aria-label={text}>
          {words.weekdays.map((name, i) =>
            i % 2 === 0 ? (
              <text key={name} class="tick" x={0} y={TOP + i * CELL + 10}>
                {name}
              </text>
            ) : null,
          )}
          {timeTicks({ low: fromMs, high: toMs }, Math.max(1, Math.floor(width / 60))).map(
            ({ ms, text: month }) => (
              <text key={ms} class="tick" x={LEFT + weekAt(days, ms) * CELL} y={10}>
                {month}
              </text>
            ),
          )}
          <path class="no-practice" d={dots} />
          <path class="practice-day" d={squares} />
          <path class="warned-day" d={rings} />
        </svg>
      </div>
      <p class="fine">{words.legend}</p>
    </section>
  );
}
