import type { ComparisonTexts, Usual } from '../../../coaching/differenceText.ts';
import { MEASURE_INFO } from '../../../coaching/measureInfo.ts';
import { shownComparison, shownNumber } from '../../../coaching/shown.ts';
import type { PeriodDifference } from '../../../streaming/hubContract/students.ts';
import { h } from '../../strings/hub.ts';
import { t } from '../../strings/strings.ts';

const words = h.comparison;

/** Shares and ratios are written in hundredths. */
const PERCENT = 100;

/** How sure one value is; `null` for shares and ratios, whose sessions say all there is. */
export const sureOf = ({ kind, measure }: PeriodDifference): number | null =>
  measure === null || kind === 'passed' || kind === 'carryOver'
    ? null
    : MEASURE_INFO[measure].accuracy.plusMinus;

function percentTexts({ a, b, difference }: PeriodDifference): ComparisonTexts {
  const ends = difference?.interval ?? null;
  const shown =
    a === null || b === null
      ? null
      : shownComparison(
          { earlier: PERCENT * a.median, later: PERCENT * b.median },
          ends && { low: PERCENT * ends.low, high: PERCENT * ends.high },
          0,
        );
  const value = (v: number): string =>
    words.percent(t.written(shownNumber(PERCENT * v, shown?.decimals ?? 0)));
  const usual = (u: Usual | null) =>
    u && { low: value(u.low), median: value(u.median), high: value(u.high) };
  const signed = (text: string): string =>
    words.points(`${Number(text) > 0 ? '+' : ''}${t.written(text)}`);
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
  if (measure === null || kind === 'passed' || kind === 'carryOver') return percentTexts(d);
  return t.measures.compared(measure, a, b, difference?.interval ?? null);
}
