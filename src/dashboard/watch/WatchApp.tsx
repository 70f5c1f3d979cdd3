import { useEffect, useState } from 'preact/hooks';
import { type Feed, openFeed } from '../feed/feed.ts';
import { FeedContext } from '../feed/hooks.ts';
import { ErrorBoundary } from '../shell/ErrorBoundary.tsx';
import { useTitle } from '../shell/useTitle.ts';
import { t } from '../strings/strings.ts';
import { PairForm } from './PairForm.tsx';
import { Watch } from './Watch.tsx';
import { type Door, askDoor } from './door.ts';
import { type Place, nextPlace } from './place.ts';

const AGAIN_MS = 2000;

/** Asks again and again whether this screen is let in, while that is in question. */
function useAsking(inQuestion: boolean, take: (door: Door) => void): void {
  useEffect(() => {
    if (!inQuestion) return;
    let open = true;
    const ask = (): void => void askDoor().then((door) => open && take(door));
    ask();
    const timer = setInterval(ask, AGAIN_MS);
    return () => {
      open = false;
      clearInterval(timer);
    };
  }, [inQuestion]);
}

function LetIn({ onLive }: { readonly onLive: (live: boolean) => void }) {
  const [feed, setFeed] = useState<Feed | null>(null);
  useEffect(() => {
    const opened = openFeed();
    setFeed(opened);
    const leave = opened.onMessage(({ connection }) => onLive(connection === 'live'));
    return () => {
      leave();
      opened.close();
    };
  }, []);
  return feed === null ? null : (
    <FeedContext.Provider value={feed}>
      <Watch />
    </FeedContext.Provider>
  );
}

/** The second screen: let in by a code, then the practice in very large words. */
export function WatchApp() {
  useTitle(t.nav.screen);
  const [place, setPlace] = useState<Place>('looking');
  const [door, setDoor] = useState<Door | null>(null);
  const [live, setLive] = useState(false);
  const take = (next: Door): void => {
    setDoor(next);
    setPlace((before) => nextPlace(before, next));
  };
  useAsking(place !== 'inside' || !live, take);
  return (
    <ErrorBoundary>
      {place === 'inside' ? (
        <LetIn onLive={setLive} />
      ) : (
        <PairForm place={place} reachable={door !== 'none'} onPaired={() => take('open')} />
      )}
    </ErrorBoundary>
  );
}
