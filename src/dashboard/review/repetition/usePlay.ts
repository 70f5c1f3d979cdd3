import { useEffect, useRef, useState } from 'preact/hooks';
import { type RepetitionEvent, eventAfter } from './events.ts';

export const SPEEDS = { quarter: 0.25, half: 0.5, whole: 1 } as const;
export type SpeedName = keyof typeof SPEEDS;

interface Span {
  readonly fromS: number;
  readonly toS: number;
}

/** Time at each moment where motion is to be reduced. */
const MOMENT_MS = 1200;

export const lessMotion = (): boolean => matchMedia('(prefers-reduced-motion: reduce)').matches;

export interface Play {
  readonly playing: boolean;
  readonly toggle: () => void;
  readonly speed: SpeedName;
  readonly setSpeed: (speed: SpeedName) => void;
}

/** Moves the cursor through the span and stops at its end; from event to event where motion is to be reduced. */
export function usePlay(
  span: Span,
  events: readonly RepetitionEvent[],
  cursorS: number,
  setCursorS: (sessionS: number) => void,
): Play {
  const [playing, setPlaying] = useState(false);
  const [speed, setSpeed] = useState<SpeedName>('quarter');
  const now = useRef({ cursorS, setCursorS });
  now.current = { cursorS, setCursorS };
  useEffect(() => setPlaying(false), [span.fromS, span.toS]);
  useEffect(() => {
    if (!playing) return undefined;
    const stop = (): void => setPlaying(false);
    const move = (sessionS: number): void => now.current.setCursorS(sessionS);
    const at = (): number => now.current.cursorS;
    return lessMotion()
      ? playMoments(events, at, move, stop)
      : playFrames(span.toS, SPEEDS[speed], at, move, stop);
  }, [playing, speed, span.toS, events]);
  const toggle = (): void => {
    if (!playing && cursorS >= span.toS - 0.01) setCursorS(span.fromS);
    setPlaying(!playing);
  };
  return { playing, toggle, speed, setSpeed };
}

function playFrames(
  toS: number,
  times: number,
  at: () => number,
  move: (sessionS: number) => void,
  stop: () => void,
): () => void {
  let before: number | null = null;
  let frame = requestAnimationFrame(function draw(nowMs: number): void {
    const next = at() + (before === null ? 0 : (times * (nowMs - before)) / 1000);
    before = nowMs;
    move(Math.min(next, toS));
    if (next >= toS) stop();
    else frame = requestAnimationFrame(draw);
  });
  return () => cancelAnimationFrame(frame);
}

function playMoments(
  events: readonly RepetitionEvent[],
  at: () => number,
  move: (sessionS: number) => void,
  stop: () => void,
): () => void {
  const timer = setInterval(() => {
    const next = eventAfter(events, at());
    if (next === undefined || next.timeS <= at()) stop();
    else move(next.timeS);
  }, MOMENT_MS);
  return () => clearInterval(timer);
}
