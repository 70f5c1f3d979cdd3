import { useCallback, useEffect, useState } from 'preact/hooks';
import { type ReviewView, readView, writeView } from './view.ts';

const queryOf = (hash: string): string => hash.split('?')[1] ?? '';
const withoutQuery = (hash: string): string => hash.split('?')[0] ?? '';

/** Keeps the view in the query of the address's hash: `#/anything/before?show=ball&repetition=3`. */
export function useHashView(): readonly [ReviewView, (view: ReviewView) => void] {
  const [view, setView] = useState(() => readView(queryOf(location.hash)));
  useEffect(() => {
    const take = (): void => setView(readView(queryOf(location.hash)));
    addEventListener('hashchange', take);
    return () => removeEventListener('hashchange', take);
  }, []);
  const choose = useCallback((next: ReviewView): void => {
    const query = writeView(next);
    const hash = `${withoutQuery(location.hash)}${query === '' ? '' : `?${query}`}`;
    const opened = next.open !== null && readView(queryOf(location.hash)).open === null;
    // The browser's own way back leads out of a repetition, not through each one looked at.
    if (opened) history.pushState(null, '', hash);
    else history.replaceState(null, '', hash);
    setView(next);
  }, []);
  return [view, choose];
}
