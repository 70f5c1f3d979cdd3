import { useState } from 'preact/hooks';
import type { Drafts } from './drafts.ts';

export interface DraftState<T> {
  readonly value: T;
  /** Every change is kept; what equals the beginning is nothing to keep. */
  readonly set: (value: T) => void;
  /** When the draft that was found here was written, epoch ms; `null` where there was none. */
  readonly restoredMs: number | null;
  /** Back to the beginning: it was sent, or is not wanted. */
  readonly drop: (beginning?: T) => void;
}

interface Held<T> {
  readonly about: string;
  readonly value: T;
  readonly restoredMs: number | null;
}

/**
 * A value that is being written and outlives the page.
 * @param read `null` where what was kept cannot be taken up, as after an update
 */
export function useDraft<T>(
  drafts: Drafts,
  about: string,
  beginning: T,
  read: (kept: unknown) => T | null,
): DraftState<T> {
  const found = (): Held<T> => {
    const draft = drafts.read(about);
    const value = draft === null ? null : read(draft.value);
    return value === null
      ? { about, value: beginning, restoredMs: null }
      : { about, value, restoredMs: draft?.atMs ?? null };
  };
  const [kept, hold] = useState(found);
  const held = kept.about === about ? kept : found();
  if (held !== kept) hold(held);
  return {
    value: held.value,
    restoredMs: held.restoredMs,
    set: (value) => {
      if (JSON.stringify(value) === JSON.stringify(beginning)) drafts.drop(about);
      else drafts.keep(about, value);
      hold((old) => ({ about, value, restoredMs: old.about === about ? old.restoredMs : null }));
    },
    drop: (next = beginning) => {
      drafts.drop(about);
      hold({ about, value: next, restoredMs: null });
    },
  };
}

/** A draft that is one text. */
export const readText = (kept: unknown): string | null => (typeof kept === 'string' ? kept : null);
