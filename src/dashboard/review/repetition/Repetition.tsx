import type { ComponentChildren } from 'preact';
import { useCallback, useEffect, useRef, useState } from 'preact/hooks';
import type { JudgedRepetition } from '../../../coaching/judgement.ts';
import type { RepetitionCurves, SessionDetail } from '../../../streaming/sessionsContract.ts';
import { Fall } from '../../measures/Fall.tsx';
import { MeasureList } from '../../measures/MeasureList.tsx';
import { measureRows } from '../../measures/rows.ts';
import { Shape } from '../../practice/shapes.tsx';
import { t } from '../../strings/strings.ts';
import type { Example } from '../head/examples.ts';
import { useAnswer } from '../useAnswer.ts';
import { type Corrections, markOfRepetition } from '../view.ts';
import { CompareChoice, CompareTable } from './Compare.tsx';
import { Moment } from './Moment.tsx';
import { Words } from './Words.tsx';
import { alignOf } from './events.ts';
import type { CurvesOf } from './useCurves.ts';
import { useKeys } from './useKeys.ts';

const words = t.review.repetition;

interface Neighbours {
  readonly previous: number | null;
  readonly next: number | null;
}

export interface RepetitionProps {
  readonly detail: SessionDetail;
  readonly repetition: JudgedRepetition;
  readonly compared: JudgedRepetition | null;
  readonly repetitions: readonly JudgedRepetition[];
  readonly examples: readonly Example[];
  readonly corrected: Corrections;
  readonly curvesOf: CurvesOf;
  readonly neighbours: Neighbours;
  /** `null` goes back to all. */
  readonly open: (index: number | null) => void;
  readonly compare: (index: number | null) => void;
  readonly slots: (cursorS: number, setCursorS: (s: number) => void) => Slots;
}

/** What others put to a repetition: beside its curves, and below all. */
interface Slots {
  readonly film: ComponentChildren;
  readonly talk: ComponentChildren;
  readonly below: ComponentChildren;
}

function Bar(props: RepetitionProps) {
  const { repetition: r, compared, corrected, neighbours, open } = props;
  const title = useRef<HTMLHeadingElement>(null);
  useEffect(() => title.current?.focus(), []);
  const step = (to: number | null): void => {
    if (to !== null) open(to);
  };
  useKeys({
    previous: () => step(neighbours.previous),
    next: () => step(neighbours.next),
    back: () => open(null),
  });
  const mark = markOfRepetition(r, corrected);
  return (
    <header class="repetition-bar">
      <button type="button" onClick={() => open(null)}>
        {words.back} <kbd>Esc</kbd>
      </button>
      <h1 ref={title} tabIndex={-1}>
        <Shape mark={mark} /> {words.title(r.index)}{' '}
        <small>{words.of(t.ledger.entry[mark], t.sessions.at(r.topS))}</small>
      </h1>
      <CompareChoice
        repetitions={props.repetitions}
        examples={props.examples}
        here={r.index}
        beside={compared?.index ?? null}
        corrected={props.corrected}
        choose={props.compare}
      />
      <span class="steps" title={words.keys}>
        <button
          type="button"
          disabled={neighbours.previous === null}
          onClick={() => step(neighbours.previous)}
        >
          <kbd>←</kbd> {words.previous}
        </button>
        <button
          type="button"
          disabled={neighbours.next === null}
          onClick={() => step(neighbours.next)}
        >
          {words.next} <kbd>→</kbd>
        </button>
      </span>
    </header>
  );
}

function Drawn(
  props: RepetitionProps & {
    readonly cursorS: number;
    readonly setCursorS: (s: number) => void;
    readonly put: Slots;
  },
) {
  const { repetition: r, compared, curvesOf, cursorS, setCursorS } = props;
  const both = useCallback(
    (): Promise<readonly [RepetitionCurves, RepetitionCurves | null]> =>
      Promise.all([curvesOf(r.index), compared === null ? null : curvesOf(compared.index)]),
    [curvesOf, r, compared],
  );
  const { data, problem, again } = useAnswer(both);
  // While another one to compare with is fetched, this one stays.
  const own = useRef<RepetitionCurves>(null);
  own.current = data?.[0] ?? own.current;
  const [curves, others] = data ?? [own.current, null];
  if (problem !== null)
    return (
      <p role="alert" class="moment-curves">
        {words.failed} {problem}{' '}
        <button type="button" onClick={again}>
          {t.review.again}
        </button>
      </p>
    );
  if (curves === null) return <p class="empty drawing-place moment-curves">{words.loading}</p>;
  return (
    <Moment
      repetition={r}
      curves={curves}
      beside={
        compared === null || others === null ? null : { repetition: compared, curves: others }
      }
      leftHanded={props.detail.summary.hand === 'left'}
      cursorS={cursorS}
      setCursorS={setCursorS}
      film={props.put.film}
    />
  );
}

/** One repetition in detail, perhaps with another laid over it. Give it the repetition's index as its key. */
function Open(props: RepetitionProps) {
  const { repetition: r, compared, detail } = props;
  const [cursorS, setCursorS] = useState(alignOf(r));
  const put = props.slots(cursorS, setCursorS);
  return (
    <>
      <div class={put.film ? 'moment with-film' : 'moment'}>
        <Drawn {...props} cursorS={cursorS} setCursorS={setCursorS} put={put} />
        {put.talk && <div class="moment-talk">{put.talk}</div>}
      </div>
      <div class="repetition-columns">
        <section>
          {compared === null ? (
            <>
              <h2>{words.measures}</h2>
              <MeasureList rows={measureRows(r, detail.plan)} explained />
              <Fall repetition={r} />
              <p class="fine">
                {t.measures.basis} {t.measures.whisker}
              </p>
            </>
          ) : (
            <CompareTable here={r} beside={compared} />
          )}
        </section>
        <Words repetition={r} />
      </div>
      {put.below}
    </>
  );
}

/** One repetition of a session: its place among the others, curves, body, measures and words. */
export function Repetition(props: RepetitionProps) {
  const { curvesOf, neighbours } = props;
  useEffect(() => {
    for (const index of [neighbours.next, neighbours.previous])
      if (index !== null) curvesOf(index).catch(() => undefined);
  }, [curvesOf, neighbours.next, neighbours.previous]);
  return (
    <article class="repetition">
      <Bar {...props} />
      <Open key={props.repetition.index} {...props} />
    </article>
  );
}
