import { useState } from 'preact/hooks';
import { h } from '../../strings/hub.ts';
import type { Periods } from '../client/students.ts';
import { dayEnd, dayInput, dayStart } from '../parts/days.ts';
import { PRESETS, type Preset, asLong, presetPeriods } from './periods.ts';

const words = h.comparison;

type Days = Readonly<Record<keyof Periods, string>>;

const daysOf = (s: Periods): Days => ({
  aFromMs: dayInput(s.aFromMs),
  aToMs: dayInput(s.aToMs - 1),
  bFromMs: dayInput(s.bFromMs),
  bToMs: dayInput(s.bToMs - 1),
});

function periodsOf(days: Days): Periods | null {
  const [aFromMs, bFromMs] = [dayStart(days.aFromMs), dayStart(days.bFromMs)];
  const [aToMs, bToMs] = [dayEnd(days.aToMs), dayEnd(days.bToMs)];
  if (aFromMs === null || aToMs === null || bFromMs === null || bToMs === null) return null;
  return aFromMs < aToMs && bFromMs < bToMs ? { aFromMs, aToMs, bFromMs, bToMs } : null;
}

const same = (a: Periods, b: Periods): boolean => JSON.stringify(a) === JSON.stringify(b);

/** The earlier one ends so that both are equally long; `null` where the days say no length. */
function lengthened(days: Days): Days | null {
  const periods = periodsOf({ ...days, aToMs: days.aFromMs });
  return periods === null ? null : { ...days, aToMs: daysOf(asLong(periods)).aToMs };
}

function OwnDays(props: { readonly periods: Periods; readonly set: (next: Periods) => void }) {
  const [days, setDays] = useState(daysOf(props.periods));
  const [equal, setEqual] = useState(same(asLong(props.periods), props.periods));
  const bad = periodsOf(days) === null;
  const take = (next: Days, equally: boolean): void => {
    const whole = equally ? (lengthened(next) ?? next) : next;
    setEqual(equally);
    setDays(whole);
    const periods = periodsOf(whole);
    if (periods !== null) props.set(periods);
  };
  const field = (name: keyof Periods, label: string, fixed = false) => (
    <label>
      {label}{' '}
      <input
        type="date"
        value={days[name]}
        disabled={fixed}
        onChange={(event) => take({ ...days, [name]: event.currentTarget.value }, equal)}
      />
    </label>
  );
  return (
    <>
      <fieldset class="own-days">
        <legend>{words.a}</legend>
        {field('aFromMs', words.from)} {field('aToMs', words.to, equal)}
      </fieldset>
      <fieldset class="own-days">
        <legend>{words.b}</legend>
        {field('bFromMs', words.from)} {field('bToMs', words.to)}
      </fieldset>
      <label>
        <input
          type="checkbox"
          checked={equal}
          onChange={(event) => take(days, event.currentTarget.checked)}
        />{' '}
        {words.asLong}
      </label>
      {bad && <p role="alert">{words.badDays}</p>}
    </>
  );
}

/** Chooses what is compared: what coaches ask for, or own days. */
export function PeriodChoice(props: {
  readonly periods: Periods;
  readonly set: (next: Periods) => void;
}) {
  const { periods, set } = props;
  const now = Date.now();
  const named = PRESETS.find((preset) => same(presetPeriods(preset, now), periods));
  const [own, setOwn] = useState(named === undefined);
  const choose = (value: string): void => {
    setOwn(value === 'own');
    if (value !== 'own') set(presetPeriods(value as Preset, now));
  };
  return (
    <div class="period-choice">
      <label>
        {words.choose}{' '}
        <select
          value={own ? 'own' : (named ?? 'own')}
          onChange={(event) => choose(event.currentTarget.value)}
        >
          {[...PRESETS, 'own' as const].map((preset) => (
            <option key={preset} value={preset}>
              {words.presets[preset]}
            </option>
          ))}
        </select>
      </label>
      {own && <OwnDays periods={periods} set={set} />}
    </div>
  );
}
