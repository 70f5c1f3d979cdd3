import type { Plan } from '../../coaching/plan.ts';
import { readPlan } from '../../sessions/derivatives.ts';
import {
  type RecordedSession,
  openSession,
  requireCalibration,
} from '../../sessions/openSession.ts';
import { readPlanFile } from '../../sessions/planFile.ts';
import { naming } from '../words.ts';
import { type Invocation, choiceOption, onlySession, textOption } from './command.ts';

/** Opens the session that a command names, with the plan given or kept, and closes it in any case. */
export async function withSession(
  invocation: Invocation,
  work: (session: RecordedSession, plan: Plan) => Promise<void>,
): Promise<void> {
  const path = onlySession(invocation);
  const given = textOption(invocation, 'plan');
  const plan = given === undefined ? null : await readPlanFile(given);
  const clock = choiceOption(invocation, 'clock', ['recorded', 'final'] as const);
  try {
    const session = await openSession(path, clock === undefined ? {} : { clock });
    try {
      requireCalibration(session);
      await work(session, plan ?? (await readPlan(session.files)));
    } finally {
      await session.close();
    }
  } catch (error) {
    throw naming(path, error);
  }
}
