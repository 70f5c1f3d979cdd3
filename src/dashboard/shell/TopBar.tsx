import { useFeed, useSection } from '../feed/hooks.ts';
import { showDialog } from '../practice/dialogs.ts';
import type { PageSound } from '../sound/pageSound.ts';
import { t } from '../strings/strings.ts';
import { Mark } from './Mark.tsx';
import { OwnName } from './OwnName.tsx';
import { PageLinks } from './PageLinks.tsx';
import { SettingsPanel } from './SettingsPanel.tsx';
import { SimulatedBadge } from './SimulatedBadge.tsx';
import { setPrefs, usePrefs } from './prefs.ts';
import { NAV, type Route, hrefOf } from './router.ts';
import { useMedia } from './useMedia.ts';

function PauseButton() {
  const feed = useFeed();
  const paused = useSection('phase')?.phase === 'paused';
  return (
    <button
      type="button"
      class="quiet"
      onClick={() => void feed.send({ type: paused ? 'resume' : 'pause' })}
    >
      {paused ? t.look.resume : t.look.pause} <kbd>P</kbd>
    </button>
  );
}

function PainButton() {
  return (
    <button type="button" class="quiet" onClick={() => showDialog({ kind: 'pain' })}>
      {t.pain.button} <kbd>H</kbd>
    </button>
  );
}

function EndButton() {
  return (
    <button type="button" class="quiet" onClick={() => showDialog({ kind: 'end' })}>
      {t.end.button} <kbd>E</kbd>
    </button>
  );
}

function FarButton() {
  const { far } = usePrefs();
  return (
    <button
      type="button"
      class="quiet"
      title={far ? t.look.nearWhy : t.look.farWhy}
      onClick={() => setPrefs({ far: !far })}
    >
      {far ? t.look.near : t.look.far} <kbd>F</kbd>
    </button>
  );
}

function Pages({ route }: { readonly route: Route }) {
  const idle = useSection('stage') === 'idle';
  const pages = NAV.filter((name) => !(idle && name === 'practice'));
  const links = pages.map((name) => ({
    name: t.nav[name],
    href: hrefOf(name),
    present: name === route,
  }));
  return <PageLinks label={t.nav.label} links={links} />;
}

export function TopBar({ route, sound }: { readonly route: Route; readonly sound: PageSound }) {
  const practising = useSection('stage') === 'practice' && route === 'practice';
  const wide = useMedia('(min-width: 1200px)');
  const narrow = useMedia('(max-width: 700px)');
  // What is pressed in a practice has the row; there, and on a small screen, one goes elsewhere by the menu.
  const pages = <Pages route={route} />;
  const inBar = wide && !practising;
  return (
    <header class={practising ? 'top practising' : 'top'}>
      <a class="skip" href="#main" onClick={skip}>
        {t.skip}
      </a>
      <Mark />
      {inBar && pages}
      <SimulatedBadge />
      {!practising && <OwnName />}
      <div class="top-actions">
        {practising && (
          <>
            <PainButton />
            <PauseButton />
            <EndButton />
            {!narrow && <FarButton />}
          </>
        )}
        <SettingsPanel sound={sound}>
          {!inBar && pages}
          {practising && narrow && <FarButton />}
        </SettingsPanel>
      </div>
    </header>
  );
}

/** The address belongs to the router, so the jump is made by hand. */
function skip(event: Event): void {
  event.preventDefault();
  document.getElementById('main')?.focus();
}
