import type { ComponentChildren } from 'preact';
import type { TargetMeasure } from '../../../coaching/plan.ts';
import { h } from '../../strings/hub.ts';
import { type CourseProps, marksIn, pointsOf } from './points.ts';

const words = h.report.legend;

function Sign({ children, text }: { children: ComponentChildren; readonly text: string }) {
  return (
    <li>
      <svg viewBox="0 0 16 16" aria-hidden="true">
        {children}
      </svg>
      {text}
    </li>
  );
}

/** What the signs of the drawings mean: those that are drawn, and no others. */
export function CourseLegend(all: {
  readonly asked: readonly TargetMeasure[];
  readonly props: CourseProps;
}) {
  const { asked, props } = all;
  const points = asked.flatMap((measure) => pointsOf(props.sessions, measure));
  const kinds = new Set(points.map(({ kind }) => kind));
  const { changes, met } = marksIn(props);
  if (points.length === 0) return null;
  return (
    <ul class="course course-legend" aria-label={words.title}>
      {kinds.has('rehearsals') && (
        <Sign text={words.rehearsals}>
          <circle cx="8" cy="8" r="3.5" />
        </Sign>
      )}
      {kinds.has('balls') && (
        <Sign text={words.balls}>
          <path class="ball" d="M8 3l5 9H3z" />
        </Sign>
      )}
      <Sign text={words.half}>
        <path class="half" d="M8 1v14" />
      </Sign>
      <Sign text={words.target}>
        <rect class="target" x="1" y="3" width="14" height="10" />
      </Sign>
      {changes.length > 0 && (
        <Sign text={words.change}>
          <path class="plan-mark" d="M8 0v16" />
        </Sign>
      )}
      {met.length > 0 && (
        <Sign text={words.lesson}>
          <path class="lesson-mark" d="M8 0v16" />
        </Sign>
      )}
    </ul>
  );
}
