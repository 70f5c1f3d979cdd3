import type { Range } from '../review/plot/scale.ts';
import { t } from '../strings/strings.ts';

export interface TimeTick {
  readonly ms: number;
  readonly text: string;
}

const monthYear = new Intl.DateTimeFormat(t.locale, { month: 'short', year: '2-digit' });
const dayMonth = new Intl.DateTimeFormat(t.locale, { day: 'numeric', month: 'short' });

const WEEK_MS = 7 * 86_400_000;
const STEPS_MONTHS = [1, 2, 3, 6, 12];

/** Months in a long range, days a week or more apart in a short one; at most `most`. Local time. */
export function timeTicks({ low, high }: Range, most: number): readonly TimeTick[] {
  const months = monthsFrom(low, high);
  const step = STEPS_MONTHS.find((s) => months.length / s <= most) ?? 24;
  if (months.length >= 3)
    return months
      .filter((d) => (d.getMonth() + 12 * d.getFullYear()) % step === 0)
      .map((d) => ({ ms: d.getTime(), text: monthYear.format(d) }));
  const apart = Math.max(1, Math.ceil((high - low) / WEEK_MS / most)) * WEEK_MS;
  const count = Math.floor((high - low) / apart) + 1;
  return Array.from({ length: count }, (_, i) => {
    const ms = low + (i + 0.25) * apart;
    return { ms, text: dayMonth.format(ms) };
  }).filter(({ ms }) => ms <= high);
}

function monthsFrom(low: number, high: number): readonly Date[] {
  const first = new Date(low);
  const months: Date[] = [];
  for (let n = 1; ; n++) {
    const month = new Date(first.getFullYear(), first.getMonth() + n, 1);
    if (month.getTime() > high) return months;
    months.push(month);
  }
}
