import { measureValue } from '../../coaching/measureValue.ts';
import type { AnalysisResult, JudgedRepetition, SensorQuality } from '../../analysis/result.ts';
import type { CalibrationQuality } from '../../body/calibrationResult.ts';
import { FLAG_TEXT } from '../../coaching/flagText.ts';
import type { Check } from '../../coaching/judgement.ts';
import { MEASURE_INFO } from '../../coaching/measureInfo.ts';
import { measureLabel, measureText, percentText, targetText } from '../../coaching/measureText.ts';
import {
  type Plan,
  TARGET_BASIS,
  TARGET_MEASURES,
  type TargetMeasure,
  askedRatio,
} from '../../coaching/plan.ts';
import { CARRIED } from '../../coaching/nextStep.ts';
import { NOT_A_MEDICAL_DEVICE, OTHERS_COME_FIRST } from '../../coaching/safetyTexts.ts';
import { summarise } from '../../coaching/summary.ts';
import type { SessionHeader } from '../../sessions/header.ts';
import { minutes } from './progress.ts';
import { table } from './table.ts';

/** What the readable report is made of. */
export interface ReportParts {
  readonly header: SessionHeader;
  readonly plan: Plan;
  readonly analysis: AnalysisResult;
  /** What the reader passed over. */
  readonly notes: readonly string[];
}

/** The result of one session as a person reads it. */
export function report(parts: ReportParts): string {
  const { analysis, plan } = parts;
  const sections = [
    title(parts),
    calibration(analysis.calibration),
    sensors(analysis, parts.notes),
    repetitions(analysis, plan),
    together(analysis, plan),
    warnings(analysis),
    footing(plan),
  ];
  return `${sections
    .filter((s) => s.length > 0)
    .map((s) => s.join('\n'))
    .join('\n\n')}\n`;
}

function title({ header, plan, analysis }: ReportParts): string[] {
  const when = header.startedAt === null ? '' : `, recorded ${header.startedAt.replace('T', ' ')}`;
  const lines = [
    `Session ${header.id}: ${header.hand}-handed, ${minutes(analysis.session.durationS)}${when}`,
    `Plan: ${plan.name}`,
  ];
  if (header.simulated) lines.push('SIMULATED data: no person was measured.');
  return lines;
}

function calibration(quality: CalibrationQuality): string[] {
  const verdict = quality.accepted
    ? 'accepted'
    : 'REFUSED: nothing can be measured from this recording';
  const rows = (['chest', 'trailArm'] as const).map((sensor) => {
    const { explained, spreadDeg, squarenessDeg } = quality[sensor];
    return [
      `  ${SENSOR_NAMES[sensor]}`,
      `axis explained ${explained === null ? 'not measured' : explained.toFixed(3)}`,
      `spread ${degreesText(spreadDeg)}`,
      `off square ${degreesText(squarenessDeg)}`,
    ];
  });
  const problems = quality.problems.map(
    (p) => `  ${p.refuses ? 'Refused' : 'Doubt'}: ${p.message}`,
  );
  return [`Calibration: ${verdict}`, ...table(rows), ...problems];
}

const SENSOR_NAMES = { chest: 'chest', trailArm: 'trail arm' } as const;
const degreesText = (value: number | null): string =>
  value === null ? 'not measured' : `${value.toFixed(1)}°`;

function sensors({ quality }: AnalysisResult, notes: readonly string[]): string[] {
  const rows = (['chest', 'trailArm'] as const).map((sensor) => [
    `  ${SENSOR_NAMES[sensor]}`,
    ...qualityCells(quality[sensor]),
  ]);
  return ['Sensors', ...table(rows), ...notes.map((note) => `  ${note}`)];
}

function qualityCells(q: SensorQuality): string[] {
  return [
    q.rateHz === null ? 'rate unknown' : `${q.rateHz.toFixed(1)} Hz`,
    `${q.lostPct.toFixed(1)} % lost`,
    gapText(q.gaps),
    `${q.saturated} at the end of the range`,
    q.clockResidualMs === null
      ? 'no device clock'
      : `clock steady to ${q.clockResidualMs.toFixed(1)} ms`,
  ];
}

function gapText(gaps: SensorQuality['gaps']): string {
  if (gaps.length === 0) return 'no gaps';
  const shown = gaps.slice(0, 3).map((g) => `${g.fromS.toFixed(2)}-${g.toS.toFixed(2)} s`);
  const more = gaps.length > 3 ? ` and ${gaps.length - 3} more` : '';
  return `${gaps.length === 1 ? '1 gap' : `${gaps.length} gaps`} (${shown.join(', ')}${more})`;
}

const KIND_NAMES = {
  rehearsal: 'rehearsal',
  ball: 'ball',
  practiceSwing: 'practice swing',
} as const;
/** Short heads for a table; the long names follow below it. */
const HEADS: Readonly<Record<TargetMeasure, string>> = {
  holdS: 'hold',
  chestLeadMs: 'chest lead',
  leanChangeDeg: 'lean',
  addedFlexionDeg: 'added flexion',
  keptRotationDeg: 'kept rotation',
  turnTowardTargetDeg: 'turn',
  releaseToCatchMs: 'release-catch',
};

function repetitions({ repetitions: all }: AnalysisResult, plan: Plan): string[] {
  if (all.length === 0) return ['No repetition was found.'];
  const asked = TARGET_MEASURES.filter((m) => plan.targets[m] !== null);
  const measures = [...asked, ...TARGET_MEASURES.filter((m) => !asked.includes(m))];
  const targets = measures.map((m) => {
    const target = plan.targets[m];
    return target === null ? 'no target' : short(targetText(m, target));
  });
  const rows = [
    ['#', 'kind', 'at', ...measures.map((m) => HEADS[m]), 'verdict'],
    ['', 'target', '', ...targets, ''],
    ...all.map((r) => repetitionRow(r, measures, plan)),
  ];
  return [
    'Repetitions (x beside a value: target not reached)',
    ...table(rows).map((line) => `  ${line}`),
    ...all.flatMap(flagLines),
  ];
}

/** So that a row fits a terminal. */
const short = (target: string): string =>
  target.replace('at least ', '≥ ').replace('at most ', '≤ ');

function repetitionRow(
  r: JudgedRepetition,
  measures: readonly TargetMeasure[],
  plan: Plan,
): string[] {
  return [
    String(r.index),
    KIND_NAMES[r.kind],
    `${r.topS.toFixed(1)} s`,
    ...measures.map((m) => measureCell(r, m, plan)),
    verdictText(r),
  ];
}

function measureCell(r: JudgedRepetition, measure: TargetMeasure, plan: Plan): string {
  const value = measureValue(r, measure);
  const check = r.kind === 'rehearsal' ? checkOf(r.verdict.checks, measure) : undefined;
  if (value === null) return check?.passed === false ? 'missed x' : '-';
  const text = measureText(measure, value, check?.target ?? plan.targets[measure] ?? undefined);
  return check?.passed === false ? `${text} x` : text;
}

const checkOf = (checks: readonly Check[], measure: TargetMeasure): Check | undefined =>
  checks.find((c) => c.measure === measure);

function verdictText(r: JudgedRepetition): string {
  if (r.kind !== 'rehearsal') return '';
  const { passed, cue } = r.verdict;
  const words = passed === null ? 'not scored' : passed ? 'passed' : 'not passed';
  return passed === null ? cue.text : `${words}: ${cue.text}`;
}

const flagLines = (r: JudgedRepetition): string[] =>
  r.flags.map((flag) => `  ${r.index}: ${FLAG_TEXT[flag]}.`);

function together(analysis: AnalysisResult, plan: Plan): string[] {
  if (analysis.repetitions.length === 0) return [];
  const { ledger, carryOver } = analysis;
  const asked = askedRatio(plan);
  const summary = summarise(analysis.repetitions, ledger, plan, analysis.warnings);
  const ratio = ledger.ratio === null ? '' : `, ${ledger.ratio.toFixed(1)} to 1`;
  return [
    `Ledger: ${ledger.entries || 'empty'}`,
    `  ${plural(ledger.rehearsals, 'rehearsal')}, ${plural(ledger.balls, 'ball')}${ratio}; asked for ${asked.rehearsals} to ${asked.balls}; ${ledger.ballsInMix} of ${plural(ledger.balls, 'ball')} in the mix`,
    `Scored rehearsals: ${summary.passed} of ${summary.scored} passed`,
    ...(summary.mostFrequentCue === null
      ? []
      : [
          `Most frequent cue: ${summary.mostFrequentCue.cue.text} (${plural(summary.mostFrequentCue.count, 'time')})`,
        ]),
    `Carry-over to balls (a ball's measure over the rehearsals'): added flexion ${shareText(carryOver.addedFlexion)}, kept rotation ${shareText(carryOver.keptRotation)}`,
  ];
}

const plural = (count: number, word: string): string => `${count} ${word}${count === 1 ? '' : 's'}`;
const shareText = (value: number | null): string =>
  value === null ? 'too little to say' : percentText(value, [CARRIED]);

function warnings(analysis: AnalysisResult): string[] {
  if (analysis.warnings.length === 0) return [];
  return [
    'Warnings',
    ...analysis.warnings.map(
      (w) =>
        `  at ${w.atS.toFixed(1)} s: ${w.text}${w.times === undefined ? '' : ` (${plural(w.times, 'time')})`}`,
    ),
  ];
}

function footing(plan: Plan): string[] {
  const asked = TARGET_MEASURES.filter((m) => plan.targets[m] !== null);
  const rows = asked.map((m) => [`  ${HEADS[m]}`, measureLabel(m), MEASURE_INFO[m].accuracy.text]);
  return [
    `Targets: ${TARGET_BASIS}. How sure the numbers are; compare a person only with themselves:`,
    ...table(rows),
    '',
    NOT_A_MEDICAL_DEVICE,
    OTHERS_COME_FIRST,
  ];
}
