import type { DeskSync } from '../../streaming/contract.ts';
import { t } from '../strings/strings.ts';
import type { Desk } from './useDesk.ts';

const TOO_MUCH_MS = 5;

function Found({ offsetMs, taps }: Extract<DeskSync, { state: 'done' }>) {
  const bad = Math.abs(offsetMs) > TOO_MUCH_MS;
  return (
    <p class={bad ? 'notice notice-bad' : 'notice'}>
      {t.desk.syncDone(t.decimal(Math.abs(offsetMs), 1), taps)}{' '}
      {bad ? t.desk.syncBad : t.desk.syncGood}
    </p>
  );
}

function Result({ sync, able }: { readonly sync: DeskSync; readonly able: boolean }) {
  if (sync.state === 'listening') return <p class="desk-tap">{t.desk.syncListening}</p>;
  if (sync.state === 'failed')
    return <p class="notice notice-bad">{t.said.refusal(sync.reason)}</p>;
  if (sync.state === 'done') return <Found {...sync} />;
  return <p class="fine">{able ? '' : t.desk.syncUnable}</p>;
}

/** Tap both together three times: how far do the two clocks differ? */
export function SyncCheck({
  sync,
  able,
  send,
}: {
  readonly sync: DeskSync;
  readonly able: boolean;
  readonly send: Desk['send'];
}) {
  const listening = sync.state === 'listening';
  return (
    <section class="desk-part" aria-labelledby="sync">
      <h2 id="sync">{t.desk.syncTitle}</h2>
      <p class="fine">{t.desk.syncHelp}</p>
      <button
        type="button"
        disabled={!able}
        aria-disabled={listening}
        onClick={() => listening || send({ type: 'sync' })}
      >
        {t.desk.syncStart}
      </button>
      <div class="sync-result">
        <div aria-live="polite">
          <Result sync={sync} able={able} />
        </div>
        {listening && (
          <p class="desk-left" aria-hidden="true">
            {t.desk.syncLeft(sync.leftS)}
          </p>
        )}
      </div>
    </section>
  );
}
