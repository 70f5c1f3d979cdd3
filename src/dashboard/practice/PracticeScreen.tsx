import { Body } from '../body/Body.tsx';
import { Curves } from '../curves/Curves.tsx';
import { useFeedPart } from '../feed/hooks.ts';
import { Measures } from '../measures/Measures.tsx';
import { SensorLine } from '../sensors/SensorLine.tsx';
import { Caution } from '../shell/Caution.tsx';
import { usePrefs } from '../shell/prefs.ts';
import { Caption } from '../sound/Caption.tsx';
import { t } from '../strings/strings.ts';
import { Dialogs } from './Dialogs.tsx';
import { Ledger } from './Ledger.tsx';
import { LostSensors } from './LostSensors.tsx';
import { RestNotice } from './RestNotice.tsx';
import { SourceNotice } from './SourceNotice.tsx';
import { Stage } from './Stage.tsx';
import { Verdict } from './Verdict.tsx';
import { Warnings } from './Warnings.tsx';

/** The practice while it runs: far view for 4 m, near view with everything that was measured. */
export function PracticeScreen({ caption }: { readonly caption: string | null }) {
  const { far } = usePrefs();
  const known = useFeedPart(({ view }) => view !== null);
  return (
    <main id="main" class={`practice ${far ? 'far' : 'near'}`} tabIndex={-1}>
      <h1 class="hidden">{t.nav.practice}</h1>
      {known && (
        <>
          <div class="alerts">
            <Warnings />
            <LostSensors />
            <SourceNotice />
            <RestNotice />
          </div>
          <div class="lane">
            <Stage />
            <Verdict />
            <Caption words={caption} />
          </div>
          <Ledger />
          {!far && (
            <div class="panels" role="region" aria-label={t.home.panels} tabIndex={0}>
              <Body />
              <Curves />
              <Measures />
            </div>
          )}
          <SensorLine />
        </>
      )}
      <Dialogs />
      <Caution />
    </main>
  );
}
