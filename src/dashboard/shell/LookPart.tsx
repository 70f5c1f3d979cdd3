import { t } from '../strings/strings.ts';
import { type Prefs, setPrefs, usePrefs } from './prefs.ts';

const FALL_UNITS: readonly Prefs['fallUnit'][] = ['cm', 'in'];
const THEMES: readonly Prefs['theme'][] = ['system', 'light', 'dark'];

/** The unit in which the fall of the club is told. */
export function UnitsPart() {
  const { fallUnit } = usePrefs();
  return (
    <fieldset>
      <legend>{t.look.fallUnit}</legend>
      <div class="choices">
        {FALL_UNITS.map((unit) => (
          <label key={unit}>
            <input
              type="radio"
              name="fallUnit"
              checked={fallUnit === unit}
              onChange={() => setPrefs({ fallUnit: unit })}
            />
            {t.look.units[unit]}
          </label>
        ))}
      </div>
    </fieldset>
  );
}

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
