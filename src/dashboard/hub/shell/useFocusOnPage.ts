import { useEffect, useRef } from 'preact/hooks';
import type { Place } from './router.ts';

/** Going to another page begins at its top, for eyes and for the keyboard alike. */
export function useFocusOnPage({ page, id, part }: Place): void {
  const first = useRef(true);
  useEffect(() => {
    if (first.current) {
      first.current = false;
      return;
    }
    scrollTo(0, 0);
    const main = document.getElementById('main');
    if (main !== null && !main.contains(document.activeElement)) main.focus();
  }, [page, id, part]);
}
