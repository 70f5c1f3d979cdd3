import { t } from '../strings/strings.ts';
import { hrefOf } from './router.ts';

/** The standing caution. */
export function Caution() {
  return (
    <aside class="caution" aria-label={t.safety.title}>
      <p>
        <strong>{t.caution.short}</strong> <span>{t.caution.rest}</span>{' '}
        <a href={hrefOf('safety')}>{t.caution.more}</a>
      </p>
    </aside>
  );
}
