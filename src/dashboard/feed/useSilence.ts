import { useEffect, useState } from 'preact/hooks';
import { useFeed, useFeedPart } from './hooks.ts';

/** s since the service was last heard; `null` while there is a connection. */
export function useSilence(): number | null {
  const feed = useFeed();
  const live = useFeedPart(({ connection }) => connection === 'live');
  const [silentMs, setSilentMs] = useState(0);
  useEffect(() => {
    if (live) return;
    const look = (): void => setSilentMs(feed.silentMs());
    look();
    const timer = setInterval(look, 1000);
    return () => clearInterval(timer);
  }, [feed, live]);
  return live ? null : Math.floor(silentMs / 1000);
}
