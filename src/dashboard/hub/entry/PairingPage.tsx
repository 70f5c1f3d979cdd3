import { useState } from 'preact/hooks';
import type { PairingCode } from '../../../streaming/hubContract/people.ts';
import { h } from '../../strings/hub.ts';
import { Copied } from '../parts/Copied.tsx';
import { HubPage } from '../parts/HubPage.tsx';
import { Qr } from '../../shell/Qr.tsx';
import { useAct } from '../parts/useAct.ts';
import { useHub } from '../shell/hub.ts';

const words = h.entry.pairing;

function Code({ code }: { readonly code: PairingCode }) {
  return (
    <section class="pairing-code" role="status">
      <Copied label={words.code} text={code.code} />
      <Copied label={words.hub} text={code.hubUrl} />
      {code.qr && <Qr rows={code.qr} label={words.qr} />}
      <p class="fine">{words.until(code.expiresMs)}</p>
    </section>
  );
}

/** A code that lets one computer of the student send sessions. */
export function PairingPage() {
  const { client } = useHub();
  const [code, setCode] = useState<PairingCode | null>(null);
  const { busy, problem, run } = useAct();
  const make = (): void => void run(async () => setCode(await client.people.pairingCode()));
  return (
    <HubPage title={words.title} narrow>
      <p class="lead">{words.lead}</p>
      <ol class="numbered">
        {words.steps.map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
      {code !== null && <Code code={code} />}
      {problem !== null && (
        <p class="refusal" role="alert">
          {problem}
        </p>
      )}
      <p>
        <button
          type="button"
          class={code === null ? 'primary' : undefined}
          disabled={busy}
          onClick={make}
        >
          {code === null ? words.make : words.another}
        </button>
      </p>
    </HubPage>
  );
}
