import { measureValue } from '../../coaching/measureValue.ts';
import { repetitionAt } from '../../analysis/labels.ts';
import type { AnalysisResult, JudgedRepetition } from '../../analysis/result.ts';
import { pairTexts } from '../../coaching/differenceText.ts';
import { measureLabel, measureText } from '../../coaching/measureText.ts';
import { TARGET_MEASURES, type Target, type TargetMeasure } from '../../coaching/plan.ts';

/** What can make two results of one recording differ. */
export interface Circumstances {
  readonly here: string;
  /** Version that made the student's result; `null` where it does not say. */
  readonly there: string | null;
  /** Repetitions have been labelled by the coach. */
  readonly labelled: boolean;
}

const KINDS = { rehearsal: 'a rehearsal', ball: 'a ball', practiceSwing: 'a practice swing' };

/** Fewer than so many are named one by one. A choice. */
const FEW = 5;

/**
 * How the hub's result differs from the one that came with the recording, and why, in sentences.
 * Empty where they agree to what is shown, or none came.
 */
export function differences(
  hub: AnalysisResult,
  student: AnalysisResult | null,
  circumstances: Circumstances,
): readonly string[] {
  if (student === null) return [];
  const pairs = hub.repetitions.map((r) => [r, repetitionAt(student.repetitions, r.topS)] as const);
  const both = pairs.filter((pair): pair is Pair => pair[1] !== null);
  const found = new Set(both.map(([, theirs]) => theirs.index));
  const said = [
    ...missing(
      pairs.filter(([, theirs]) => theirs === null).map(([r]) => r.index),
      (list) => `found here only: ${list}`,
    ),
    ...missing(
      student.repetitions.filter((r) => !found.has(r.index)).map((r) => r.index),
      (list) => `found on the student's computer only: ${list} (counted there)`,
    ),
    ...listed(both.flatMap(kindDiffers), 'have another kind'),
    ...listed(both.flatMap(verdictDiffers), 'have another result'),
    ...TARGET_MEASURES.flatMap((measure) => measureDiffers(both, measure)),
    ...ledgerDiffers(hub, student),
  ];
  return said.length === 0 ? [] : [...said, reason(circumstances, both.some(targetsDiffer))];
}

type Pair = readonly [hub: JudgedRepetition, student: JudgedRepetition];

const missing = (indexes: readonly number[], say: (list: string) => string): readonly string[] =>
  indexes.length === 0
    ? []
    : [
        `Repetitions ${say(indexes.slice(0, FEW).join(', ') + (indexes.length > FEW ? ' …' : ''))}.`,
      ];

const listed = (sentences: readonly string[], many: string): readonly string[] =>
  sentences.length <= FEW ? sentences : [`${sentences.length} repetitions ${many}.`];

const kindDiffers = ([a, b]: Pair): readonly string[] =>
  a.kind === b.kind
    ? []
    : [
        `Repetition ${a.index} is ${KINDS[a.kind]} here and ${KINDS[b.kind]} on the student's computer.`,
      ];

/** The targets that a verdict went by stand in it. */
const targetsDiffer = ([a, b]: Pair): boolean =>
  a.kind === 'rehearsal' &&
  b.kind === 'rehearsal' &&
  a.verdict.checks.some(({ measure, target }) => {
    const other = b.verdict.checks.find((c) => c.measure === measure)?.target;
    return other?.min !== target.min || other?.max !== target.max;
  });

const passedText = (passed: boolean | null): string =>
  passed === null ? 'not scored' : passed ? 'passed' : 'not passed';

function verdictDiffers([a, b]: Pair): readonly string[] {
  if (a.kind !== 'rehearsal' || b.kind !== 'rehearsal') return [];
  if (a.verdict.passed === b.verdict.passed) return [];
  return [
    `Repetition ${a.index} is ${passedText(a.verdict.passed)} here and ${passedText(b.verdict.passed)} on the student's computer.`,
  ];
}

/** Only what can be seen: values that are shown alike are alike. */
function measureDiffers(pairs: readonly Pair[], measure: TargetMeasure): readonly string[] {
  const changes = pairs.flatMap(([a, b]) => {
    const [x, y] = [measureValue(a, measure), measureValue(b, measure)];
    const target = targetOf(a, measure);
    const alike = measureText(measure, x, target) === measureText(measure, y, target);
    return x === null || y === null || alike ? [] : [[x, y] as const];
  });
  const most = changes.toSorted(([a, b], [c, d]) => Math.abs(c - d) - Math.abs(a - b))[0];
  if (most === undefined) return [];
  const { here, beside } = pairTexts(measure, ...most);
  const label = measureLabel(measure);
  const where = changes.length === 1 ? 'one repetition' : `${changes.length} repetitions`;
  return [
    `${label.charAt(0).toUpperCase()}${label.slice(1)} differs in ${where}, most in one with ${here} here and ${beside} there.`,
  ];
}

const targetOf = (r: JudgedRepetition, measure: TargetMeasure): Target | undefined =>
  r.kind === 'rehearsal'
    ? r.verdict.checks.find((check) => check.measure === measure)?.target
    : undefined;

const counts = ({ ledger }: AnalysisResult): string =>
  `${ledger.rehearsals} rehearsals and ${ledger.balls} balls`;

const ledgerDiffers = (hub: AnalysisResult, student: AnalysisResult): readonly string[] =>
  hub.ledger.entries === student.ledger.entries
    ? []
    : [
        counts(hub) === counts(student)
          ? 'The order of rehearsals and balls is different here.'
          : `Count here: ${counts(hub)}. On the student's computer: ${counts(student)}.`,
      ];

function reason({ here, there, labelled }: Circumstances, plan: boolean): string {
  const reasons = [
    ...(labelled ? ['the coach has corrected repetitions here'] : []),
    ...(there !== null && there !== here
      ? [`the student's computer has version ${there}, this hub ${here}`]
      : []),
    ...(plan ? ['the plans have different targets'] : []),
  ];
  if (reasons.length > 0) return `Why: ${reasons.join('; ')}.`;
  return there === null
    ? `Why: the recording does not say which version its result is from; this hub has ${here}.`
    : 'Why: versions and plan are the same; there it was measured live, here from the whole recording.';
}
