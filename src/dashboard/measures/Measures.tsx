import { useSection } from '../feed/hooks.ts';
import { t } from '../strings/strings.ts';
import { MeasureList } from './MeasureList.tsx';
import { measureRows } from './rows.ts';

/** Each measure of the last repetition as a bar, its target as a bracket, its accuracy as a whisker. */
export function Measures() {
  const last = useSection('last');
  const plan = useSection('plan');
  const rows = last === null || plan === null ? [] : measureRows(last, plan);
  return (
    <section class="panel measures" aria-labelledby="measures-label" data-testid="measures">
      <h2 id="measures-label" class="label">
        {t.measures.title}
      </h2>
      {rows.length === 0 ? <p class="empty">{t.measures.none}</p> : <MeasureList rows={rows} />}
      <p class="fine">
        {t.measures.basis} {t.measures.whisker}
      </p>
    </section>
  );
}
