import type { ComponentChildren } from 'preact';
import { type KeptWarning, standingWarnings } from '../../coaching/standingWarnings.ts';
import { useFeed, useSection } from '../feed/hooks.ts';
import { t } from '../strings/strings.ts';

/** A warning's sign and words, its place where several stand, and what is to be done about it. */
export function WarningText(props: {
  readonly warning: KeptWarning;
  readonly place: number;
  readonly of: number;
  readonly children?: ComponentChildren;
}) {
  const { warning, place, of, children } = props;
  return (
    <>
      <svg viewBox="0 0 24 24" aria-hidden="true" focusable="false">
        <path d="M12 3 22.5 21H1.5Z" />
        <path d="M12 9.5v5.5M12 17.6v.6" class="cut" />
      </svg>
      <p title={t.warnings.stored}>
        <strong>
          {t.warnings.title}
          {of > 1 && ` ${t.home.warningPlace(place, of)}`}.
        </strong>{' '}
        {t.said.warning(warning)}{' '}
        {warning.times !== undefined && `(${t.after.cueTimes(warning.times)})`} {children}
      </p>
    </>
  );
}

/** Those that stand, the newest first. */
export const useWarnings = (): readonly KeptWarning[] =>
  standingWarnings(useSection('warnings') ?? []).toReversed();

/** Warnings stay until somebody says that they were read; the newest, which Enter reads, stands first. */
export function Warnings() {
  const feed = useFeed();
  const open = useWarnings();
  if (open.length === 0) return null;
  return (
    <section class={open.length > 1 ? 'warnings many' : 'warnings'} aria-label={t.warnings.title}>
      {open.map((warning, i) => (
        <div key={warning.id} class="warning" role="alert" data-testid="warning">
          <WarningText warning={warning} place={i + 1} of={open.length} />
          <button
            type="button"
            onClick={() => void feed.send({ type: 'acknowledge', id: warning.id })}
          >
            {t.warnings.acknowledge}
          </button>
        </div>
      ))}
    </section>
  );
}
