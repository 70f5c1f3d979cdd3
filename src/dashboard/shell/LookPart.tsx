import { t } from '../strings/strings.ts';
import { type Prefs, setPrefs, usePrefs } from './prefs.ts';

const THEMES: readonly Prefs['theme'][] = ['system', 'light', 'dark'];

/** Light, dark, or as the system. */
export function LookPart() {
  const { theme } = usePrefs();
  return (
    <fieldset>
      <legend>{t.look.theme}</legend>
      <div class="choices">
        {THEMES.map((name) => (
          <label key={name}>
            <input
              type="radio"
              name="theme"
              checked={theme === name}
              onChange={() => setPrefs({ theme: name })}
            />
            {t.look[name]}
          </label>
        ))}
      </div>
    </fieldset>
  );
}
