import { standingWarnings } from '../../coaching/standingWarnings.ts';
import type { CorrectedKind } from '../../coaching/ledger.ts';
import type { Feed } from '../feed/feed.ts';
import { openDialog, showDialog } from '../practice/dialogs.ts';
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

/** The single keys of the practice; they can be switched off. */
export function listenToKeys(feed: Feed): void {
  addEventListener('keydown', (event) => {
    if (event.ctrlKey || event.metaKey || event.altKey || event.repeat) return;
    if (event.key === 'Escape') return;
    if (isTyping(event) || openDialog() !== null) return;
    if (event.key === 'Enter' && !onControl(event)) return acknowledgeNewest(feed);
    if (currentPrefs().singleKeys) press(feed, event.key.toLowerCase());
  });
}
