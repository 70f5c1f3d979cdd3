import { currentPrefs, watchPrefs } from './prefs.ts';

/** Keeps the page in the look that was chosen; "system" leaves it to the style sheet. */
export function followTheme(): void {
  watchPrefs(() => {
    const { theme } = currentPrefs();
    if (theme === 'system') delete document.documentElement.dataset['theme'];
    else document.documentElement.dataset['theme'] = theme;
  });
}
