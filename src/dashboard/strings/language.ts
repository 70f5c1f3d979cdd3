/** The languages of the page, each by its own name. */
export const LANGUAGES = { en: 'English', de: 'Deutsch' } as const;
export type Language = keyof typeof LANGUAGES;

const KEY = 'stillcatch.language';

/** The first of these that the page speaks; "de-AT" is German. */
export function chooseLanguage(
  wanted: readonly (string | null | undefined)[],
  offered: readonly Language[],
): Language {
  const spoken = wanted.map((tag) => tag?.toLowerCase().split(/[-_]/)[0]);
  return spoken.map((tag) => offered.find((l) => l === tag)).find((l) => l !== undefined) ?? 'en';
}

/** Which languages a page is written in stands in it: pages that are not translated stay English. */
function offeredBy(page: HTMLElement): readonly Language[] {
  const names = (page.dataset['languages'] ?? 'en').split(' ');
  return (Object.keys(LANGUAGES) as Language[]).filter((l) => names.includes(l));
}

function remembered(): string | null {
  try {
    return localStorage.getItem(KEY);
  } catch {
    return null;
  }
}

function remember(language: Language): void {
  try {
    localStorage.setItem(KEY, language);
  } catch {
    // Private windows may refuse: the choice then stays in the address.
  }
}

/** By the address (`?lang=de`, which is remembered), by the last choice, by the browser; else English. */
function languageOfPage(): Language {
  if (typeof document === 'undefined') return 'en';
  const page = document.documentElement;
  const offered = offeredBy(page);
  const asked = new URLSearchParams(location.search).get('lang');
  const language = chooseLanguage([asked, remembered(), ...navigator.languages], offered);
  if (asked === language) remember(language);
  page.lang = language;
  return language;
}

/** The language of this page for as long as it stands. */
export const language: Language = languageOfPage();

/** Loads the page anew in another language; a practice goes on in the service meanwhile. */
export function setLanguage(next: Language): void {
  remember(next);
  const address = new URL(location.href);
  if (remembered() === next) address.searchParams.delete('lang');
  else address.searchParams.set('lang', next);
  history.replaceState(null, '', address);
  location.reload();
}
