import { MEASURE_INFO } from './measureInfo.ts';
import { targetText } from './measureText.ts';
import {
  type OwnRange,
  type Plan,
  STAGES,
  TARGET_MEASURES,
  type Target,
  type TargetMeasure,
  askedRatio,
} from './plan.ts';

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

const asks = (measure: TargetMeasure, target: Target | null): string =>
  target === null ? 'not asked' : targetText(measure, target);

const changed = (what: string, before: string, after: string): string[] =>
  before === after ? [] : [`${capital(what)}: ${after}, was ${before}.`];

function ratioText(plan: Plan): string {
  const { rehearsals, balls } = askedRatio(plan);
  return balls === 0 ? 'rehearsals only' : `${rehearsals} to ${balls}`;
}

const targetChanges = (before: Plan, after: Plan): string[] =>
  TARGET_MEASURES.flatMap((m) =>
    changed(MEASURE_INFO[m].name, asks(m, before.targets[m]), asks(m, after.targets[m])),
  );

const RANGE_NAMES: Readonly<Record<keyof OwnRange, string>> = {
  externalRotationDeg: 'own range, arm turned out',
  flexionDeg: 'own range, forward bend',
  lateralTrailDeg: 'own range, bend to the trail side',
  lateralLeadDeg: 'own range, bend to the lead side',
};

function rangeChanges({ ownRange: before }: Plan, { ownRange: after }: Plan): string[] {
  const text = (deg: number | undefined): string => (deg === undefined ? 'not set' : `${deg}°`);
  return (Object.keys(RANGE_NAMES) as (keyof OwnRange)[]).flatMap((key) =>
    changed(RANGE_NAMES[key], text(before[key]), text(after[key])),
  );
}

function checklistChanges({ checklist: before }: Plan, { checklist: after }: Plan): string[] {
  const added = after.filter((item) => !before.includes(item));
  const gone = before.filter((item) => !after.includes(item));
  const moved = added.length + gone.length === 0 && before.join('\n') !== after.join('\n');
  return [
    ...added.map((item) => `Checklist, new: ${item}`),
    ...gone.map((item) => `Checklist, no longer: ${item}`),
    ...(moved ? ['Checklist: another order.'] : []),
  ];
}

function noteChange({ note: before }: Plan, { note: after }: Plan): string[] {
  if (before === after) return [];
  if (after === '') return ['The note was taken away.'];
  return [before === '' ? 'A note was added.' : 'The note was rewritten.'];
}

/** What is different in `after`, one sentence each; empty where nothing is. */
export const planChanges = (before: Plan, after: Plan): readonly string[] => [
  ...changed('name', before.name, after.name),
  ...changed('stage', STAGES[before.stage].name, STAGES[after.stage].name),
  ...changed('mix', ratioText(before), ratioText(after)),
  ...targetChanges(before, after),
  ...changed(
    'repetitions in a session',
    `at most ${before.volume.perSession}`,
    `at most ${after.volume.perSession}`,
  ),
  ...changed(
    'repetitions in a week',
    `at most ${before.volume.perWeek}`,
    `at most ${after.volume.perWeek}`,
  ),
  ...rangeChanges(before, after),
  ...checklistChanges(before, after),
  ...noteChange(before, after),
];
