import { useSection } from '../feed/hooks.ts';
import { useSilence } from '../feed/useSilence.ts';
import { LedgerCounts } from '../practice/Ledger.tsx';
import { LostSensors } from '../practice/LostSensors.tsx';
import { RestNotice } from '../practice/RestNotice.tsx';
import { SourceNotice } from '../practice/SourceNotice.tsx';
import { Stage } from '../practice/Stage.tsx';
import { Verdict } from '../practice/Verdict.tsx';
import { WarningText, useWarnings } from '../practice/Warnings.tsx';
import { LanguagePart } from '../shell/LanguagePart.tsx';
import { LookPart } from '../shell/LookPart.tsx';
import { SimulatedBadge } from '../shell/SimulatedBadge.tsx';
import { Caption } from '../sound/Caption.tsx';
import { t } from '../strings/strings.ts';
import { Lost } from './Lost.tsx';
import { useCaption } from './useCaption.ts';
import { useWakeLock } from './useWakeLock.ts';
import { watchWord } from './words.ts';

const words = t.secondScreen.watch;

function Warnings() {
  const open = useWarnings();
  return (
    <>
      {open.map((warning, i) => (
        <div key={warning.id} class="warning" role="alert" data-testid="warning">
          <WarningText warning={warning} place={i + 1} of={open.length}>
            {words.acknowledge}
          </WarningText>
        </div>
      ))}
    </>
  );
}

function Foot() {
  const awake = useWakeLock();
  return (
    <footer class="watch-foot">
      <SimulatedBadge />
      <details class="menu">
        <summary>{t.look.settings}</summary>
        <div class="menu-body">
          <p>{words.viewOnly}</p>
          {!awake && <p>{words.awake}</p>}
          <LanguagePart />
          <LookPart />
          <p class="fine">
            <strong>{t.caution.short}</strong> {t.caution.rest}
          </p>
        </div>
      </details>
    </footer>
  );
}

function Live({ caption }: { readonly caption: string | null }) {
  const practising = useSection('stage') === 'practice';
  return (
    <>
      <div class="watch-told">
        <Warnings />
        <SourceNotice />
        <LostSensors />
        <RestNotice />
      </div>
      <div class={practising ? 'watch-lane' : 'watch-lane watch-alone'}>
        <Stage says={watchWord} />
        {practising && <Verdict />}
      </div>
      {caption !== null && <Caption words={caption} />}
    </>
  );
}

/** The practice as it runs, in very large words; nothing here can be asked for. */
export function Watch() {
  const caption = useCaption();
  const silentS = useSilence();
  const practising = useSection('stage') === 'practice';
  return (
    <main id="main" class="watch">
      <h1 class="hidden">{t.secondScreen.title}</h1>
      {silentS === null ? <Live caption={caption} /> : <Lost forS={silentS} />}
      <div class="watch-bottom">
        {silentS === null && practising && <LedgerCounts />}
        <Foot />
      </div>
    </main>
  );
}
