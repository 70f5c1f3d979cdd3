import type { PlanView } from '../../streaming/planContract.ts';
import { hrefOf } from '../shell/router.ts';
import { t } from '../strings/strings.ts';

/** How much of the week's volume is used. */
export function Week({ view }: { readonly view: PlanView }) {
  const { perWeek } = view.plan.volume;
  const done = view.week.repetitions;
  // Simulated ones and the one under way are told of elsewhere on this page.
  const others = { ...view.week.notCounted, simulated: 0, recording: 0 };
  return (
    <p>
      <meter min={0} max={perWeek} value={Math.min(done, perWeek)} aria-hidden="true" />{' '}
      {[t.counts.week(view.week, perWeek), ...t.counts.notCounted(others)].join(' ')}{' '}
      {done >= perWeek && <b>{t.planPage.weekFull}</b>}{' '}
      <a href={hrefOf('plan')}>{t.planPage.read}</a>
    </p>
  );
}
