import type { ProgressEntry } from '../../streaming/sessionsContract.ts';

/** Something else that happened on a day: a lesson, another club. */
export interface ProgressMark {
  /** ISO 8601. */
  readonly at: string;
  readonly text: string;
}

export interface ProgressViewProps {
  /** Oldest first. */
  readonly sessions: readonly ProgressEntry[];
  /** Where a session is opened. */
  readonly sessionHref: (id: string) => string;
  readonly marks?: readonly ProgressMark[];
  /** ISO 8601; the end of the ranges that can be chosen. */
  readonly now: string;
}

/** Each measure over sessions, from plain data. */
export function ProgressView(props: ProgressViewProps) {
  return <section class="progress" data-sessions={props.sessions.length} />;
}
