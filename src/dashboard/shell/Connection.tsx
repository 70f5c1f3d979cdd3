import { useFeedPart } from '../feed/hooks.ts';
import { t } from '../strings/strings.ts';

/** What stands between the page and the service. */
export function Connection() {
  const connection = useFeedPart((state) => state.connection);
  if (connection === 'live') return null;
  if (connection === 'connecting') {
    return (
      <div class="connecting" role="status">
        <span class="pulse" aria-hidden="true" />
        <p>{t.connection.connecting}</p>
      </div>
    );
  }
  return (
    <div class="notice notice-bad connection-lost" role="alert">
      <p>
        <strong>{t.connection.lost}</strong> {t.connection.lostHelp}
      </p>
    </div>
  );
}
