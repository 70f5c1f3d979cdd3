export interface Spoken {
  spoken: { readonly text: string; readonly lang: string }[];
}

/** A computer with an English and a German voice that says everything at once. */
export function stubVoices(): void {
  const page = globalThis as unknown as Spoken;
  page.spoken = [];
  const voice = (lang: string) => ({ lang, localService: true, default: lang === 'en-US' });
  class Utterance {
    lang = '';
    onend: (() => void) | null = null;
    readonly text: string;
    constructor(text: string) {
      this.text = text;
    }
  }
  const speak = ({ text, lang, onend }: Utterance): void => {
    page.spoken.push({ text, lang });
    setTimeout(() => onend?.(), 0);
  };
  const synthesis = Object.assign(new EventTarget(), {
    getVoices: () => [voice('en-US'), voice('de-DE')],
    speak,
    cancel: () => undefined,
  });
  Object.defineProperty(globalThis, 'speechSynthesis', { value: synthesis });
  Object.defineProperty(globalThis, 'SpeechSynthesisUtterance', { value: Utterance });
}
