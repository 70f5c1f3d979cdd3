import { useFeed, useFeedPart } from '../feed/hooks.ts';
import type { Interruption } from '../feed/interruption.ts';
import { t } from '../strings/strings.ts';

/** A practice that ran here ended with the service: where it lies, until that was read. */
function Interrupted({ sessionId }: Interruption) {
  const feed = useFeed();
  const words = t.interrupted;
  const read = (): void => feed.readInterruption();
  return (
    <section class="notice notice-bad interrupted" role="alert" data-testid="interrupted">
      <p>
        <strong>{words.title}.</strong> {sessionId === null ? words.nothing : words.kept}
      </p>
      <div class="row">
        {sessionId !== null && (
          <a class="button" href={`#/sessions/${encodeURIComponent(sessionId)}`} onClick={read}>
            {words.open}
          </a>
        )}
        <button type="button" class="quiet" onClick={read}>
          {words.close}
        </button>
      </div>
    </section>
  );
}

/** What stands between the page and the service. */
export function Connection() {
  const connection = useFeedPart((state) => state.connection);
  const interrupted = useFeedPart((state) => state.interrupted);
  if (connection === 'live') return interrupted && <Interrupted {...interrupted} />;
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
