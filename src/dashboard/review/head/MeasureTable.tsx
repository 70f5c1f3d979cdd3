import type { JudgedRepetition } from '../../../coaching/judgement.ts';
import type { Plan, Target, TargetMeasure } from '../../../coaching/plan.ts';
import type { SpreadView } from '../../../streaming/sessionsContract.ts';
import { Bracket, zeroOf } from '../../measures/Bar.tsx';
import { SCALES, place } from '../../measures/rows.ts';
import { Shape } from '../../practice/shapes.tsx';
import { t } from '../../strings/strings.ts';
import type { Corrections } from '../view.ts';
import { type Headline, headlinesOf } from './headline.ts';

const words = t.review.head;

/** Fewer values than this: their median is said to say little. */
const FEW = 5;

interface SpreadProps {
  readonly measure: TargetMeasure;
  readonly spread: SpreadView | null;
  readonly kind: 'rehearsals' | 'balls';
  readonly target: Target | null;
}

const SHAPES = { rehearsals: 'rehearsal', balls: 'ball' } as const;

function Numbers({ measure, spread, kind, target }: SpreadProps) {
  if (spread === null)
    return (
      <span class="fine">
        <Shape mark={SHAPES[kind]} />
        {words.none}
      </span>
    );
  const { plusMinus } = t.measures.info[measure].accuracy;
  const text = (value: number): string => t.measures.value(measure, value, target ?? undefined);
  return (
    <>
      <Shape mark={SHAPES[kind]} />
      <strong>{text(spread.median)}</strong>{' '}
      <small>
        {t.measures.plusMinus(measure, plusMinus)}, {words.n(spread.count)}
      </small>
      {spread.count > 1 && (
        <small class="middle">{words.middle(text(spread.low), text(spread.high))}</small>
      )}
    </>
  );
}

function Spread({ measure, spread, kind }: Omit<SpreadProps, 'target'>) {
  if (spread === null) return null;
  const scale = SCALES[measure];
  const { low, median, high } = spread;
  const [from, to] = [place(scale, low), place(scale, high)];
  return (
    <>
      <div class={`middle-half ${kind}`} style={{ left: `${from}%`, width: `${to - from}%` }} />
      <div class={`median ${kind}`} style={{ left: `${place(scale, median)}%` }}>
        <Shape mark={SHAPES[kind]} />
      </div>
    </>
  );
}

function Picture({ line }: { readonly line: Headline }) {
  const { measure, target } = line;
  const scale = SCALES[measure];
  return (
    <div class="bar-track spread-track" aria-hidden="true">
      {target !== null && <Bracket scale={scale} target={target} />}
      <div class="zero" style={{ left: `${zeroOf(scale)}%` }} />
      <Spread measure={measure} spread={line.rehearsals} kind="rehearsals" />
      <Spread measure={measure} spread={line.balls} kind="balls" />
    </div>
  );
}

function Line({ line }: { readonly line: Headline }) {
  const { measure, target, judged, reached } = line;
  const { name, term } = t.measures.info[measure];
  return (
    <tr data-measure={measure}>
      <th scope="row">
        {name} {term !== null && <small>{term}</small>}
      </th>
      <td>
        <span class="narrow-only">{words.target}: </span>
        {target === null ? t.measures.noTarget : t.measures.target(measure, target)}
      </td>
      <td>
        <Numbers measure={measure} spread={line.rehearsals} kind="rehearsals" target={target} />
        {judged > 0 && <small class="middle">{words.reached(reached, judged)}</small>}
      </td>
      <td>
        <Numbers measure={measure} spread={line.balls} kind="balls" target={target} />
      </td>
      <td class="picture">
        <Picture line={line} />
      </td>
    </tr>
  );
}

const isFew = ({ rehearsals, balls }: Headline): boolean =>
  [rehearsals, balls].some((s) => s !== null && s.count < FEW);

/** Each measure of a session: median, how sure, how many; rehearsals and balls apart, beside the target. */
export function MeasureTable(props: {
  readonly repetitions: readonly JudgedRepetition[];
  readonly plan: Plan;
  readonly corrected: Corrections;
}) {
  const lines = headlinesOf(props.repetitions, props.plan, props.corrected);
  if (lines.every((line) => line.rehearsals === null && line.balls === null))
    return (
      <section>
        <h2>{words.title}</h2>
        <p class="empty">{words.nothing}</p>
      </section>
    );
  return (
    <section>
      <h2>{words.title}</h2>
      <div class="table-scroll" tabIndex={0} role="region" aria-label={words.title}>
        <table class="measure-table">
          <thead>
            <tr>
              <th scope="col">{words.measure}</th>
              <th scope="col">{words.target}</th>
              <th scope="col">
                <Shape mark="rehearsal" /> {words.rehearsals}
              </th>
              <th scope="col">
                <Shape mark="ball" /> {words.balls}
              </th>
              <th scope="col">{words.picture}</th>
            </tr>
          </thead>
          <tbody>
            {lines.map((line) => (
              <Line key={line.measure} line={line} />
            ))}
          </tbody>
        </table>
      </div>
      <p class="fine">
        {lines.some(isFew) && `${words.few} `}
        {words.note} {t.measures.basis}
      </p>
    </section>
  );
}
