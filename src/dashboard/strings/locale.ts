import { minusSigns } from '../../coaching/measureText.ts';

/** How a language writes numbers and dates. */
export interface LocaleWriting {
  readonly tag: string;
  /** A number with so many decimals, a minus sign before a negative one. */
  readonly decimal: (value: number, decimals: number) => string;
  /** A number that is written with a point and a hyphen already. */
  readonly written: (text: string) => string;
  /** ms since 1970, UTC, to a day of local time. */
  readonly day: (ms: number) => string;
  readonly weekday: (ms: number) => string;
  readonly dayAndTime: (ms: number) => string;
  /** The time alone where it is of the same day as `nowMs`, else day and time. */
  readonly timeOf: (ms: number, nowMs: number) => string;
}

export function localeWriting(tag: string): LocaleWriting {
  const formats = new Map<number, Intl.NumberFormat>();
  const format = (decimals: number): Intl.NumberFormat => {
    const known =
      formats.get(decimals) ??
      new Intl.NumberFormat(tag, {
        minimumFractionDigits: decimals,
        maximumFractionDigits: decimals,
        useGrouping: false,
      });
    formats.set(decimals, known);
    return known;
  };
  const point = format(1).format(0.5).charAt(1);
  const time = new Intl.DateTimeFormat(tag, { timeStyle: 'short' });
  const dates = (options: Intl.DateTimeFormatOptions): ((ms: number) => string) => {
    const written = new Intl.DateTimeFormat(tag, options);
    return (ms) => written.format(ms);
  };
  return {
    tag,
    // Rounded by toFixed, as everywhere else: Intl rounds a half the other way.
    decimal: (value, decimals) =>
      minusSigns(format(decimals).format(Number(value.toFixed(decimals)))),
    written: (text) => minusSigns(text.replace(/(\d)\.(?=\d)/g, `$1${point}`)),
    day: dates({ dateStyle: 'medium' }),
    weekday: dates({ weekday: 'long', day: 'numeric', month: 'long' }),
    dayAndTime: dates({ dateStyle: 'medium', timeStyle: 'short' }),
    timeOf: (ms, nowMs) =>
      new Date(ms).toDateString() === new Date(nowMs).toDateString()
        ? time.format(ms)
        : dates({ dateStyle: 'medium', timeStyle: 'short' })(ms),
  };
}
