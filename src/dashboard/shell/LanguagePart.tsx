import { LANGUAGES, type Language, language, setLanguage } from '../strings/language.ts';
import { t } from '../strings/strings.ts';

const NAMES = Object.entries(LANGUAGES) as readonly [Language, string][];

/** Each language by its own name, so that whoever needs it can read it. */
export function LanguagePart() {
  return (
    <fieldset>
      <legend>{t.settings.language}</legend>
      <div class="chips">
        {NAMES.map(([key, name]) => (
          <button
            type="button"
            key={key}
            lang={key}
            aria-pressed={key === language}
            onClick={() => key !== language && setLanguage(key)}
          >
            {name}
          </button>
        ))}
      </div>
      <p class="fine">{t.settings.languageWhy}</p>
    </fieldset>
  );
}
