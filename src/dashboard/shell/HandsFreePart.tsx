import { t } from '../strings/strings.ts';
import { setPrefs, usePrefs } from './prefs.ts';

/** Pausing by a double tap: off until somebody wants it. */
export function HandsFreePart() {
  const { doubleTap } = usePrefs();
  return (
    <fieldset>
      <legend>{t.handsFree.title}</legend>
      <label>
        <input
          type="checkbox"
          checked={doubleTap}
          onChange={(event) => setPrefs({ doubleTap: event.currentTarget.checked })}
        />
        {t.handsFree.doubleTap}
      </label>
      <p class="fine">{t.handsFree.how}</p>
      <p class="fine">{t.handsFree.honest}</p>
    </fieldset>
  );
}
