import type { Plan } from '../../../coaching/plan.ts';
import type {
  CalmReview,
  HubProgress,
  LastValues,
  Lesson,
  NewPainClosing,
  NewPlan,
  PainClosing,
  PeriodComparison,
  PlanTemplate,
  PlanVersion,
  StudentChange,
  StudentList,
  StudentView,
} from '../../../streaming/hubContract/students.ts';
import type { HubSessionList } from '../../../streaming/hubContract/review.ts';
import { API, type Asking, part } from './asking.ts';

/** Two periods, epoch ms. */
export interface Periods {
  readonly aFromMs: number;
  readonly aToMs: number;
  readonly bFromMs: number;
  readonly bToMs: number;
}

const at = (id: string, rest = ''): string => `students/${part(id)}${rest}`;

const queryOf = (periods: Periods): string =>
  Object.entries(periods)
    .map(([name, ms]) => `${name}=${Number(ms)}`)
    .join('&');

/** A coach's students, their plans and months. */
export const studentsClient = ({ get, send }: Asking) => ({
  students: () => get<StudentList>('students'),
  student: (id: string) => get<StudentView>(at(id)),
  changeStudent: (id: string, change: StudentChange) => send<null>('PATCH', at(id), change),
  deleteStudent: (id: string, name: string) => send<null>('DELETE', at(id), { name }),
  exportAddress: (id: string) => `${API}/${at(id, '/export')}`,
  sessions: (id: string, beforeMs: number | null) =>
    get<HubSessionList>(at(id, `/sessions${beforeMs === null ? '' : `?beforeMs=${beforeMs}`}`)),
  progress: (id: string) => get<HubProgress>(at(id, '/progress')),
  lastValues: (id: string) => get<LastValues>(at(id, '/last')),
  compare: (id: string, periods: Periods) =>
    get<PeriodComparison>(at(id, `/compare?${queryOf(periods)}`)),
  plans: (id: string) => get<readonly PlanVersion[]>(at(id, '/plans')),
  changePlan: (id: string, plan: NewPlan) => send<PlanVersion>('POST', at(id, '/plans'), plan),
  addLesson: (id: string, lesson: Omit<Lesson, 'id'>) =>
    send<Lesson>('POST', at(id, '/lessons'), lesson),
  dropLesson: (lessonId: string) => send<null>('DELETE', `lessons/${part(lessonId)}`),
  closePain: (id: string, closing: NewPainClosing) =>
    send<PainClosing>('POST', at(id, '/pain-closings'), closing),
  reopenPain: (closingId: string) => send<null>('DELETE', `pain-closings/${part(closingId)}`),
  reviewCalm: () => send<CalmReview>('POST', 'calm-reviews'),
  undoCalm: (id: string) => send<null>('DELETE', `calm-reviews/${part(id)}`),
  templates: () => get<readonly PlanTemplate[]>('templates'),
  addTemplate: (name: string, plan: Plan) =>
    send<PlanTemplate>('POST', 'templates', { name, plan }),
  dropTemplate: (id: string) => send<null>('DELETE', `templates/${part(id)}`),
});
