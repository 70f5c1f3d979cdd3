import type { Feed } from './feed/feed.ts';
import { FeedContext } from './feed/hooks.ts';
import { PracticeScreen } from './practice/PracticeScreen.tsx';
import { Connection } from './shell/Connection.tsx';
import { ErrorBoundary } from './shell/ErrorBoundary.tsx';
import { SensorsScreen } from './sensors/SensorsScreen.tsx';
import { SafetyScreen } from './shell/SafetyScreen.tsx';
import { TopBar } from './shell/TopBar.tsx';
import { useRoute } from './shell/router.ts';
import { type PageSound, useSound } from './sound/pageSound.ts';

export function App({ feed, sound }: { readonly feed: Feed; readonly sound: PageSound }) {
  const route = useRoute();
  const { caption } = useSound(sound);
  return (
    <ErrorBoundary>
      <FeedContext.Provider value={feed}>
        <TopBar route={route} sound={sound} />
        <Connection />
        {route === 'practice' && <PracticeScreen caption={caption} />}
        {route === 'sensors' && <SensorsScreen />}
        {route === 'safety' && <SafetyScreen />}
      </FeedContext.Provider>
    </ErrorBoundary>
  );
}
