import { useEffect } from 'preact/hooks';
import { unknownSessions } from '../../coaching/notCounted.ts';
import type { PlanView } from '../../streaming/planContract.ts';
import type { TodayView } from '../../streaming/todayContract.ts';
import { useSection } from '../feed/hooks.ts';
import { useLoad } from '../sessions/useLoad.ts';

/** While numbers are on their way they are asked for so often, ms. */
const AGAIN_MS = 3000;

/** The plan and the practice before, asked for anew until every number is there; `null` where nothing is kept. */
export function useToday(): { readonly plan: PlanView | null; readonly today: TodayView | null } {
  const { data: plan, quietly: planAgain } = useLoad<PlanView>('plan');
  const { data: today, quietly: todayAgain } = useLoad<TodayView>('today');
  const stage = useSection('stage');
  const reps = useSection('person')?.lastSession?.repetitions ?? 0;
  const waiting =
    (plan !== null && unknownSessions(plan.week.notCounted) > 0) ||
    ['recording', 'analysing'].includes(today?.last?.notCounted ?? '');
  useEffect(() => {
    const again = (): void => {
      planAgain();
      todayAgain();
    };
    again();
    if (!waiting) return;
    const timer = setInterval(again, AGAIN_MS);
    return () => clearInterval(timer);
  }, [waiting, stage, reps, planAgain, todayAgain]);
  return { plan, today };
}
