import { DEFAULT_PLAN, type Plan } from '../../../coaching/plan.ts';
import { h } from '../../strings/hub.ts';
import type { PlanDesk } from './desk.ts';

const words = h.planChange;

/** Something that a plan can be started from. */
export interface Start {
  readonly id: string;
  readonly label: string;
  readonly plan: Plan;
}

/** The plan of now first, then former versions, templates and the standard one. */
export function startsOf({ student, versions, templates }: PlanDesk): readonly Start[] {
  const { plan: now } = student;
  return [
    { id: now.id, label: words.now(now.number), plan: now.plan },
    ...versions
      .filter(({ id }) => id !== now.id)
      .map(({ id, number, validFromMs, plan }) => ({
        id,
        label: words.version(number, validFromMs),
        plan,
      })),
    ...templates.map(({ id, name, plan }) => ({ id, label: words.template(name), plan })),
    { id: 'standard', label: words.standard, plan: DEFAULT_PLAN },
  ];
}
