import {
  Chart,
  type ChartDataset,
  LineController,
  LineElement,
  LinearScale,
  PointElement,
  type ScaleOptionsByType,
} from 'chart.js';
import { CURVE_WINDOW_S, type CurveView } from '../../streaming/contract.ts';
import { t } from '../strings/strings.ts';

Chart.register(LineController, LineElement, PointElement, LinearScale);

export interface CurveColours {
  readonly line: string;
  readonly grid: string;
  readonly text: string;
}

/** The three strips from top to bottom with the range each one keeps: a curve that jumps scale cannot be compared. */
export const STRIPS = [
  { column: 'flexionDeg', low: -25, high: 85, ticks: [0, 30, 60] },
  { column: 'turnDeg', low: -125, high: 145, ticks: [-90, 0, 90] },
  { column: 'keptRotationDeg', low: -55, high: 45, ticks: [-40, 0, 20] },
] as const;

interface XY {
  x: number;
  y: number | null;
}

type LineChart = Chart<'line', XY[]>;

const NAN_GAP = Number.NaN;

/** Newest point at 0, the past to the left. */
function toPoints(curve: CurveView, column: (typeof STRIPS)[number]['column']): XY[] {
  const newest = curve.timeS.at(-1) ?? 0;
  return curve.timeS.map((timeS, i) => ({ x: timeS - newest, y: curve[column][i] ?? NAN_GAP }));
}

const dataset = (index: number, colour: string): ChartDataset<'line', XY[]> => ({
  data: [],
  yAxisID: `y${index}`,
  borderColor: colour,
  borderWidth: 2,
  pointRadius: 0,
  pointHitRadius: 0,
  spanGaps: false,
});

const yScale = (index: number, colours: CurveColours) => {
  const strip = STRIPS[index];
  return {
    type: 'linear',
    stack: 'strips',
    stackWeight: 1,
    // The first of a stack stands lowest.
    weight: STRIPS.length - index,
    min: strip?.low,
    max: strip?.high,
    border: { display: false },
    grid: { color: colours.grid, lineWidth: 1 },
    // Fixed places: the ends of two strips never meet.
    afterBuildTicks: (axis: { ticks: { value: number }[] }) => {
      axis.ticks = (strip?.ticks ?? []).map((value) => ({ value }));
    },
    ticks: {
      color: colours.text,
      font: { size: 12 },
      callback: (v: string | number) => `${String(v).replace('-', '−')}°`,
    },
  } as unknown as ScaleOptionsByType<'linear'>;
};

/** Three strips over one time axis: fixed window, no parsing, no animation. */
export function curveChart(canvas: HTMLCanvasElement, colours: CurveColours): LineChart {
  return new Chart<'line', XY[]>(canvas, {
    type: 'line',
    data: { datasets: STRIPS.map((_strip, i) => dataset(i, colours.line)) },
    options: {
      animation: false,
      parsing: false,
      normalized: true,
      responsive: true,
      maintainAspectRatio: false,
      events: [],
      layout: { padding: { top: 6, right: 8 } },
      scales: {
        x: {
          type: 'linear',
          min: -CURVE_WINDOW_S,
          max: 0,
          border: { display: false },
          grid: { color: colours.grid },
          ticks: {
            color: colours.text,
            stepSize: 2,
            font: { size: 12 },
            callback: (v) => (v === 0 ? t.curves.now : `${t.written(String(v))} s`),
          },
        },
        ...Object.fromEntries(
          [...STRIPS.keys()].reverse().map((i) => [`y${i}`, yScale(i, colours)]),
        ),
      },
    },
  });
}

export function showCurve(chart: LineChart, curve: CurveView): void {
  chart.data.datasets.forEach((line, i) => {
    const strip = STRIPS[i];
    if (strip !== undefined) line.data = toPoints(curve, strip.column);
  });
  chart.update('none');
}
