import type { PracticeView } from '../../streaming/contract.ts';
import { type Announcement, announcements } from './announce.ts';
import type { Speaker } from './speaker.ts';
import type { Tones } from './tones.ts';

interface SoundSettings {
  readonly muted: boolean;
  /** 0..1 */
  readonly volume: number;
  /** 1 is the voice's own pace. */
  readonly rate: number;
}

export interface DeskOptions {
  readonly tones: Tones;
  readonly speaker: Speaker;
  readonly settings: () => SoundSettings;
  /** `null`: what was said belongs to a practice that is past. */
  readonly caption: (words: string | null) => void;
  /** Calls back after so many ms. */
  readonly later: (callback: () => void, ms: number) => void;
}

/** Decides when each announcement sounds. */
export interface SoundDesk {
  take(view: PracticeView): void;
}

/** Pause between a tone and the words after it, ms. */
const BREATH_MS = 40;
/** No words while the golfer swings up, holds, releases: they would pull the attention off the movement. */
const QUIET: readonly string[] = ['backswing', 'top', 'released'];
/** An older waiting announcement of the same kind is no longer true. */
const NEWEST_ONLY: readonly Announcement['kind'][] = ['cue', 'ledger', 'step'];
const FIRST: readonly Announcement['kind'][] = ['warning', 'sensor', 'step', 'cue', 'ledger'];

/** Without a voice the caption stays as long as it takes to read it, ms. */
const readingMs = (words: string): number => 800 + 50 * words.length;

const rank = ({ kind }: Announcement): number => FIRST.indexOf(kind);

function enqueue(queue: Announcement[], next: Announcement): Announcement[] {
  const others = queue.filter((a) => !(a.kind === next.kind && NEWEST_ONLY.includes(next.kind)));
  return [...others, next].sort((a, b) => rank(a) - rank(b));
}

/** One desk for a page: tone first, then words, one after another, never during hold or release. */
export function soundDesk(options: DeskOptions): SoundDesk {
  const { tones, speaker, settings, caption, later } = options;
  let before: PracticeView | null = null;
  let queue: Announcement[] = [];
  let busy = false;
  let speaking = false;
  /** Counts practices: what comes back of a former one is let go by. */
  let practice = 0;
  const loudness = (): number => (settings().muted ? 0 : settings().volume);
  const quiet = (): boolean => before !== null && QUIET.includes(before.phase.phase);

  const done = (of: number): void => {
    if (of !== practice) return;
    busy = speaking = false;
    pump();
  };
  const say = (a: Announcement, words: string, of: number): void => {
    if (of !== practice) return;
    // The swing may have begun while the tone sounded; a warning is then said after it.
    if (quiet() && a.kind === 'warning') queue = enqueue(queue, { ...a, tone: null });
    if (quiet()) return done(of);
    const over = (): void => done(of);
    if (loudness() === 0) return later(over, readingMs(words));
    speaking = true;
    void speaker.speak(words, { rate: settings().rate, volume: loudness() }).then(over, over);
  };
  const perform = (a: Announcement): void => {
    busy = true;
    const of = practice;
    const lengthMs = a.tone === null ? 0 : tones.play(a.tone, loudness());
    const { words } = a;
    if (words === null) return later(() => done(of), lengthMs);
    caption(words);
    later(() => say(a, words, of), a.tone === null ? 0 : lengthMs + BREATH_MS);
  };
  function pump(): void {
    if (busy || quiet()) return;
    const [next, ...rest] = queue;
    if (next === undefined) return;
    queue = rest;
    perform(next);
  }
  const takeOne = (a: Announcement): void => {
    // A tone alone (ready, hold reached) belongs to its instant: it waits for nothing.
    if (a.words === null && a.tone !== null) tones.play(a.tone, loudness());
    else queue = enqueue(queue, a);
  };
  const beginAnew = (): void => {
    practice++;
    queue = [];
    if (speaking) speaker.cancel();
    busy = speaking = false;
    caption(null);
  };
  return {
    take: (view) => {
      if (before !== null && before.practiceId !== view.practiceId) beginAnew();
      const news = announcements(before, view);
      const wasQuiet = quiet();
      before = view;
      if (quiet() && !wasQuiet && speaking) speaker.cancel();
      news.forEach(takeOne);
      pump();
    },
  };
}
