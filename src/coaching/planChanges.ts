import { MEASURE_INFO } from './measureInfo.ts';
import { targetText } from './measureText.ts';
import type { PlanField } from './planFields.ts';
import {
  OWN_RANGE_KEYS,
  type OwnRange,
  type Plan,
  STAGES,
  TARGET_MEASURES,
  type Target,
  type TargetMeasure,
  askedRatio,
} from './plan.ts';

/** What the sentences about a changed plan are made of. */
export interface PlanChangeWords {
  readonly changed: (what: string, before: string, after: string) => string;
  readonly fields: Readonly<
    Record<
      'name' | 'stage' | 'mix' | 'perSession' | 'perWeek' | 'checklist' | 'note' | keyof OwnRange,
      string
    >
  >;
  readonly measure: (measure: TargetMeasure) => string;
  readonly target: (measure: TargetMeasure, target: Target) => string;
  readonly notAsked: string;
  readonly stage: (stage: Plan['stage']) => string;
  readonly rehearsalsOnly: string;
  readonly ratio: (rehearsals: number, balls: number) => string;
  readonly atMost: (n: number) => string;
  readonly notSet: string;
  readonly added: (item: string) => string;
  readonly gone: (item: string) => string;
  readonly otherOrder: string;
  readonly note: Readonly<Record<'gone' | 'added' | 'rewritten', string>>;
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

export const ENGLISH: PlanChangeWords = {
  changed: (what, before, after) => `${capital(what)}: ${after}, was ${before}.`,
  fields: {
    name: 'name',
    stage: 'stage',
    mix: 'mix',
    perSession: 'repetitions per session',
    perWeek: 'repetitions per week',
    checklist: 'checklist',
    note: 'note',
    externalRotationDeg: 'comfortable range, arm rotated outward',
    flexionDeg: 'comfortable range, forward bend',
    lateralTrailDeg: 'comfortable range, lean to the trail side',
    lateralLeadDeg: 'comfortable range, lean to the lead side',
  },
  measure: (measure) => MEASURE_INFO[measure].name,
  target: targetText,
  notAsked: 'no target',
  stage: (stage) => STAGES[stage].name,
  rehearsalsOnly: 'rehearsals only',
  ratio: (rehearsals, balls) => `${rehearsals} to ${balls}`,
  atMost: (n) => `at most ${n}`,
  notSet: 'not set',
  added: (item) => `Checklist, added: ${item}`,
  gone: (item) => `Checklist, removed: ${item}`,
  otherOrder: 'Checklist: new order.',
  note: {
    gone: 'Note removed.',
    added: 'Note added.',
    rewritten: 'Note changed.',
  },
};

type Field = keyof PlanChangeWords['fields'];

/** One field of a plan, in words. */
interface Line {
  readonly field: PlanField;
  readonly what: string;
  readonly text: string;
}

function ratioText(plan: Plan, words: PlanChangeWords): string {
  const { rehearsals, balls } = askedRatio(plan);
  return balls === 0 ? words.rehearsalsOnly : words.ratio(rehearsals, balls);
}

/** Every field that is one value, in the order of reading. */
function linesOf(plan: Plan, words: PlanChangeWords): readonly Line[] {
  const line = (field: Field, text: string): Line => ({ field, what: words.fields[field], text });
  const target = (m: TargetMeasure): string => {
    const asked = plan.targets[m];
    return asked === null ? words.notAsked : words.target(m, asked);
  };
  return [
    line('name', plan.name),
    line('stage', words.stage(plan.stage)),
    line('mix', ratioText(plan, words)),
    ...TARGET_MEASURES.map((m) => ({ field: m, what: words.measure(m), text: target(m) })),
    line('perSession', words.atMost(plan.volume.perSession)),
    line('perWeek', words.atMost(plan.volume.perWeek)),
    ...OWN_RANGE_KEYS.map((key) => {
      const deg = plan.ownRange[key];
      return line(key, deg === undefined ? words.notSet : `${deg}°`);
    }),
  ];
}

/** Every field of a plan in words, in the order of reading. */
export const planLines = (plan: Plan, words: PlanChangeWords = ENGLISH): readonly Line[] => [
  ...linesOf(plan, words),
  { field: 'checklist', what: words.fields.checklist, text: plan.checklist.join('\n') },
  { field: 'note', what: words.fields.note, text: plan.note },
];

function checklistChanges(
  { checklist: before }: Plan,
  { checklist: after }: Plan,
  words: PlanChangeWords,
): string[] {
  const added = after.filter((item) => !before.includes(item));
  const gone = before.filter((item) => !after.includes(item));
  const moved = added.length + gone.length === 0 && before.join('\n') !== after.join('\n');
  return [...added.map(words.added), ...gone.map(words.gone), ...(moved ? [words.otherOrder] : [])];
}

function noteChange({ note: before }: Plan, { note: after }: Plan, w: PlanChangeWords): string[] {
  if (before === after) return [];
  if (after === '') return [w.note.gone];
  return [before === '' ? w.note.added : w.note.rewritten];
}

/** What is different in `after`, one sentence each; empty where nothing is. */
export function planChanges(
  before: Plan,
  after: Plan,
  words: PlanChangeWords = ENGLISH,
): readonly string[] {
  const former = linesOf(before, words);
  const fields = linesOf(after, words).flatMap(({ what, text }, i) => {
    const was = former[i]?.text ?? '';
    return text === was ? [] : [words.changed(what, was, text)];
  });
  return [
    ...fields,
    ...checklistChanges(before, after, words),
    ...noteChange(before, after, words),
  ];
}
