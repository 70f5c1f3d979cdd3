import { useState } from 'preact/hooks';
import { useFeed, useSection } from '../feed/hooks.ts';
import { Refusal, useAsk } from '../shell/Ask.tsx';
import { t } from '../strings/strings.ts';

/** Real sensors that were strapped on the wrong way round may stay there: the service swaps them, and it begins anew. */
export function SwapSensors() {
  const feed = useFeed();
  const live = useSection('source')?.kind === 'ble';
  const { ask, refusal } = useAsk();
  const [failed, setFailed] = useState<string | null>(null);
  const swap = async (): Promise<void> => {
    const reply = await feed.sendDesk({ type: 'swap' });
    setFailed(reply.ok ? null : t.said.refusal(reply.error) || t.error.noAnswer);
    if (reply.ok) await ask({ type: 'again' });
  };
  if (!live) return null;
  return (
    <div class="swap-sensors">
      <p>{t.ready.guide.swapWhy}</p>
      <button type="button" class="primary" onClick={() => void swap()}>
        {t.desk.swap}
      </button>
      <Refusal text={failed ?? refusal} />
    </div>
  );
}
