import type { Target, TargetMeasure } from '../../coaching/plan.ts';
import { SCALES, type Scale, place } from './rows.ts';

/** The bracket of the target: open where the plan leaves a side open. */
export function Bracket({ scale, target }: { scale: Scale; target: Target }) {
  const from = place(scale, target.min ?? scale.low);
  const to = place(scale, target.max ?? scale.high);
  const sides = `${target.min === undefined ? '' : ' has-min'}${target.max === undefined ? '' : ' has-max'}`;
  return <div class={`bracket${sides}`} style={{ left: `${from}%`, width: `${to - from}%` }} />;
}

/** The zero line, or the scale's lower end where zero is not on it. */
export const zeroOf = (scale: Scale): number => place(scale, Math.max(scale.low, 0));

function Value({ scale, value, sure }: { scale: Scale; value: number; sure: number }) {
  const zero = zeroOf(scale);
  const at = place(scale, value);
  const low = place(scale, value - sure);
  const width = place(scale, value + sure) - low;
  const left = Math.min(at, zero);
  return (
    <>
      <div class="bar-value" style={{ left: `${left}%`, width: `${Math.abs(at - zero)}%` }} />
      <div class="whisker" style={{ left: `${low}%`, width: `${width}%` }} />
      <div class="bar-end" style={{ left: `${at}%` }} />
    </>
  );
}

/** A value as a bar with its accuracy as a whisker, the target as a bracket. */
export function Bar(props: {
  readonly measure: TargetMeasure;
  readonly value: number | null;
  readonly target: Target | null;
  readonly sure: number;
}) {
  const { measure, value, target, sure } = props;
  const scale = SCALES[measure];
  return (
    <div class="bar-track" aria-hidden="true">
      {target !== null && <Bracket scale={scale} target={target} />}
      <div class="zero" style={{ left: `${zeroOf(scale)}%` }} />
      {value !== null && <Value scale={scale} value={value} sure={sure} />}
    </div>
  );
}
