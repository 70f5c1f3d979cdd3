import type { Feed } from './feed/feed.ts';
import { AfterScreen } from './after/AfterScreen.tsx';
import { CoachScreen } from './coach/CoachScreen.tsx';
import { FeedContext } from './feed/hooks.ts';
import { HelpScreen } from './help/HelpScreen.tsx';
import { PlanScreen } from './plan/PlanScreen.tsx';
import { PracticeScreen } from './practice/PracticeScreen.tsx';
import { ProgressScreen } from './progress/ProgressScreen.tsx';
import { ReadyScreen } from './ready/ReadyScreen.tsx';
import { Connection } from './shell/Connection.tsx';
import { ErrorBoundary } from './shell/ErrorBoundary.tsx';
import { SessionsScreen } from './sessions/SessionsScreen.tsx';
import { SensorsScreen } from './sensors/SensorsScreen.tsx';
import { SecondScreenScreen } from './secondScreen/SecondScreenScreen.tsx';
import { SafetyScreen } from './shell/SafetyScreen.tsx';
import { TopBar } from './shell/TopBar.tsx';
import { type Route, useFollowStage, useRoute } from './shell/router.ts';
import { t } from './strings/strings.ts';
import { useTitle } from './shell/useTitle.ts';
import { TodayScreen } from './today/TodayScreen.tsx';
import { type PageSound, useSound } from './sound/pageSound.ts';

function Screen({ route, caption }: { readonly route: Route; readonly caption: string | null }) {
  switch (route) {
    case 'today':
      return <TodayScreen />;
    case 'ready':
      return <ReadyScreen caption={caption} />;
    case 'practice':
      return <PracticeScreen caption={caption} />;
    case 'after':
      return <AfterScreen />;
    case 'sessions':
      return <SessionsScreen />;
    case 'progress':
      return <ProgressScreen />;
    case 'plan':
      return <PlanScreen />;
    case 'coach':
      return <CoachScreen />;
    case 'sensors':
      return <SensorsScreen />;
    case 'screen':
      return <SecondScreenScreen />;
    case 'safety':
      return <SafetyScreen />;
    case 'help':
      return <HelpScreen />;
  }
}

function Shell({ sound }: { readonly sound: PageSound }) {
  const route = useRoute();
  const { caption } = useSound(sound);
  useFollowStage();
  useTitle(t.nav[route]);
  return (
    <>
      <TopBar route={route} sound={sound} />
      <Connection />
      <Screen route={route} caption={caption} />
    </>
  );
}

export function App({ feed, sound }: { readonly feed: Feed; readonly sound: PageSound }) {
  return (
    <ErrorBoundary>
      <FeedContext.Provider value={feed}>
        <Shell sound={sound} />
      </FeedContext.Provider>
    </ErrorBoundary>
  );
}
