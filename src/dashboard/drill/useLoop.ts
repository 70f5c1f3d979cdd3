import { useEffect, useState } from 'preact/hooks';
import { DRILL, SLOW } from './model.ts';

export interface Loop {
  /** s of the drill. */
  readonly timeS: number;
  readonly playing: boolean;
  readonly toggle: () => void;
}

/** The moment `stepS` of real time later: slower while the club falls, and from the beginning after the end. */
export function later(timeS: number, stepS: number): number {
  const slow = timeS >= SLOW.fromS && timeS < SLOW.toS;
  const next = timeS + (slow ? stepS / SLOW.times : stepS);
  return next >= DRILL.endS ? 0 : next;
}

/** No picture is farther from the last than this, s: a hidden page does not jump. */
const LONGEST_S = 0.1;

/** Plays the drill again and again until it is stopped. */
export function useLoop(moves: boolean): Loop {
  const [timeS, setTime] = useState(0);
  const [playing, setPlaying] = useState(moves);
  useEffect(() => {
    if (!playing || !moves) return undefined;
    let before: number | null = null;
    let frame = requestAnimationFrame(function draw(nowMs: number): void {
      const stepS = before === null ? 0 : Math.min(LONGEST_S, (nowMs - before) / 1000);
      before = nowMs;
      setTime((s) => later(s, stepS));
      frame = requestAnimationFrame(draw);
    });
    return () => cancelAnimationFrame(frame);
  }, [playing, moves]);
  return { timeS, playing, toggle: () => setPlaying(!playing) };
}
