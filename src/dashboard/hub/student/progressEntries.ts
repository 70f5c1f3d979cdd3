import type {
  HubProgress,
  PlanVersion,
  ProgressSession,
} from '../../../streaming/hubContract/students.ts';
import type { ProgressEntry } from '../../../streaming/sessionsContract.ts';
import type { ProgressMark } from '../../progress/ProgressView.tsx';

function entryOf(
  s: ProgressSession,
  before: ProgressSession | undefined,
  plans: readonly PlanVersion[],
): ProgressEntry {
  const planChanged = before !== undefined && before.planNumber !== s.planNumber;
  const plan = plans.find(({ number }) => number === s.planNumber)?.plan ?? null;
  return {
    id: s.id,
    startedAt: new Date(s.startedMs).toISOString(),
    simulated: s.simulated,
    rehearsals: s.rehearsals,
    balls: s.balls,
    scored: s.scored,
    passed: s.passed,
    warnings: s.warnings,
    planChanged,
    plan: planChanged || before === undefined ? plan : null,
    painBefore: s.painBefore,
    painAfter: s.painAfter,
    repetitions: s.rehearsalCount + s.ballCount,
    carryOver: s.carryOver,
  };
}

/** The hub's months as the progress view takes them. */
export const progressEntries = ({ sessions, plans }: HubProgress): readonly ProgressEntry[] =>
  sessions.map((s, i) => entryOf(s, sessions[i - 1], plans));

export const lessonMarks = ({ lessons }: Pick<HubProgress, 'lessons'>): readonly ProgressMark[] =>
  lessons.map(({ atMs, text }) => ({ at: new Date(atMs).toISOString(), text }));
