import type { JudgedRepetition } from '../../../coaching/judgement.ts';
import type { Mark } from '../../practice/kind.ts';
import { Shape } from '../../practice/shapes.tsx';
import { t } from '../../strings/strings.ts';
import { type Corrections, SHOWN_MARKS, markOfRepetition } from '../view.ts';

const words = t.review.filter;

/** Marks that need no explanation while none is there. */
const RARE: readonly Mark[] = ['ignored', 'notScored'];

/** What the shapes mean, and at once the filter by kind and verdict. */
export function Legend(props: {
  readonly repetitions: readonly JudgedRepetition[];
  readonly corrected: Corrections;
  readonly marks: readonly Mark[];
  readonly choose: (marks: readonly Mark[]) => void;
  readonly shown: number;
}) {
  const { repetitions, corrected, marks, choose, shown } = props;
  const counts = new Map<Mark, number>();
  for (const r of repetitions) {
    const mark = markOfRepetition(r, corrected);
    counts.set(mark, (counts.get(mark) ?? 0) + 1);
  }
  const toggle = (mark: Mark): void =>
    choose(marks.includes(mark) ? marks.filter((m) => m !== mark) : [...marks, mark]);
  return (
    <div class="review-legend" role="group" aria-label={words.title}>
      <button type="button" aria-pressed={marks.length === 0} onClick={() => choose([])}>
        {words.all}
      </button>
      {SHOWN_MARKS.filter((m) => counts.has(m) || !RARE.includes(m)).map((mark) => (
        <button
          key={mark}
          type="button"
          aria-pressed={marks.includes(mark)}
          disabled={!counts.has(mark)}
          onClick={() => toggle(mark)}
        >
          <Shape mark={mark} /> {words.one(words.marks[mark], counts.get(mark) ?? 0)}
        </button>
      ))}
      <span class="fine" role="status">
        {words.shown(shown, repetitions.length)}
      </span>
      <span class="fine keys-hint">{t.review.strip.hint}</span>
    </div>
  );
}
