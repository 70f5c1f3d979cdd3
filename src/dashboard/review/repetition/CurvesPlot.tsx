import { useMemo } from 'preact/hooks';
import { t } from '../../strings/strings.ts';
import { labelRows } from '../plot/labelRows.ts';
import { pathOf } from '../plot/path.ts';
import { ANGLE_STEPS, type Range, shareOf, ticksOf } from '../plot/scale.ts';
import {
  type Aligned,
  CURVES,
  type CurveName,
  timeRange,
  valueAt,
  valueRange,
} from './curveLines.ts';
import type { RepetitionEvent } from './events.ts';

const words = t.review.repetition;

const BOX = { width: 1000, height: 100 } as const;
/** Labels nearer than this share of the width stand in different rows. */
const LABEL_GAP = 0.13;

interface Strip {
  readonly name: CurveName;
  readonly range: Range;
  readonly ticks: readonly number[];
  readonly paths: readonly string[];
}

function stripsOf(all: readonly Aligned[], time: Range): readonly Strip[] {
  return CURVES.map((name) => {
    const range = valueRange(all, name);
    const paths = all.map(({ curves, alignS }) =>
      pathOf(
        curves.timeS.map((s) => s - alignS),
        curves[name],
        { x: time, y: range },
        BOX,
      ),
    );
    return { name, range, ticks: ticksOf(range, 4, ANGLE_STEPS), paths };
  });
}

const percent = (share: number): string => `${(100 * share).toFixed(2)}%`;

function Lines({ strip, time }: { readonly strip: Strip; readonly time: Range }) {
  const y = (value: number): number => (1 - shareOf(strip.range, value)) * BOX.height;
  const grid = [
    ...strip.ticks.map((v) => `M0 ${y(v).toFixed(1)}H${BOX.width}`),
    ...ticksOf(time, 8).map((s) => `M${(shareOf(time, s) * BOX.width).toFixed(1)} 0V${BOX.height}`),
  ].join('');
  return (
    <svg
      viewBox={`0 0 ${BOX.width} ${BOX.height}`}
      preserveAspectRatio="none"
      aria-hidden="true"
      focusable="false"
    >
      <path class="grid" d={grid} />
      {strip.paths.map((d, i) => (
        <path key={i} class={i === 0 ? 'line' : 'line beside'} d={d} />
      ))}
    </svg>
  );
}

/** Labels of two strips must not meet. */
const EDGE = 0.07;

function Ticks({ strip }: { readonly strip: Strip }) {
  const inside = strip.ticks.filter((v) => {
    const share = shareOf(strip.range, v);
    return share > EDGE && share < 1 - EDGE;
  });
  return (
    <span class="strip-ticks" aria-hidden="true">
      {inside.map((v) => (
        <small key={v} style={{ top: percent(1 - shareOf(strip.range, v)) }}>
          {words.value(String(v))}
        </small>
      ))}
    </span>
  );
}

const valueText = (value: number | null): string =>
  value === null ? words.noValue : words.value(value.toFixed(0));

/** The names of the events over their lines; the text is with the buttons of the scrubber. */
function EventNames(props: {
  readonly events: readonly RepetitionEvent[];
  readonly x: (s: number) => number;
}) {
  const { events, x } = props;
  const places = events.map((e) => x(e.timeS));
  const rows = labelRows(places, LABEL_GAP);
  const lines = 1 + Math.max(0, ...rows);
  return (
    <div class="event-names" aria-hidden="true" style={{ height: `${1.25 * lines}em` }}>
      {events.map((e, i) => (
        <span
          key={e.name}
          class={places[i]! > 0.85 ? 'from-right' : undefined}
          style={{ left: percent(places[i]!), top: `${1.25 * (rows[i] ?? 0)}em` }}
        >
          {words.event[e.name]}
        </span>
      ))}
    </div>
  );
}

/** Curves over one time axis, events as upright lines, one repetition or two laid over each other. */
export function CurvesPlot(props: {
  /** The one that is looked at, and perhaps another. */
  readonly all: readonly [Aligned, ...Aligned[]];
  /** Of the first. */
  readonly events: readonly RepetitionEvent[];
  /** Session s of the first. */
  readonly cursorS: number;
  readonly setCursorS: (sessionS: number) => void;
}) {
  const { all, cursorS, setCursorS } = props;
  const [{ curves, alignS }] = all;
  const keys = all.map((a) => a.curves);
  const time = useMemo(() => timeRange(all), keys);
  const strips = useMemo(() => stripsOf(all, time), keys);
  const x = (sessionS: number): number => shareOf(time, sessionS - alignS);
  const events = props.events.filter((e) => x(e.timeS) >= 0 && x(e.timeS) <= 1);
  const point = (event: PointerEvent): void => {
    const place = event.currentTarget as HTMLElement;
    if (event.type === 'pointerdown') place.setPointerCapture(event.pointerId);
    else if (event.buttons === 0) return;
    const box = place.getBoundingClientRect();
    const share = (event.clientX - box.left) / box.width;
    setCursorS(alignS + time.low + share * (time.high - time.low));
  };
  return (
    <figure
      class="curves-plot"
      aria-label={words.describe(
        CURVES.map((name) => words.names[name]).join(', '),
        words.value(t.decimal(time.low, 1)).replace('°', ''),
        t.decimal(time.high, 1),
      )}
      role="img"
    >
      <EventNames events={events} x={x} />
      <div class="strips">
        {strips.map((strip) => (
          <div key={strip.name} class="curve-strip">
            <p class="strip-name">
              {words.names[strip.name]} <b>{valueText(valueAt(curves, strip.name, cursorS))}</b>
            </p>
            <Ticks strip={strip} />
            <Lines strip={strip} time={time} />
          </div>
        ))}
        <div class="over-strips" onPointerDown={point} onPointerMove={point}>
          {events.map((e) => (
            <i key={e.name} class={`event event-${e.name}`} style={{ left: percent(x(e.timeS)) }} />
          ))}
          <i class="cursor" style={{ left: percent(Math.min(1, Math.max(0, x(cursorS)))) }} />
        </div>
      </div>
      <div class="time-ticks" aria-hidden="true">
        {ticksOf(time, 8).map((s) => (
          <small key={s} style={{ left: percent(shareOf(time, s)) }}>
            {words.time(String(s))}
          </small>
        ))}
      </div>
    </figure>
  );
}
