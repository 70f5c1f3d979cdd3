import { standingWarnings } from '../../coaching/standingWarnings.ts';
import type { CorrectedKind } from '../../coaching/ledger.ts';
import type { Feed } from '../feed/feed.ts';
import { openDialog, showDialog } from '../practice/dialogs.ts';
import { currentPrefs, setPrefs } from './prefs.ts';

/** A key pressed while the person writes or moves a control is not ours. */
function isTyping({ target }: KeyboardEvent): boolean {
  return target instanceof HTMLElement && /^(INPUT|TEXTAREA|SELECT)$/.test(target.tagName);
}

const isIn = ({ target }: KeyboardEvent, selector: string): boolean =>
  target instanceof HTMLElement && target.closest(selector) !== null;

/** Where Enter keeps its own meaning: lines of text, an open question, a word that an input method composes. */
const keepsEnter = (event: KeyboardEvent): boolean =>
  event.isComposing ||
  isIn(event, 'textarea, .warning button') ||
  document.querySelector('dialog[open]') !== null;

/**
 * While a warning is shown, Enter acknowledges the newest one and presses nothing else.
 * @returns whether it did
 */
function acknowledgedNewest(feed: Feed, event: KeyboardEvent): boolean {
  const { connection, view } = feed.state();
  const newest = standingWarnings(view?.warnings ?? []).at(-1);
  const shown = document.querySelector('.warning') !== null;
  if (newest === undefined || !shown || connection !== 'live' || keepsEnter(event)) return false;
  event.preventDefault();
  void feed.send({ type: 'acknowledge', id: newest.id });
  return true;
}

/** A key that is held down acknowledges once, and presses nothing until it is let go. */
function listenToEnter(feed: Feed): void {
  let held = false;
  addEventListener('keydown', (event) => {
    if (event.key !== 'Enter' || event.ctrlKey || event.metaKey || event.altKey) return;
    if (!event.repeat) held = acknowledgedNewest(feed, event);
    else if (held) event.preventDefault();
  });
}

function pauseOrResume(feed: Feed): void {
  const paused = feed.state().view?.phase.phase === 'paused';
  void feed.send({ type: paused ? 'resume' : 'pause' });
}

const KINDS: Readonly<Record<string, CorrectedKind>> = { r: 'rehearsal', b: 'ball', i: 'ignored' };

/** Says what the latest repetition was. */
function correctLatest(feed: Feed, kind: CorrectedKind): void {
  const latest = feed.state().view?.strip.at(-1);
  if (latest !== undefined) void feed.send({ type: 'correct', index: latest.index, kind });
}

function pressInPractice(feed: Feed, key: string): void {
  const kind = KINDS[key];
  if (kind !== undefined) correctLatest(feed, kind);
  if (key === 'u') void feed.send({ type: 'undo' });
  if (key === 'p') pauseOrResume(feed);
  if (key === 'h') showDialog({ kind: 'pain' });
  if (key === 'e') showDialog({ kind: 'end' });
}

function press(feed: Feed, key: string): void {
  if (key === 'f') setPrefs({ far: !currentPrefs().far });
  if (key === 'm') setPrefs({ muted: !currentPrefs().muted });
  if (document.querySelector('main.practice') !== null) pressInPractice(feed, key);
}

/** The single keys of the practice, which can be switched off, and Enter, which cannot. */
export function listenToKeys(feed: Feed): void {
  listenToEnter(feed);
  addEventListener('keydown', (event) => {
    if (event.ctrlKey || event.metaKey || event.altKey || event.repeat) return;
    if (isTyping(event) || openDialog() !== null) return;
    if (currentPrefs().singleKeys) press(feed, event.key.toLowerCase());
  });
}
