import { standingWarnings } from '../../coaching/standingWarnings.ts';
import type { Feed } from '../feed/feed.ts';
import { currentPrefs, setPrefs } from './prefs.ts';

/** A key pressed while the person writes or moves a control is not ours. */
function isTyping({ target }: KeyboardEvent): boolean {
  return target instanceof HTMLElement && /^(INPUT|TEXTAREA|SELECT)$/.test(target.tagName);
}

const onControl = ({ target }: KeyboardEvent): boolean =>
  target instanceof HTMLElement && /^(BUTTON|A|SUMMARY)$/.test(target.tagName);

function acknowledgeNewest(feed: Feed): void {
  const newest = standingWarnings(feed.state().view?.warnings ?? []).at(-1);
  if (newest !== undefined) void feed.send({ type: 'acknowledge', id: newest.id });
}

function pauseOrResume(feed: Feed): void {
  const paused = feed.state().view?.phase.phase === 'paused';
  void feed.send({ type: paused ? 'resume' : 'pause' });
}

function press(feed: Feed, key: string): void {
  if (key === 'f') setPrefs({ far: !currentPrefs().far });
  if (key === 'm') setPrefs({ muted: !currentPrefs().muted });
  if (key === 'p') pauseOrResume(feed);
}

function closeMenus(): void {
  for (const menu of document.querySelectorAll('details.menu[open]')) {
    menu.removeAttribute('open');
    menu.querySelector('summary')?.focus();
  }
}

/** The single keys of the practice; they can be switched off. */
export function listenToKeys(feed: Feed): void {
  addEventListener('keydown', (event) => {
    if (event.ctrlKey || event.metaKey || event.altKey || event.repeat) return;
    if (event.key === 'Escape') return closeMenus();
    if (isTyping(event)) return;
    if (event.key === 'Enter' && !onControl(event)) return acknowledgeNewest(feed);
    if (currentPrefs().singleKeys) press(feed, event.key.toLowerCase());
  });
}
