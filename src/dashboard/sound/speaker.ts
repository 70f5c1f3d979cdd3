/** Something that can say a sentence. */
export interface Speaker {
  /** Settles when it has been said, was cut short or cannot be said. */
  speak(text: string, options: { readonly rate: number; readonly volume: number }): Promise<void>;
  cancel(): void;
}

/** A voice that never ends (some browsers forget to say so) is given up after this long, ms. */
const LONGEST_MS = 15_000;

type Voice = Pick<SpeechSynthesisVoice, 'lang' | 'localService' | 'default'>;

const speaks = ({ lang }: Voice, language: string): boolean =>
  lang.toLowerCase().split(/[-_]/)[0] === language;

/** A voice of the language, one on this computer before one that needs the network; `null` where there is none. */
export function voiceFor<V extends Voice>(voices: readonly V[], language: string): V | null {
  const fitting = voices.filter((voice) => speaks(voice, language));
  const here = fitting.filter((voice) => voice.localService);
  const best = here.length > 0 ? here : fitting;
  return best.find((voice) => voice.default) ?? best[0] ?? null;
}

/** The browser's own speech; silent where it has no voice of the language: a wrong one is not understood. */
export function browserSpeaker(synthesis: SpeechSynthesis | undefined, language: string): Speaker {
  if (synthesis === undefined) return { speak: async () => undefined, cancel: () => undefined };
  return {
    speak: (text, { rate, volume }) =>
      new Promise((resolve) => {
        const voice = voiceFor(synthesis.getVoices(), language);
        if (voice === null) return resolve();
        const said = new SpeechSynthesisUtterance(text);
        Object.assign(said, { rate, volume, voice, lang: voice.lang });
        said.onend = said.onerror = () => resolve();
        setTimeout(resolve, LONGEST_MS);
        synthesis.speak(said);
      }),
    cancel: () => synthesis.cancel(),
  };
}
