import type { ComparisonTexts, Usual } from '../../../coaching/differenceText.ts';
import { MEASURE_INFO } from '../../../coaching/measureInfo.ts';
import { shownComparison, shownNumber } from '../../../coaching/shown.ts';
import type { PeriodDifference } from '../../../streaming/hubContract/students.ts';
import { h } from '../../strings/hub.ts';
import { t } from '../../strings/strings.ts';

const words = h.comparison;

/** How a share or a ratio is written. */
interface Unit {
  /** Shown number for each 1 of the value. */
  readonly scale: number;
  readonly decimals: number;
  readonly value: (text: string) => string;
  readonly difference: (text: string) => string;
}

const SHARE: Unit = { scale: 100, decimals: 0, value: words.percent, difference: words.points };
const RATIO: Unit = { scale: 1, decimals: 1, value: (text) => text, difference: (text) => text };

/** How sure one value is; `null` for shares and ratios, whose sessions say all there is. */
export const sureOf = ({ kind, measure }: PeriodDifference): number | null =>
  measure === null || kind === 'passed' || kind === 'carryOver'
    ? null
    : MEASURE_INFO[measure].accuracy.plusMinus;

function scaledTexts({ a, b, difference }: PeriodDifference, unit: Unit): ComparisonTexts {
  const { scale, decimals } = unit;
  const ends = difference?.interval ?? null;
  const shown =
    a === null || b === null
      ? null
      : shownComparison(
          { earlier: scale * a.median, later: scale * b.median },
          ends && { low: scale * ends.low, high: scale * ends.high },
          decimals,
        );
  const value = (v: number): string =>
    unit.value(t.written(shownNumber(scale * v, shown?.decimals ?? decimals)));
  const usual = (u: Usual | null) =>
    u && { low: value(u.low), median: value(u.median), high: value(u.high) };
  const signed = (text: string): string =>
    unit.difference(`${Number(text) > 0 ? '+' : ''}${t.written(text)}`);
  return {
    earlier: usual(a),
    later: usual(b),
    difference: shown && signed(shown.difference),
    interval: shown?.interval
      ? { low: signed(shown.interval.low), high: signed(shown.interval.high) }
      : null,
  };
}

/** Both sides, their difference and its range as they are shown. */
export function differenceTexts(d: PeriodDifference): ComparisonTexts {
  const { kind, measure, a, b, difference } = d;
  if (measure === null || kind === 'passed') return scaledTexts(d, SHARE);
  if (kind === 'carryOver') return scaledTexts(d, RATIO);
  return t.measures.compared(measure, a, b, difference?.interval ?? null);
}
