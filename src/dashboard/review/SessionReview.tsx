import type { ComponentChildren } from 'preact';
import type { JudgedRepetition } from '../../coaching/judgement.ts';
import type { SessionDetail } from '../../streaming/sessionsContract.ts';
import type { ReviewSource } from './source.ts';
import type { Corrections, ReviewView } from './view.ts';

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
  /** Kinds set by hand; the measured ones stay visible. */
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

/** One session to review: header, strip, multiples, any repetition in detail, two side by side. */
export function SessionReview(props: SessionReviewProps) {
  return <section class="review" data-session={props.id} />;
}
