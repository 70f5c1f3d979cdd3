import type { Feed } from '../feed/feed.ts';
import { currentPrefs, watchPrefs } from '../shell/prefs.ts';

/** Tells each practice once whether a double tap is to pause it, and again when the choice changes. It begins with no. */
export function followDoubleTap(feed: Feed): void {
  let told = { practiceId: '', on: false };
  const tell = (): void => {
    const { view } = feed.state();
    if (view === null) return;
    const { practiceId } = view;
    const on = currentPrefs().doubleTap;
    const known = told.practiceId === practiceId && told.on;
    told = { practiceId, on };
    if (known !== on) void feed.send({ type: 'double-tap', on });
  };
  feed.onMessage(tell);
  watchPrefs(tell);
}
