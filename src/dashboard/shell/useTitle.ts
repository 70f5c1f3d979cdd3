import { useEffect } from 'preact/hooks';
import { t } from '../strings/strings.ts';

/** The name of what is shown in the window's title: tabs, bookmarks and screen readers say it. */
export function useTitle(name: string): void {
  useEffect(() => {
    document.title = `${name} · ${t.product}`;
  }, [name]);
}
