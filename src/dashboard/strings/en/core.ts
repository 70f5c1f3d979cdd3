import type { Problem } from '../../../coaching/jsonReader.ts';
import type { CalibrationProblem } from '../../../body/calibrationResult.ts';
import { FLAG_TEXT } from '../../../coaching/flagText.ts';
import type { Cue, SafetyWarning } from '../../../coaching/judgement.ts';
import { type Plan, STAGES, TARGET_BASIS } from '../../../coaching/plan.ts';
import { planChanges, planLines } from '../../../coaching/planChanges.ts';
import { BEST_RULE, TYPICAL_RULE, WORST_RULE } from '../../../coaching/representative.ts';
import type { PracticeSummary } from '../../../coaching/summary.ts';
import { reasonParts } from '../../../streaming/contract.ts';
import { fill } from '../../../sensors/sentence.ts';
import { FIELDS } from './fields.ts';

/** What the core says. It says it in English, by key and with values; another language looks the key up. */
export const said = {
  cue: (cue: Cue): string => cue.text,
  warning: (warning: Pick<SafetyWarning, 'id' | 'text'>): string => warning.text,
  calibration: (problem: Pick<CalibrationProblem, 'message'>): string => problem.message,
  /** Why a practice, the sensors or the radio do not do something; unknown sentences stay as they came. */
  refusal: (sentence: string): string => sentence,
  /** Why a sensor is not connected, without the system's own words. */
  link: (reason: string): string => reasonParts(reason).sentence,
  /** What becomes of the recording. */
  keeping: (sentence: string): string => sentence,
  field: ({ key, values }: Problem, label: string): string =>
    `${label}: ${fill(FIELDS[key], values)}`,
  lineOf: (n: number, label: string) => `${label}, line ${n}`,
  /** Why a student needs the coach, as the hub said it. */
  need: (sentence: string): string => sentence,
  /** Where the hub's result and the student's differ, as the hub said it. */
  difference: (sentence: string): string => sentence,
  /** What is different in a plan, as the hub said it. */
  planChange: (sentence: string): string => sentence,
  nextStep: (summary: PracticeSummary): string => summary.next.text,
  planChanges: (before: Plan, after: Plan): readonly string[] => planChanges(before, after),
  planLines: (plan: Plan): ReturnType<typeof planLines> => planLines(plan),
  /** The standard plan's own sentences; what a person wrote stays as it is. */
  plan: (plan: Plan): Plan => plan,
};

export const names = {
  flags: FLAG_TEXT,
  stages: STAGES,
  targetBasis: TARGET_BASIS,
  rules: { best: BEST_RULE, typical: TYPICAL_RULE, worst: WORST_RULE },
};
