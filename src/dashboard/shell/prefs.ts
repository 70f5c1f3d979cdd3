import { useEffect, useState } from 'preact/hooks';
import type { FallUnit } from '../../coaching/measureText.ts';

/** What this browser remembers of the person's choices. */
export interface Prefs {
  readonly muted: boolean;
  /** 0..1 */
  readonly volume: number;
  readonly rate: number;
  readonly theme: 'system' | 'light' | 'dark';
  readonly far: boolean;
  readonly singleKeys: boolean;
  readonly fallUnit: FallUnit;
  /** A double tap on the chest sensor pauses. */
  readonly doubleTap: boolean;
}

const DEFAULTS: Prefs = {
  muted: false,
  volume: 0.8,
  rate: 1,
  theme: 'system',
  far: false,
  singleKeys: true,
  fallUnit: 'cm',
  doubleTap: false,
};
const KEY = 'stillcatch.prefs';

const within = (value: unknown, low: number, high: number): value is number =>
  typeof value === 'number' && value >= low && value <= high;

const VALID: { readonly [K in keyof Prefs]: (value: unknown) => boolean } = {
  muted: (v) => typeof v === 'boolean',
  volume: (v) => within(v, 0, 1),
  rate: (v) => within(v, 0.5, 2),
  theme: (v) => v === 'system' || v === 'light' || v === 'dark',
  far: (v) => typeof v === 'boolean',
  singleKeys: (v) => typeof v === 'boolean',
  fallUnit: (v) => v === 'cm' || v === 'in',
  doubleTap: (v) => typeof v === 'boolean',
};

/** Whatever was stored: known keys with valid values over the defaults. */
export function readPrefs(text: string | null): Prefs {
  let stored: unknown = null;
  try {
    stored = JSON.parse(text ?? 'null');
  } catch {
    // A damaged entry is no choice.
  }
  if (typeof stored !== 'object' || stored === null) return DEFAULTS;
  const known = Object.entries(stored).filter(
    ([key, value]) => key in VALID && VALID[key as keyof Prefs](value),
  );
  return { ...DEFAULTS, ...Object.fromEntries(known) };
}

function load(): string | null {
  try {
    return localStorage.getItem(KEY);
  } catch {
    return null;
  }
}

let prefs = readPrefs(load());
const listeners = new Set<() => void>();

export const currentPrefs = (): Prefs => prefs;

export function setPrefs(change: Partial<Prefs>): void {
  prefs = { ...prefs, ...change };
  try {
    localStorage.setItem(KEY, JSON.stringify(prefs));
  } catch {
    // Private windows may refuse: the choice then lasts for this page only.
  }
  listeners.forEach((listener) => listener());
}

/** Calls back now and after each change. */
export function watchPrefs(listener: () => void): () => void {
  listeners.add(listener);
  listener();
  return () => void listeners.delete(listener);
}

export function usePrefs(): Prefs {
  const [value, setValue] = useState(prefs);
  useEffect(() => watchPrefs(() => setValue(prefs)), []);
  return value;
}
