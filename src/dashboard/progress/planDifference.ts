import {
  type Plan,
  TARGET_MEASURES,
  type TargetMeasure,
  type Target,
} from '../../coaching/plan.ts';

/** One thing in which two plans differ. */
export type PlanChange =
  | {
      readonly what: 'target';
      readonly measure: TargetMeasure;
      readonly before: Target | null;
      readonly after: Target | null;
    }
  | {
      readonly what: 'ratio' | 'volume' | 'stage' | 'other';
      readonly before: string;
      readonly after: string;
    };

const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

const ratioText = ({ ratio }: Plan): string => `${ratio.rehearsals}:${ratio.balls}`;
const volumeText = ({ volume }: Plan): string => `${volume.perSession}, ${volume.perWeek}`;

/** What a coach changed from one plan to the next; `other` where only name, note or checklist did. */
export function planDifference(before: Plan, after: Plan): readonly PlanChange[] {
  const targets = TARGET_MEASURES.filter((m) => !same(before.targets[m], after.targets[m])).map(
    (measure): PlanChange => ({
      what: 'target',
      measure,
      before: before.targets[measure],
      after: after.targets[measure],
    }),
  );
  const texts = [
    ['ratio', ratioText(before), ratioText(after)],
    ['volume', volumeText(before), volumeText(after)],
    ['stage', before.stage, after.stage],
  ] as const;
  const others = texts
    .filter(([, a, b]) => a !== b)
    .map(([what, a, b]): PlanChange => ({ what, before: a, after: b }));
  const all = [...targets, ...others];
  return all.length > 0 ? all : [{ what: 'other', before: before.name, after: after.name }];
}
