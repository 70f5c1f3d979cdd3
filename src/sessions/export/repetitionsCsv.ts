import { measureValue } from '../../coaching/measureValue.ts';
import type { AnalysisResult, JudgedRepetition } from '../../analysis/result.ts';
import { detectedKind, isCounted } from '../../coaching/asSaid.ts';
import { shownNumber } from '../../coaching/shown.ts';
import type { Measures } from '../../swings/repetition.ts';

type Cell = string | number | boolean | null;
type Column = readonly [name: string, cell: (r: JudgedRepetition) => Cell];

const rehearsalOnly =
  (cell: (r: Extract<JudgedRepetition, { kind: 'rehearsal' }>) => Cell) =>
  (r: JudgedRepetition): Cell =>
    r.kind === 'rehearsal' ? cell(r) : null;

const MEASURES: Readonly<Record<keyof Measures, string>> = {
  flexionTopDeg: 'flexion_top_deg',
  flexionCatchDeg: 'flexion_catch_deg',
  flexionGainDeg: 'flexion_gain_deg',
  turnExplainedDeg: 'turn_explained_deg',
  addedFlexionDeg: 'added_flexion_deg',
  leanChangeDeg: 'lean_change_deg',
  turnTopDeg: 'turn_top_deg',
  turnTowardTargetDeg: 'turn_toward_target_deg',
  lateralChangeDeg: 'lateral_change_deg',
  externalRotationTopDeg: 'external_rotation_top_deg',
  elevationTopDeg: 'elevation_top_deg',
  keptRotationDeg: 'kept_rotation_deg',
  chestLeadMs: 'chest_lead_ms',
  releaseToCatchMs: 'release_to_catch_ms',
  fallCm: 'fall_cm',
};

const COLUMNS: readonly Column[] = [
  ['index', (r) => r.index],
  ['kind', (r) => r.kind],
  ['start_s', (r) => r.startS],
  ['top_s', (r) => r.topS],
  ['release_s', rehearsalOnly((r) => r.releaseS)],
  ['arm_start_s', rehearsalOnly((r) => r.armStartS)],
  ['catch_s', rehearsalOnly((r) => r.catchS)],
  ['catch_confidence', rehearsalOnly((r) => r.catchConfidence)],
  ['hold_s', (r) => shown(r, 'holdS', measureValue(r, 'holdS'))],
  ['delivery_s', (r) => (r.kind === 'rehearsal' ? null : r.deliveryS)],
  ['impact_s', (r) => (r.kind === 'ball' ? r.impactS : null)],
  ['end_s', (r) => r.endS],
  ...Object.entries(MEASURES).map(([key, name]): Column => [
    name,
    (r) => shown(r, key, r.measures[key as keyof Measures]),
  ]),
  ['passed', rehearsalOnly((r) => r.verdict.passed)],
  ['cue', rehearsalOnly((r) => r.verdict.cue.text)],
  ['flags', (r) => r.flags.join(' ')],
  ['detected_kind', detectedKind],
  ['counted', isCounted],
];

/** A judged value never reads as on the other side of its target than its verdict. */
function shown(r: JudgedRepetition, measure: string, value: number | null): Cell {
  if (value === null || r.kind !== 'rehearsal') return value;
  const check = r.verdict.checks.find((c) => c.measure === measure);
  return String(Number(shownNumber(value, DECIMALS, [check?.target])));
}

/** One row a repetition, comma separated (RFC 4180), a header row, empty where there is no value. */
export function* repetitionsCsv(analysis: Pick<AnalysisResult, 'repetitions'>): Generator<string> {
  yield line(COLUMNS.map(([name]) => name));
  for (const r of analysis.repetitions) yield line(COLUMNS.map(([, cell]) => text(cell(r))));
}

const line = (cells: readonly string[]): string => `${cells.map(quoted).join(',')}\n`;
const quoted = (cell: string): string =>
  /[",\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;

/** A tenth of a millisecond, far below what is measured; a value at the very end of its target has more. */
const DECIMALS = 4;

function text(cell: Cell): string {
  if (cell === null) return '';
  return typeof cell === 'number' ? String(Number(cell.toFixed(DECIMALS))) : String(cell);
}
