import { t } from '../strings/strings.ts';
import { useTitle } from './useTitle.ts';

export function SafetyScreen() {
  useTitle(t.safety.title);
  return (
    <main id="main" class="page" tabIndex={-1}>
      <h1>{t.safety.title}</h1>
      <p class="lead">{t.caution.short}</p>
      <p>{t.caution.rest}</p>
      {t.safety.parts.map(({ title, items }) => (
        <section key={title}>
          <h2>{title}</h2>
          <ul>
            {items.map((item) => (
              <li key={item}>{item}</li>
            ))}
          </ul>
        </section>
      ))}
    </main>
  );
}
