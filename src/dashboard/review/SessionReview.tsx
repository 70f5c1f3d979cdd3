import type { ComponentChildren } from 'preact';
import { useCallback, useEffect, useMemo, useRef } from 'preact/hooks';
import type { JudgedRepetition } from '../../coaching/judgement.ts';
import type { SessionDetail } from '../../streaming/sessionsContract.ts';
import { t } from '../strings/strings.ts';
import { Overview } from './Overview.tsx';
import { Sensors } from './head/Sensors.tsx';
import { SessionFacts, SessionHead, type Spoken } from './head/SessionHead.tsx';
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
  /** How it is spoken of; to the student where left out. */
  readonly spoken?: Spoken;
  /** Beside the whole session: what is written about it. */
  readonly side?: (detail: SessionDetail) => ComponentChildren;
  /** Of an open repetition: a film that moves with its curves, what is written about it, and what is set below. */
  readonly film?: (open: OpenRepetition) => ComponentChildren;
  readonly talk?: (open: OpenRepetition) => ComponentChildren;
  readonly below?: (open: OpenRepetition) => ComponentChildren;
  /** At the end of the page: exports, notes. */
  readonly end?: (detail: SessionDetail) => ComponentChildren;
}

const spokenOf = ({ spoken }: SessionReviewProps) => (spoken === undefined ? {} : { spoken });

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
      {opened === null && <SessionHead detail={detail} {...spokenOf(props)} />}
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
          <SessionFacts detail={detail} />
          {props.under?.(detail)}
          <Overview
            {...{ repetitions, shown, examples, overview, corrected }}
            plan={detail.plan}
            openOne={open}
          />
          {props.end?.(detail)}
          {detail.analysis !== null && <Sensors quality={detail.analysis.quality} />}
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
          slots={(cursorS, setCursorS) => {
            const of = { detail, repetition: opened, cursorS, setCursorS };
            return { film: props.film?.(of), talk: props.talk?.(of), below: props.below?.(of) };
          }}
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
      <SessionHead detail={detail} {...spokenOf(props)} />
      <SessionFacts detail={detail} />
      {props.under?.(detail)}
      <p class="empty">
        {analysis === null
          ? ((summary.problem && t.said.refusal(summary.problem)) ?? t.sessions.notAnalysed)
          : t.review.none}
      </p>
      {props.end?.(detail)}
      {analysis !== null && <Sensors quality={analysis.quality} />}
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

function Main(props: SessionReviewProps & { readonly detail: SessionDetail }) {
  const { analysis } = props.detail;
  if (analysis === null || analysis.repetitions.length === 0)
    return <WithoutRepetitions {...props} />;
  return <Found {...props} repetitions={analysis.repetitions} />;
}

/** What is written about the session stands beside it; an open repetition has the whole width. */
function Reviewed(props: SessionReviewProps & { readonly detail: SessionDetail }) {
  const { side, detail, view } = props;
  if (side === undefined || view.open !== null) return <Main {...props} />;
  return (
    <div class="review-columns">
      <div class="review">
        <Main {...props} />
      </div>
      <aside class="review-side">{side(detail)}</aside>
    </div>
  );
}

/** The same for a session that is here already; a later state of it takes the place of the former. */
export const KnownSessionReview = (
  props: SessionReviewProps & { readonly detail: SessionDetail },
) => (
  <div class="review">
    <Reviewed {...props} />
  </div>
);
