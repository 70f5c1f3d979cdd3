import { standingWarnings } from '../../coaching/standingWarnings.ts';
import { useFeed, useSection } from '../feed/hooks.ts';
import { t } from '../strings/strings.ts';

/** Warnings stay until somebody says that they were read; the newest, which Enter reads, stands first. */
export function Warnings() {
  const feed = useFeed();
  const open = standingWarnings(useSection('warnings') ?? []).toReversed();
  if (open.length === 0) return null;
  return (
    <section class={open.length > 1 ? 'warnings many' : 'warnings'} aria-label={t.warnings.title}>
      {open.map(({ id, text }, i) => (
        <div key={id} class="warning" role="alert" data-testid="warning">
          <svg viewBox="0 0 24 24" aria-hidden="true" focusable="false">
            <path d="M12 3 22.5 21H1.5Z" />
            <path d="M12 9.5v5.5M12 17.6v.6" class="cut" />
          </svg>
          <p title={t.warnings.stored}>
            <strong>
              {t.warnings.title}
              {open.length > 1 && ` ${t.home.warningPlace(i + 1, open.length)}`}.
            </strong>{' '}
            {text}
          </p>
          <button type="button" onClick={() => void feed.send({ type: 'acknowledge', id })}>
            {t.warnings.acknowledge}
          </button>
        </div>
      ))}
    </section>
  );
}
