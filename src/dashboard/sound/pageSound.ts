import { useEffect, useState } from 'preact/hooks';
import type { Feed } from '../feed/feed.ts';
import { currentPrefs } from '../shell/prefs.ts';
import { soundDesk } from './desk.ts';
import { browserSpeaker } from './speaker.ts';
import { type Tones, webAudioTones } from './tones.ts';

export interface PageSound {
  readonly tones: Tones;
  readonly hasVoices: () => boolean;
  /** The browser lets sound out (it keeps it in until a key or a tap). */
  unlocked(): boolean;
  caption(): string | null;
  /** Calls back when the caption or the lock changed. */
  watch(listener: () => void): () => void;
}

/** Joins the feed to the loudspeaker. */
export function pageSound(feed: Feed): PageSound {
  const context = new AudioContext();
  const tones = webAudioTones(context);
  const listeners = new Set<() => void>();
  const tell = (): void => listeners.forEach((listener) => listener());
  let caption: string | null = null;
  const synthesis = 'speechSynthesis' in globalThis ? speechSynthesis : undefined;
  const desk = soundDesk({
    tones,
    speaker: browserSpeaker(synthesis),
    settings: currentPrefs,
    later: (callback, ms) => void setTimeout(callback, ms),
    caption: (words) => {
      caption = words;
      tell();
    },
  });
  feed.onMessage(({ view }) => view !== null && desk.take(view));
  const unlock = (): void => void context.resume();
  addEventListener('pointerdown', unlock);
  addEventListener('keydown', unlock);
  context.addEventListener('statechange', tell);
  return {
    tones,
    hasVoices: () => (synthesis?.getVoices().length ?? 0) > 0,
    unlocked: () => context.state === 'running',
    caption: () => caption,
    watch: (listener) => {
      listeners.add(listener);
      return () => void listeners.delete(listener);
    },
  };
}

/** Renders again when the caption or the lock changed. */
export function useSound(sound: PageSound): { caption: string | null; unlocked: boolean } {
  const read = () => ({ caption: sound.caption(), unlocked: sound.unlocked() });
  const [state, setState] = useState(read());
  useEffect(() => sound.watch(() => setState(read())), [sound]);
  return state;
}
