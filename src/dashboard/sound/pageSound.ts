import { useEffect, useState } from 'preact/hooks';
import type { Feed } from '../feed/feed.ts';
import { currentPrefs } from '../shell/prefs.ts';
import { soundDesk } from './desk.ts';
import { language } from '../strings/language.ts';
import { browserSpeaker, voiceFor } from './speaker.ts';
import { type Tones, webAudioTones } from './tones.ts';

export interface PageSound {
  readonly tones: Tones;
  /** There is a voice of the page's language. */
  readonly hasVoice: () => boolean;
  /** The browser lets sound out (it keeps it in until a key or a tap). */
  unlocked(): boolean;
  caption(): string | null;
  /** Calls back when the caption, the lock or the voices changed. */
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
    speaker: browserSpeaker(synthesis, language),
    settings: currentPrefs,
    later: (callback, ms) => void setTimeout(callback, ms),
    now: () => performance.now(),
    caption: (words) => {
      caption = words;
      tell();
    },
  });
  feed.onMessage(desk.take);
  const unlock = (): void => void context.resume();
  addEventListener('pointerdown', unlock);
  addEventListener('keydown', unlock);
  context.addEventListener('statechange', tell);
  synthesis?.addEventListener('voiceschanged', tell);
  return {
    tones,
    hasVoice: () => voiceFor(synthesis?.getVoices() ?? [], language) !== null,
    unlocked: () => context.state === 'running',
    caption: () => caption,
    watch: (listener) => {
      listeners.add(listener);
      return () => void listeners.delete(listener);
    },
  };
}

/** What the sound shows; renders again when any of it changed. */
interface SoundState {
  readonly caption: string | null;
  readonly unlocked: boolean;
  readonly hasVoice: boolean;
}

export function useSound(sound: PageSound): SoundState {
  const read = (): SoundState => ({
    caption: sound.caption(),
    unlocked: sound.unlocked(),
    hasVoice: sound.hasVoice(),
  });
  const [state, setState] = useState(read());
  useEffect(() => sound.watch(() => setState(read())), [sound]);
  return state;
}
