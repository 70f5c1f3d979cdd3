import type { ComponentChildren } from 'preact';
import { useCallback, useEffect, useMemo, useRef } from 'preact/hooks';
import type { JudgedRepetition } from '../../coaching/judgement.ts';
import type { SessionDetail } from '../../streaming/sessionsContract.ts';
import { t } from '../strings/strings.ts';
import { Overview } from './Overview.tsx';
import { SessionHead } from './head/SessionHead.tsx';
import { examplesOf } from './head/examples.ts';
import { Repetition } from './repetition/Repetition.tsx';
import { useCurves } from './repetition/useCurves.ts';
import type { ReviewSource } from './source.ts';
import { Legend } from './strip/Legend.tsx';
import { Strip } from './strip/Strip.tsx';
import { useAnswer } from './useAnswer.ts';
import { type Corrections, type ReviewView, correctionsIn, neighbour, shownOf } from './view.ts';

/** The repetition that is open, for what stands beside it. */
export interface OpenRepetition {
  readonly detail: SessionDetail;
  readonly repetition: JudgedRepetition;
  /** Where the scrubber stands, session s. */
  readonly cursorS: number;
  readonly setCursorS: (sessionS: number) => void;
}

export interface SessionReviewProps {
  readonly source: ReviewSource;
  readonly id: string;
  /** What is chosen on the page; `useHashView` keeps it in the address. */
  readonly view: ReviewView;
  readonly setView: (view: ReviewView) => void;
  /** Kinds set by hand, where they are more than what stands in the result; the found ones stay visible. */
  readonly corrected?: Corrections;
  /** Words that hang on a repetition (by index): a dot at its shape, and part of its name. */
  readonly noted?: ReadonlyMap<number, string>;
  /** Under the header: a mark, a thread, a plan. */
  readonly under?: (detail: SessionDetail) => ComponentChildren;
  /** Beside an open repetition: comments, another label, footage. */
  readonly beside?: (open: OpenRepetition) => ComponentChildren;
  /** At the end of the page: exports, notes. */
  readonly end?: (detail: SessionDetail) => ComponentChildren;
}

const NOTHING_NOTED: ReadonlyMap<number, string> = new Map();

interface FoundProps extends SessionReviewProps {
  readonly detail: SessionDetail;
  readonly repetitions: readonly JudgedRepetition[];
}

/** Gives the focus back to the shape of the repetition that was open. */
function useFocusBack(open: number | null) {
  const place = useRef<HTMLElement>(null);
  const last = useRef(open);
  useEffect(() => {
    if (open === null && last.current !== null)
      place.current?.querySelector<HTMLElement>(`button[data-index="${last.current}"]`)?.focus();
    last.current = open;
  }, [open]);
  return place;
}

function Found(props: FoundProps) {
  const { detail, repetitions, view, setView, source, id } = props;
  const inResult = useMemo(() => correctionsIn(repetitions), [repetitions]);
  const { corrected = inResult, noted = NOTHING_NOTED } = props;
  // Asked for once the rest stands: it may take a service seconds to compute.
  const overview = useAnswer(useCallback(() => source.overview(id), [source, id]));
  const curvesOf = useCurves(source, id);
  const place = useFocusBack(view.open);
  const shown = useMemo(
    () => shownOf(repetitions, view, corrected),
    [repetitions, view.marks, corrected],
  );
  const examples = useMemo(() => examplesOf(repetitions, corrected), [repetitions, corrected]);
  const indices = useMemo(() => new Set(shown.map((r) => r.index)), [shown]);
  const find = (index: number | null): JudgedRepetition | null =>
    repetitions.find((r) => r.index === index) ?? null;
  const opened = find(view.open);
  const open = (index: number | null): void =>
    setView({ ...view, open: index, beside: index === view.beside ? null : view.beside });
  return (
    <>
      {opened === null && <SessionHead detail={detail} />}
      {opened === null && props.under?.(detail)}
      <nav class="review-place" ref={place} aria-label={t.review.strip.title}>
        <Strip
          repetitions={repetitions}
          shown={indices}
          open={opened?.index ?? null}
          openOne={open}
          corrected={corrected}
          noted={noted}
        />
        {opened === null && (
          <Legend
            repetitions={repetitions}
            corrected={corrected}
            marks={view.marks}
            choose={(marks) => setView({ ...view, marks })}
            shown={shown.length}
          />
        )}

        {opened !== null && shown.length < repetitions.length && (
          <p class="fine">
            {t.review.filter.through(shown.length, repetitions.length)}{' '}
            <button type="button" class="as-link" onClick={() => setView({ ...view, marks: [] })}>
              {t.review.filter.clear}
            </button>
          </p>
        )}
      </nav>
      {opened === null ? (
        <>
          {view.open !== null && <p role="alert">{t.review.repetition.missing(view.open)}</p>}
          <Overview
            {...{ repetitions, shown, examples, overview, corrected }}
            plan={detail.plan}
            openOne={open}
          />
          {props.end?.(detail)}
        </>
      ) : (
        <Repetition
          {...{ detail, repetitions, examples, corrected, curvesOf, open }}
          repetition={opened}
          compared={find(view.beside)}
          neighbours={{
            previous: neighbour(shown, opened.index, -1),
            next: neighbour(shown, opened.index, 1),
          }}
          compare={(beside) => setView({ ...view, beside })}
          {...(props.beside && {
            beside: (cursorS: number, setCursorS: (s: number) => void) =>
              props.beside?.({ detail, repetition: opened, cursorS, setCursorS }),
          })}
        />
      )}
    </>
  );
}

function WithoutRepetitions(props: SessionReviewProps & { readonly detail: SessionDetail }) {
  const { detail } = props;
  const { summary, analysis } = detail;
  return (
    <>
      <SessionHead detail={detail} />
      {props.under?.(detail)}
      <p class="empty">
        {analysis === null ? (summary.problem ?? t.sessions.notAnalysed) : t.review.none}
      </p>
      {props.end?.(detail)}
    </>
  );
}

/** One session to review: header, strip, multiples, any repetition in detail, two side by side. */
export function SessionReview(props: SessionReviewProps) {
  const { source, id } = props;
  const session = useAnswer(useCallback(() => source.session(id), [source, id]));
  const { data: detail, problem, again } = session;
  return (
    <div class="review">
      {problem !== null && (
        <div role="alert">
          <h1>{t.review.failed}</h1>
          <p>{problem}</p>
          <button type="button" onClick={again}>
            {t.review.again}
          </button>
        </div>
      )}
      {detail === null && problem === null && <p role="status">{t.review.loading}</p>}
      {detail !== null && <Reviewed {...props} detail={detail} />}
    </div>
  );
}

function Reviewed(props: SessionReviewProps & { readonly detail: SessionDetail }) {
  const { analysis } = props.detail;
  if (analysis === null || analysis.repetitions.length === 0)
    return <WithoutRepetitions {...props} />;
  return <Found {...props} repetitions={analysis.repetitions} />;
}

/** The same for a session that is here already; a later state of it takes the place of the former. */
export const KnownSessionReview = (
  props: SessionReviewProps & { readonly detail: SessionDetail },
) => (
  <div class="review">
    <Reviewed {...props} />
  </div>
);
