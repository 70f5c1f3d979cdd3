import type { PracticeCounts } from '../coaching/notCounted.ts';
import type { Plan } from '../coaching/plan.ts';

/** What the student's own service serves of the plan. Types only. Times are epoch ms. */

/** One version of the plan that the student wrote. */
export interface OwnPlan {
  /** From 1 on. */
  readonly number: number;
  readonly madeMs: number;
  readonly plan: Plan;
}

/** GET /api/plan, and the answer to PUT /api/plan with a plan as its body. */
export interface PlanView {
  /** What the next practice is judged by. */
  readonly plan: Plan;
  /** Who wrote it; a coach's plan is not changed here. */
  readonly author: 'default' | 'student' | 'coach';
  /** Newest first, each with what it changed, one sentence each. */
  readonly versions: readonly (OwnPlan & { readonly changes: readonly string[] })[];
  /** Practice of the last seven days. */
  readonly week: PracticeCounts;
}
