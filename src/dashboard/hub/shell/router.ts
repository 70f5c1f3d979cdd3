import { useEffect, useState } from 'preact/hooks';
import { decoded } from '../../shell/router.ts';

const PAGES = [
  'home',
  'setup',
  'invitation',
  'account',
  'pairing',
  'students',
  'sessions',
  'club',
  'texts',
  'safety',
  'help',
] as const;
export type PageName = (typeof PAGES)[number];

/** What an address names: a page, what it is about, and a part of that. */
export interface Place {
  readonly page: PageName | 'nowhere';
  readonly id: string;
  readonly part: string;
}

/** `#/students/abc/plan?...`; what stands behind the `?` belongs to the page. */
export function placeOf(hash: string): Place {
  const [name = '', id = '', part = ''] = hash
    .replace(/^#\/?/, '')
    .replace(/\?.*$/, '')
    .split('/')
    .map(decoded);
  const page = name === '' ? 'home' : (PAGES.find((one) => one === name) ?? 'nowhere');
  return { page, id, part };
}

/** The address of a page. */
export const to = (page: PageName, ...rest: readonly string[]): string =>
  page === 'home' ? '#/' : `#/${[page, ...rest.map(encodeURIComponent)].join('/')}`;

export function goTo(href: string): void {
  location.hash = href;
}

export function usePlace(): Place {
  const [hash, setHash] = useState(location.hash);
  useEffect(() => {
    const take = (): void => setHash(location.hash);
    addEventListener('hashchange', take);
    return () => removeEventListener('hashchange', take);
  }, []);
  return placeOf(hash);
}
