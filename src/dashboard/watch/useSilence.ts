import { useEffect, useRef, useState } from 'preact/hooks';
import { useFeed, useFeedPart } from '../feed/hooks.ts';

/** s since the laptop was last heard; `null` while there is a connection. */
export function useSilence(): number | null {
  const feed = useFeed();
  const live = useFeedPart(({ connection }) => connection === 'live');
  const heardMs = useRef(Date.now());
  const [nowMs, setNowMs] = useState(Date.now);
  useEffect(
    () =>
      feed.onMessage(({ connection }) => {
        if (connection === 'live') heardMs.current = Date.now();
      }),
    [feed],
  );
  useEffect(() => {
    if (live) return;
    setNowMs(Date.now());
    const timer = setInterval(() => setNowMs(Date.now()), 1000);
    return () => clearInterval(timer);
  }, [live]);
  return live ? null : Math.max(0, Math.round((nowMs - heardMs.current) / 1000));
}
