import { useCallback, useEffect, useState } from 'preact/hooks';
import { type ReviewView, readView, writeView } from './view.ts';

const queryOf = (hash: string): string => hash.split('?')[1] ?? '';
const withoutQuery = (hash: string): string => hash.split('?')[0] ?? '';

/** Kept with an entry of the history that opened a repetition: the query it was opened from. */
interface Opened {
  readonly openedFrom?: string;
}

/**
 * The browser's own way back leads out of a repetition, not through each one looked at; closing it by hand
 * takes that step of the history back.
 */
function goTo(next: ReviewView): void {
  const query = writeView(next);
  const before = queryOf(location.hash);
  const hash = `${withoutQuery(location.hash)}${query === '' ? '' : `?${query}`}`;
  const opens = next.open !== null && readView(before).open === null;
  const { openedFrom } = (history.state ?? {}) as Opened;
  if (opens) history.pushState({ openedFrom: before } satisfies Opened, '', hash);
  else if (next.open === null && openedFrom === query) history.back();
  else history.replaceState(next.open === null ? null : history.state, '', hash);
}

/** Keeps the view in the query of the address's hash: `#/anything/before?show=ball&repetition=3`. */
export function useHashView(): readonly [ReviewView, (view: ReviewView) => void] {
  const [view, setView] = useState(() => readView(queryOf(location.hash)));
  useEffect(() => {
    const take = (): void => setView(readView(queryOf(location.hash)));
    addEventListener('hashchange', take);
    return () => removeEventListener('hashchange', take);
  }, []);
  const choose = useCallback((next: ReviewView): void => {
    goTo(next);
    setView(next);
  }, []);
  return [view, choose];
}
