import type { PracticeView } from '../../streaming/contract.ts';
import type { Arrival, FeedState } from '../feed/state.ts';
import { t } from '../strings/strings.ts';
import {
  type Announced,
  type Announcement,
  announcement,
  announcements,
  nothingAnnounced,
} from './announce.ts';
import { type Waiting, enqueue, stillTrue } from './queue.ts';
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
  /** `null`: what was said is past. */
  readonly caption: (words: string | null) => void;
  /** Calls back after so many ms. */
  readonly later: (callback: () => void, ms: number) => void;
  /** Monotonic, ms. */
  readonly now: () => number;
}

/** Decides when each announcement sounds. */
export interface SoundDesk {
  take(state: FeedState): void;
}

/** Pause between a tone and the words after it, ms. */
const BREATH_MS = 40;
/** No tone and the pause after it last longer, ms: what is begun so long before its time is over is still said in time. */
const TONE_MS = 300;
/** No words while the golfer swings up, holds, releases: they would pull the attention off the movement. */
const QUIET: readonly string[] = ['backswing', 'top', 'released'];

/** Without a voice the caption stays as long as it takes to read it, ms. */
const readingMs = (words: string): number => 800 + 50 * words.length;

const isQuiet = (view: PracticeView | null): boolean =>
  view !== null && view.stage === 'practice' && QUIET.includes(view.phase.phase);

/** One desk for a page: tone first, then words, one after another, never during hold or release. */
export function soundDesk(options: DeskOptions): SoundDesk {
  const { tones, speaker, settings, caption, later, now } = options;
  let before: PracticeView | null = null;
  let arrival: Arrival | null = null;
  let announced: Announced = nothingAnnounced();
  let lost = false;
  let interrupted = false;
  let queue: readonly Waiting[] = [];
  let busy = false;
  /** What is being spoken. */
  let speaking: Announcement | null = null;
  /** Counts practices: what comes back of a former one is let go by. */
  let practice = 0;
  const loudness = (): number => (settings().muted ? 0 : settings().volume);
  const quiet = (): boolean => !lost && isQuiet(before);
  const put = (what: Announcement): void => void (queue = enqueue(queue, what, now()));

  const done = (of: number): void => {
    if (of !== practice) return;
    busy = false;
    speaking = null;
    pump();
  };
  const say = ({ what, untilMs }: Waiting, words: string, of: number): void => {
    if (of !== practice) return;
    // The swing may have begun while the tone sounded; a warning is then said after it.
    if (quiet() && what.kind === 'warning') put({ ...what, tone: null });
    if (quiet() || now() > untilMs + TONE_MS) return done(of);
    const over = (): void => done(of);
    if (loudness() === 0) return later(over, readingMs(words));
    speaking = what;
    void speaker.speak(words, { rate: settings().rate, volume: loudness() }).then(over, over);
  };
  const perform = (next: Waiting): void => {
    busy = true;
    const of = practice;
    const { tone, words } = next.what;
    const lengthMs = tone === null ? 0 : tones.play(tone, loudness());
    caption(words);
    if (words === null) return later(() => done(of), lengthMs);
    later(() => say(next, words, of), tone === null ? 0 : lengthMs + BREATH_MS);
  };
  function pump(): void {
    if (busy || quiet()) return;
    const [next, ...rest] = stillTrue(queue, now());
    queue = rest;
    if (next !== undefined) perform(next);
  }
  const takeOne = (a: Announcement): void => {
    // A tone alone (ready, hold reached) belongs to its instant: it waits for nothing.
    if (a.words === null && a.tone !== null && a.kind !== 'cue') tones.play(a.tone, loudness());
    else put(a.kind === 'cue' ? { ...a, withinMs: (a.withinMs ?? 0) - TONE_MS } : a);
  };
  const beginAnew = (): void => {
    practice++;
    queue = [];
    if (speaking !== null) speaker.cancel();
    busy = false;
    speaking = null;
    before = null;
    announced = nothingAnnounced();
    caption(null);
  };
  /** A swing begins: what is being said is cut short; a warning is said again after it. */
  const hush = (): void => {
    if (speaking === null) return;
    if (speaking.kind === 'warning') put({ ...speaking, tone: null });
    speaker.cancel();
  };
  const takeConnection = (connection: FeedState['connection']): void => {
    if ((connection === 'lost') === lost) return;
    lost = connection === 'lost';
    const words = lost ? t.connection.lost : t.connection.backSpoken;
    if (lost) queue = queue.filter(({ what }) => what.kind === 'warning');
    put(announcement('connection', lost ? 'connectionLost' : 'listening', words));
  };
  const takeInterruption = (is: boolean): void => {
    if (is && !interrupted) {
      beginAnew();
      put(announcement('connection', 'listening', t.interrupted.spoken));
    }
    interrupted = is;
  };
  const takeView = (view: PracticeView, came: Arrival): void => {
    if (before !== null && before.practiceId !== view.practiceId) beginAnew();
    const news = announcements(before, view, came, announced);
    const wasQuiet = quiet();
    before = view;
    arrival = came;
    if (quiet() && !wasQuiet) hush();
    news.forEach(takeOne);
  };
  return {
    take: (state) => {
      takeConnection(state.connection);
      takeInterruption(state.interrupted !== null);
      // Nobody in this page began what runs after an interruption.
      const isNew = state.arrival !== arrival && !interrupted;
      if (isNew && state.view !== null && state.arrival !== null)
        takeView(state.view, state.arrival);
      pump();
    },
  };
}
