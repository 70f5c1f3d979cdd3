import { useEffect } from 'preact/hooks';
import type { JudgedRepetition } from '../../../coaching/judgement.ts';
import { Shape } from '../../practice/shapes.tsx';
import { t } from '../../strings/strings.ts';
import { type Corrections, markOfRepetition } from '../view.ts';
import { nameOf } from './nameOf.ts';
import { useWalk } from './useWalk.ts';

const words = t.review.strip;

/** A time stands below the first repetition of each so many seconds. */
const LABEL_EVERY_S = 300;

function labelsOf(repetitions: readonly JudgedRepetition[]): readonly (string | null)[] {
  const slot = (r: JudgedRepetition | undefined): number =>
    r === undefined ? -1 : Math.floor(r.topS / LABEL_EVERY_S);
  return repetitions.map((r, i) =>
    slot(r) === slot(repetitions[i - 1]) ? null : t.sessions.at(r.topS),
  );
}

/** Brings the open one to the middle of the row, without moving the page. */
function showInRow(list: HTMLElement | null, open: number | null): void {
  const item = list?.querySelector<HTMLElement>(`[data-index="${open}"]`)?.parentElement;
  if (list && item) list.scrollLeft = item.offsetLeft - list.clientWidth / 2;
}

/** Every repetition as a shape in the order of time; clickable, walked with arrow keys. */
export function Strip(props: {
  readonly repetitions: readonly JudgedRepetition[];
  /** Indices that the filter lets through; the others are faint. */
  readonly shown: ReadonlySet<number>;
  readonly open: number | null;
  readonly openOne: (index: number) => void;
  readonly corrected: Corrections;
  readonly noted: ReadonlyMap<number, string>;
}) {
  const { repetitions, shown, open, openOne, corrected, noted } = props;
  const { list, tabIndex, ...keys } = useWalk(repetitions.length, open === null);
  const labels = labelsOf(repetitions);
  useEffect(() => showInRow(list.current, open), [open]);
  return (
    <ol
      class={open === null ? 'review-strip' : 'review-strip one-row'}
      aria-label={words.title}
      ref={list}
      {...keys}
    >
      {repetitions.map((r, place) => {
        const name = nameOf(r, corrected, noted.get(r.index));
        return (
          <li key={r.index} class={shown.has(r.index) ? undefined : 'faint'}>
            <button
              type="button"
              data-index={r.index}
              tabIndex={tabIndex(place)}
              aria-label={name}
              title={name}
              aria-current={r.index === open ? 'true' : undefined}
              onClick={() => openOne(r.index)}
            >
              <Shape mark={markOfRepetition(r, corrected)} />
              {noted.has(r.index) && <i class="noted" />}
              {corrected.has(r.index) && <i class="by-hand" />}
            </button>
            {labels[place] !== null && <small aria-hidden="true">{labels[place]}</small>}
          </li>
        );
      })}
    </ol>
  );
}
