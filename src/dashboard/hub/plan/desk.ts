import type {
  LastValues,
  PlanTemplate,
  PlanVersion,
  StudentView,
} from '../../../streaming/hubContract/students.ts';

/** What a plan is written from. */
export interface PlanDesk {
  readonly student: StudentView;
  readonly versions: readonly PlanVersion[];
  readonly templates: readonly PlanTemplate[];
  readonly last: LastValues;
}
