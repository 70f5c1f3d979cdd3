import { useState } from 'preact/hooks';
import { h } from '../../strings/hub.ts';
import type { Stretches } from '../client/students.ts';
import { dayEnd, dayInput, dayStart } from '../parts/days.ts';
import { PRESETS, type Preset, presetStretches } from './stretches.ts';

const words = h.comparison;

type Days = Readonly<Record<keyof Stretches, string>>;

const daysOf = (s: Stretches): Days => ({
  aFromMs: dayInput(s.aFromMs),
  aToMs: dayInput(s.aToMs - 1),
  bFromMs: dayInput(s.bFromMs),
  bToMs: dayInput(s.bToMs - 1),
});

function stretchesOf(days: Days): Stretches | null {
  const [aFromMs, bFromMs] = [dayStart(days.aFromMs), dayStart(days.bFromMs)];
  const [aToMs, bToMs] = [dayEnd(days.aToMs), dayEnd(days.bToMs)];
  if (aFromMs === null || aToMs === null || bFromMs === null || bToMs === null) return null;
  return aFromMs < aToMs && bFromMs < bToMs ? { aFromMs, aToMs, bFromMs, bToMs } : null;
}

function OwnDays(props: {
  readonly stretches: Stretches;
  readonly set: (next: Stretches) => void;
}) {
  const [days, setDays] = useState(daysOf(props.stretches));
  const bad = stretchesOf(days) === null;
  const change = (name: keyof Stretches, value: string): void => {
    const next = { ...days, [name]: value };
    setDays(next);
    const stretches = stretchesOf(next);
    if (stretches !== null) props.set(stretches);
  };
  const field = (name: keyof Stretches, label: string) => (
    <label>
      {label}{' '}
      <input
        type="date"
        value={days[name]}
        onChange={(event) => change(name, event.currentTarget.value)}
      />
    </label>
  );
  return (
    <>
      <fieldset class="own-days">
        <legend>{words.a}</legend>
        {field('aFromMs', words.from)} {field('aToMs', words.to)}
      </fieldset>
      <fieldset class="own-days">
        <legend>{words.b}</legend>
        {field('bFromMs', words.from)} {field('bToMs', words.to)}
      </fieldset>
      {bad && <p role="alert">{words.badDays}</p>}
    </>
  );
}

const same = (a: Stretches, b: Stretches): boolean => JSON.stringify(a) === JSON.stringify(b);

/** Chooses what is compared: what coaches ask for, or own days. */
export function StretchChoice(props: {
  readonly stretches: Stretches;
  readonly set: (next: Stretches) => void;
}) {
  const { stretches, set } = props;
  const now = Date.now();
  const named = PRESETS.find((preset) => same(presetStretches(preset, now), stretches));
  const [own, setOwn] = useState(named === undefined);
  const choose = (value: string): void => {
    setOwn(value === 'own');
    if (value !== 'own') set(presetStretches(value as Preset, now));
  };
  return (
    <div class="stretch-choice">
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
      {own && <OwnDays stretches={stretches} set={set} />}
    </div>
  );
}
