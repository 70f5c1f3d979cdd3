import { useEffect, useRef, useState } from 'preact/hooks';
import { type Answer, useAnswer } from '../../review/useAnswer.ts';

/** How often a page that is seen asks whether something changed, ms. A choice. */
export const EVERY_MS = 15_000;

/** An answer that is asked for again while the page is seen; where that fails, what is there stays. */
export function useLive<T>(
  question: () => Promise<T>,
  everyMs: (data: T | null) => number = () => EVERY_MS,
): Answer<T> {
  const answer = useAnswer(question);
  const { quietly, data } = answer;
  const ms = everyMs(data);
  useEffect(() => {
    const look = (): void => {
      if (document.visibilityState === 'visible') quietly();
    };
    const timer = setInterval(look, ms);
    document.addEventListener('visibilitychange', look);
    return () => {
      clearInterval(timer);
      document.removeEventListener('visibilitychange', look);
    };
  }, [quietly, ms]);
  return answer;
}

/** Hands count as on the page for so long after a key or a pointer, ms. A choice. */
const HANDS_MS = 5000;
const SIGNS = ['keydown', 'pointerdown', 'pointermove', 'wheel', 'touchmove'] as const;

function useHands(): { readonly current: number } {
  const last = useRef(0);
  useEffect(() => {
    const note = (): void => {
      last.current = Date.now();
    };
    for (const sign of SIGNS) addEventListener(sign, note, { passive: true });
    return () => {
      for (const sign of SIGNS) removeEventListener(sign, note);
    };
  }, []);
  return last;
}

interface Settled<T> {
  readonly shown: T;
  /** Something newer waits. */
  readonly waiting: boolean;
  readonly show: () => void;
}

/** What is shown: something newer waits until the hands are off, so that nothing moves under them. */
export function useSettled<T>(latest: T): Settled<T> {
  const [shown, setShown] = useState(latest);
  const hands = useHands();
  const waiting = shown !== latest;
  useEffect(() => {
    if (!waiting) return undefined;
    const settle = (): void => {
      if (Date.now() - hands.current >= HANDS_MS) setShown(latest);
    };
    settle();
    const timer = setInterval(settle, 500);
    return () => clearInterval(timer);
  }, [waiting, latest]);
  return { shown, waiting, show: () => setShown(latest) };
}

/** What is new since it was last looked at, in words to be read out; empty at first. */
export function useNews<T>(value: T | null, tell: (before: T, now: T) => string): string {
  const before = useRef(value);
  const [text, setText] = useState('');
  useEffect(() => {
    if (before.current !== null && value !== null && before.current !== value) {
      const news = tell(before.current, value);
      if (news !== '') setText(news);
    }
    before.current = value ?? before.current;
  }, [value]);
  return text;
}
