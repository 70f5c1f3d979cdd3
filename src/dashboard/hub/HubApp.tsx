import { useCallback, useEffect, useMemo, useState } from 'preact/hooks';
import type { Me } from '../../streaming/hubContract/people.ts';
import { RefusedAnswer } from '../review/source.ts';
import { ErrorBoundary } from '../shell/ErrorBoundary.tsx';
import { h } from '../strings/hub.ts';
import { t } from '../strings/strings.ts';
import { useTitle } from '../shell/useTitle.ts';
import { type HubClient, hubClient } from './client/client.ts';
import { InvitationPage } from './entry/InvitationPage.tsx';
import { SetupPage } from './entry/SetupPage.tsx';
import { SignInPage } from './entry/SignInPage.tsx';
import { HelpPage } from '../help/HelpPage.tsx';
import { HubPage } from './parts/HubPage.tsx';
import { sentenceOf } from './parts/useAct.ts';
import { SignedInPages } from './SignedInPages.tsx';
import { HubTopBar } from './shell/HubTopBar.tsx';
import { HubContext } from './shell/hub.ts';
import { useFocusOnPage } from './shell/useFocusOnPage.ts';
import { type Place, goTo, to, usePlace } from './shell/router.ts';
import { SafetyScreen } from '../shell/SafetyScreen.tsx';

/** Who sits here: not known yet, nobody, nobody and the hub is new, or somebody. */
type Who = 'unknown' | 'nobody' | 'first' | Me;

async function whoIsIt(client: HubClient): Promise<Who> {
  try {
    return await client.people.me();
  } catch (error) {
    if (!(error instanceof RefusedAnswer && error.status === 401)) throw error;
    return (await client.people.setup()).needed ? 'first' : 'nobody';
  }
}

function useWho() {
  const [who, setWho] = useState<Who>('unknown');
  const [problem, setProblem] = useState<string | null>(null);
  const leave = useCallback(() => setWho((old) => (old === 'first' ? old : 'nobody')), []);
  const client = useMemo(() => hubClient(leave), [leave]);
  const enter = useCallback(
    (me: Me): void => {
      client.useToken(me.csrf);
      setWho(me);
    },
    [client],
  );
  const look = useCallback(() => {
    setProblem(null);
    whoIsIt(client).then(
      (found) => (typeof found === 'object' ? enter(found) : setWho(found)),
      (error: unknown) => setProblem(sentenceOf(error)),
    );
  }, [client, enter]);
  useEffect(look, [look]);
  return { who, problem, client, enter, leave, look };
}

function Unreachable({ problem, look }: { readonly problem: string; readonly look: () => void }) {
  return (
    <HubPage title={h.shell.failed} narrow>
      <p role="alert">{problem}</p>
      <p>
        <button type="button" onClick={look}>
          {h.shell.again}
        </button>
      </p>
    </HubPage>
  );
}

/** A student reads of the practice, everybody else of the hub. */
function HubHelp({ student }: { readonly student: boolean }) {
  useTitle(h.shell.nav.help);
  return <HelpPage topics={student ? t.help.student : t.help.coach} leftHanded={false} />;
}

interface PageProps extends ReturnType<typeof useWho> {
  readonly place: Place;
}

function Page(props: PageProps) {
  const { place, who, problem, client, enter, leave, look } = props;
  const me = typeof who === 'object' ? who : null;
  if (problem !== null) return <Unreachable problem={problem} look={look} />;
  if (place.page === 'safety') return <SafetyScreen />;
  if (place.page === 'help') return <HubHelp student={me?.role === 'student'} />;
  if (who === 'unknown')
    return (
      <div class="connecting" role="status">
        <span class="pulse" aria-hidden="true" />
        <p>{h.shell.loading}</p>
      </div>
    );
  if (place.page === 'invitation')
    return <InvitationPage key={place.id} {...{ client, me, enter }} code={place.id} />;
  if (who === 'first') return <SetupPage client={client} enter={enter} />;
  if (me === null) return <SignInPage client={client} enter={enter} />;
  return (
    <HubContext.Provider value={{ client, me, leave }}>
      <SignedInPages place={place} />
    </HubContext.Provider>
  );
}

function Shell() {
  const place = usePlace();
  const hub = useWho();
  useFocusOnPage(place);
  const signOut = (): void =>
    void hub.client.people.signOut().then(
      () => {
        hub.leave();
        goTo(to('home'));
      },
      () => hub.look(),
    );
  return (
    <>
      <HubTopBar
        me={typeof hub.who === 'object' ? hub.who : null}
        place={place}
        signOut={signOut}
      />
      <Page place={place} {...hub} />
    </>
  );
}

export function HubApp() {
  return (
    <ErrorBoundary>
      <Shell />
    </ErrorBoundary>
  );
}
