import { useEffect, useState } from 'preact/hooks';
import { useFeed } from '../feed/hooks.ts';
import { soundDesk } from '../sound/desk.ts';
import { browserSpeaker } from '../sound/speaker.ts';
import { language } from '../strings/language.ts';

const SILENT = { muted: true, volume: 0, rate: 1 };

/** What the laptop speaks, as words: announced as there, in silence. */
export function useCaption(): string | null {
  const feed = useFeed();
  const [caption, setCaption] = useState<string | null>(null);
  useEffect(() => {
    const desk = soundDesk({
      tones: { play: () => 0 },
      speaker: browserSpeaker(undefined, language),
      settings: () => SILENT,
      later: (callback, ms) => void setTimeout(callback, ms),
      now: () => performance.now(),
      caption: setCaption,
    });
    return feed.onMessage(desk.take);
  }, [feed]);
  return caption;
}
