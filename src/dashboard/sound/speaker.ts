/** Something that can say a sentence. */
export interface Speaker {
  /** Settles when it has been said, was cut short or cannot be said. */
  speak(text: string, options: { readonly rate: number; readonly volume: number }): Promise<void>;
  cancel(): void;
}

/** A voice that never ends (some browsers forget to say so) is given up after this long, ms. */
const LONGEST_MS = 15_000;

/** The browser's own speech; silent where it has none. */
export function browserSpeaker(synthesis: SpeechSynthesis | undefined): Speaker {
  if (synthesis === undefined) return { speak: async () => undefined, cancel: () => undefined };
  return {
    speak: (text, { rate, volume }) =>
      new Promise((resolve) => {
        if (synthesis.getVoices().length === 0) return resolve();
        const said = new SpeechSynthesisUtterance(text);
        Object.assign(said, { rate, volume, lang: 'en' });
        said.onend = said.onerror = () => resolve();
        setTimeout(resolve, LONGEST_MS);
        synthesis.speak(said);
      }),
    cancel: () => synthesis.cancel(),
  };
}
