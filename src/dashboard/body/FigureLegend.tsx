import { t } from '../strings/strings.ts';

const words = t.figure;

/** What is measured and what is only drawn, with a sample of either; and what is dashed. */
export const FigureLegend = (props: {
  readonly ghost: string | null;
  /** There is room for one line only. */
  readonly short?: boolean;
}) => (
  <p class="figure-legend fine">
    <span>
      <i class="sample measured" aria-hidden="true" /> {words.solid}
    </span>
    <span>
      <i class="sample drawn" aria-hidden="true" />{' '}
      {props.short === true ? words.paleShort : words.pale}
    </span>
    {props.ghost !== null && (
      <span>
        <i class="sample dashed" aria-hidden="true" /> {props.ghost}
      </span>
    )}
  </p>
);
