import type { RefObject } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';

/** Nearer than this, s, film and curves show the same moment: half a picture of a slow film. */
const SAME_S = 0.008;

interface Ends {
  readonly fromS: number;
  readonly toS: number;
}

/**
 * Ties a film to the cursor of the curves: whichever is moved, the other follows.
 * @param startS session s of the film's first picture; `null`: they run apart
 * @param ends what the curves show, session s
 * @returns whether the film shows the cursor's moment
 */
export function useFilm(
  video: RefObject<HTMLVideoElement | null>,
  startS: number | null,
  ends: Ends,
  cursorS: number,
  setCursorS: (sessionS: number) => void,
): boolean {
  const [lengthS, setLengthS] = useState<number | null>(null);
  const latest = useRef({ startS, ends, setCursorS });
  latest.current = { startS, ends, setCursorS };
  const filmS = startS === null ? null : cursorS - startS;
  const shown = filmS !== null && filmS >= 0 && (lengthS === null || filmS <= lengthS);

  useEffect(() => {
    const film = video.current;
    if (film === null || filmS === null || !shown || !film.paused) return;
    if (Math.abs(film.currentTime - filmS) > SAME_S) film.currentTime = filmS;
  }, [filmS, shown]);

  useEffect(() => {
    const film = video.current;
    if (film === null) return undefined;
    let frame = 0;
    const follow = (): void => {
      const { startS: start, ends: within, setCursorS: set } = latest.current;
      if (start === null) return;
      const sessionS = start + film.currentTime;
      if (sessionS >= within.fromS && sessionS <= within.toS) set(sessionS);
    };
    const run = (): void => {
      follow();
      frame = film.paused ? 0 : requestAnimationFrame(run);
    };
    const measure = (): void => setLengthS(Number.isFinite(film.duration) ? film.duration : null);
    film.addEventListener('loadedmetadata', measure);
    film.addEventListener('play', run);
    if (film.readyState > 0) measure();
    return () => {
      cancelAnimationFrame(frame);
      film.removeEventListener('loadedmetadata', measure);
      film.removeEventListener('play', run);
    };
  }, []);
  return shown;
}
