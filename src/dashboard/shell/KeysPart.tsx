import { t } from '../strings/strings.ts';
import { setPrefs, usePrefs } from './prefs.ts';

/** What each key does, and whether single keys do anything at all. */
export function KeysPart({ keys }: { readonly keys: readonly (readonly [string, string])[] }) {
  const { singleKeys } = usePrefs();
  return (
    <fieldset>
      <legend>{t.look.keys}</legend>
      <dl class="keys">
        {keys.map(([key, what]) => (
          <div key={key}>
            <dt>
              <kbd>{key}</kbd>
            </dt>
            <dd>{what}</dd>
          </div>
        ))}
      </dl>
      <label>
        <input
          type="checkbox"
          checked={singleKeys}
          onChange={(event) => setPrefs({ singleKeys: event.currentTarget.checked })}
        />
        {t.look.keysOn}
      </label>
    </fieldset>
  );
}
