import { t } from '../strings/strings.ts';
import { type MarkShape, markAt } from './marks.ts';

const words = t.progress.legend;

/** A series' mark beside its name. */
export function Sign(props: {
  readonly shape: MarkShape;
  readonly kind: string;
  readonly open?: boolean;
}) {
  const { shape, kind, open } = props;
  return (
    <svg class={`sign course course-${kind}`} viewBox="0 0 16 16" aria-hidden="true">
      <path class={`medians${open === true ? ' open' : ''}`} d={markAt(shape, 8, 8)} />
    </svg>
  );
}

function LineSign({ name, d }: { readonly name: string; readonly d: string }) {
  return (
    <svg class="sign" viewBox="0 0 16 16" aria-hidden="true">
      <path class={name} d={d} />
    </svg>
  );
}

/** What the signs of the charts mean. */
export function Legend({ marks }: { readonly marks: boolean }) {
  return (
    <ul class="progress-legend" aria-label={words.title}>
      <li>
        <Sign shape="circle" kind="circle" /> {words.rehearsals}
      </li>
      <li>
        <Sign shape="triangle" kind="triangle" /> {words.balls}
      </li>
      <li>
        <Sign shape="circle" kind="circle" open /> {words.open}
      </li>
      <li>
        <LineSign name="quartile-sign" d="M8 2V14" /> {words.quartiles}
      </li>
      <li>
        <LineSign name="band" d="M1 3H15V13H1Z" /> {words.band}
      </li>
      <li>
        <LineSign name="plan-mark" d={markAt('diamond', 8, 8)} /> {words.plan}
      </li>
      <li>
        <LineSign name="warning-mark" d="M8 13v-9M4 13h8" /> {words.warning}
      </li>
      {marks && (
        <li>
          <LineSign name="other-mark" d="M8 1V15" /> {words.mark}
        </li>
      )}
    </ul>
  );
}
