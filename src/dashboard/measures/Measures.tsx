import type { Target } from '../../coaching/plan.ts';
import { useSection } from '../feed/hooks.ts';
import { t } from '../strings/strings.ts';
import { type MeasureRow, SCALES, type Scale, measureRows, place } from './rows.ts';

/** The bracket of the target: open where the plan leaves a side open. */
function Bracket({ scale, target }: { scale: Scale; target: Target }) {
  const from = place(scale, target.min ?? scale.low);
  const to = place(scale, target.max ?? scale.high);
  const sides = `${target.min === undefined ? '' : ' has-min'}${target.max === undefined ? '' : ' has-max'}`;
  return <div class={`bracket${sides}`} style={{ left: `${from}%`, width: `${to - from}%` }} />;
}

function Value({ scale, value, sure }: { scale: Scale; value: number; sure: number }) {
  const zero = place(scale, Math.max(scale.low, 0));
  const at = place(scale, value);
  const low = place(scale, value - sure);
  const width = place(scale, value + sure) - low;
  const left = Math.min(at, zero);
  return (
    <>
      <div class="bar-value" style={{ left: `${left}%`, width: `${Math.abs(at - zero)}%` }} />
      <div class="whisker" style={{ left: `${low}%`, width: `${width}%` }} />
      <div class="bar-end" style={{ left: `${at}%` }} />
    </>
  );
}

function Bar({ row, sure }: { row: MeasureRow; sure: number }) {
  const scale = SCALES[row.measure];
  const zero = place(scale, Math.max(scale.low, 0));
  return (
    <div class="bar-track" aria-hidden="true">
      {row.target !== null && <Bracket scale={scale} target={row.target} />}
      <div class="zero" style={{ left: `${zero}%` }} />
      {row.value !== null && <Value scale={scale} value={row.value} sure={sure} />}
    </div>
  );
}

function Outcome({ passed }: Pick<MeasureRow, 'passed'>) {
  if (passed === null) return null;
  return (
    <>
      <b aria-hidden="true">{passed ? ' ✓' : ' ✕'}</b>
      <span class="hidden"> {passed ? t.measures.in : t.measures.out}</span>
    </>
  );
}

function Row({ row }: { row: MeasureRow }) {
  const { measure, value, target, passed } = row;
  const { name, term, accuracy } = t.measures.info[measure];
  const state = passed === null ? 'open' : passed ? 'in' : 'out';
  return (
    <li class={`measure measure-${state}`} data-measure={measure} title={accuracy.text}>
      <span class="measure-name">
        {name} {term !== null && <small>{term}</small>}
      </span>
      <span class="measure-value">
        <strong>{t.measures.value(measure, value, target ?? undefined)}</strong>
        {value !== null && <small> {t.measures.plusMinus(measure, accuracy.plusMinus)}</small>}
      </span>
      <Bar row={row} sure={accuracy.plusMinus} />
      <span class="measure-target">
        {target === null ? t.measures.noTarget : t.measures.target(measure, target)}
        <Outcome passed={passed} />
      </span>
    </li>
  );
}

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
      {rows.length === 0 ? (
        <p class="empty">{t.measures.none}</p>
      ) : (
        <ul>
          {rows.map((row) => (
            <Row key={row.measure} row={row} />
          ))}
        </ul>
      )}
      <p class="fine">
        {t.measures.basis} {t.measures.whisker}
      </p>
    </section>
  );
}
