import { createContext } from 'preact';
import { useContext, useEffect, useState } from 'preact/hooks';
import type { PracticeView } from '../../streaming/contract.ts';
import type { Feed, FeedState } from './feed.ts';

export const FeedContext = createContext<Feed | null>(null);

export function useFeed(): Feed {
  const feed = useContext(FeedContext);
  if (feed === null) throw new Error('No feed around this component');
  return feed;
}

/** Part of the feed's state; the component renders again only when that part is another one. */
export function useFeedPart<T>(select: (state: FeedState) => T): T {
  const feed = useFeed();
  const [part, setPart] = useState<{ readonly value: T }>({ value: select(feed.state()) });
  useEffect(() => {
    const take = (state: FeedState): void =>
      setPart((before) => {
        const value = select(state);
        return Object.is(before.value, value) ? before : { value };
      });
    take(feed.state());
    return feed.onFrame(take);
  }, [feed]);
  return part.value;
}

/** One section of the view; `null` before the first snapshot. */
export const useSection = <K extends keyof PracticeView>(key: K): PracticeView[K] | null =>
  useFeedPart(({ view }) => (view === null ? null : view[key]));
