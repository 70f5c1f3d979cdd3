import { useState } from 'preact/hooks';
import type { Plan } from '../../../coaching/plan.ts';
import type {
  PlanConflict,
  PlanVersion,
  NewPlan,
} from '../../../streaming/hubContract/students.ts';
import { RefusedAnswer } from '../../review/source.ts';
import { type Act, useAct } from '../parts/useAct.ts';
import { useHub } from '../shell/hub.ts';

/** A version that was saved meanwhile, beside what is to be saved. */
interface Clash {
  readonly newest: PlanVersion;
  readonly mine: Plan;
}

function newestIn(error: unknown): PlanVersion | null {
  if (!(error instanceof RefusedAnswer) || error.status !== 409) return null;
  return (error.body as PlanConflict | null)?.newest ?? null;
}

/** Saves a version; where another was saved meanwhile, nothing is, and both are there to choose from. */
export function useSavePlan(
  studentId: string,
  saved: () => void,
): Pick<Act, 'busy' | 'problem'> & {
  readonly clash: Clash | null;
  readonly back: () => void;
  readonly save: (written: NewPlan, mine?: Plan) => void;
} {
  const { client } = useHub();
  const [clash, setClash] = useState<Clash | null>(null);
  const { busy, problem, run } = useAct();
  const save = (written: NewPlan, mine = written.plan): void => {
    let met: Clash | null = null;
    const send = async (): Promise<void> => {
      try {
        await client.students.changePlan(studentId, written);
      } catch (error) {
        const newest = newestIn(error);
        if (newest === null) throw error;
        met = { newest, mine };
      }
    };
    void run(send).then((done) => {
      if (done && met === null) saved();
      else if (met !== null) setClash(met);
    });
  };
  return { busy, problem, clash, back: () => setClash(null), save };
}
