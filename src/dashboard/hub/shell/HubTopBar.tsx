import type { Me } from '../../../streaming/hubContract/people.ts';
import { Mark } from '../../shell/Mark.tsx';
import { KeysPart } from '../../shell/KeysPart.tsx';
import { LanguagePart } from '../../shell/LanguagePart.tsx';
import { PageLinks } from '../../shell/PageLinks.tsx';
import { useMedia } from '../../shell/useMedia.ts';
import { LookPart, UnitsPart } from '../../shell/LookPart.tsx';
import { h } from '../../strings/hub.ts';
import { type PageName, type Place, to } from './router.ts';
import { Own } from '../../shell/Own.tsx';

const words = h.shell;

type Entry = readonly [PageName, string];

const PAGES_OF: Readonly<Record<Me['role'], readonly Entry[]>> = {
  student: [
    ['home', words.nav.home.student],
    ['pairing', words.nav.pairing],
    ['safety', words.nav.safety],
    ['help', words.nav.help],
    ['account', words.nav.account],
  ],
  coach: [
    ['home', words.nav.home.coach],
    ['texts', words.nav.texts],
    ['safety', words.nav.safety],
    ['help', words.nav.help],
    ['account', words.nav.account],
  ],
  owner: [
    ['home', words.nav.home.coach],
    ['texts', words.nav.texts],
    ['club', words.nav.club],
    ['safety', words.nav.safety],
    ['help', words.nav.help],
    ['account', words.nav.account],
  ],
};

function Pages({ me, place }: { readonly me: Me; readonly place: Place }) {
  const links = PAGES_OF[me.role].map(([page, name]) => ({
    name,
    href: to(page),
    present: place.page === page,
  }));
  return <PageLinks label={words.pages} links={links} />;
}

function SignOut({ signOut }: { readonly signOut: () => void }) {
  return (
    <button type="button" class="quiet" onClick={signOut}>
      {words.signOut}
    </button>
  );
}

/** The address belongs to the router, so the jump is made by hand. */
function skip(event: Event): void {
  event.preventDefault();
  document.getElementById('main')?.focus();
}

/** Around every page: where one can go, in which look, and out. */
export function HubTopBar(props: {
  readonly me: Me | null;
  readonly place: Place;
  readonly signOut: () => void;
}) {
  const { me, place, signOut } = props;
  const wide = useMedia('(min-width: 900px)');
  return (
    <header class="top">
      <a class="skip" href="#main" onClick={skip}>
        {words.skip}
      </a>
      <Mark />
      {me !== null && wide && <Pages me={me} place={place} />}
      {me?.club.demo === true && (
        <span class="badge" title={words.demoWhy}>
          {words.demo}
        </span>
      )}
      <div class="top-actions">
        <details class="menu">
          <summary>{words.settings}</summary>
          <div class="menu-body">
            {me !== null && !wide && <Pages me={me} place={place} />}
            {me !== null && (
              <p>
                {words.signedInAs(me.name)}, <Own>{me.club.name}</Own>
              </p>
            )}
            <LanguagePart />
            <LookPart />
            <UnitsPart />
            {me !== null && (
              <KeysPart keys={words.keyList[me.role === 'student' ? 'student' : 'coach']} />
            )}
            {me !== null && !wide && <SignOut signOut={signOut} />}
          </div>
        </details>
        {me !== null && wide && <SignOut signOut={signOut} />}
      </div>
    </header>
  );
}
