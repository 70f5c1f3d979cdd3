/** The same moment in a film and in the session. */
export interface Pair {
  /** From the film's first picture, s. */
  readonly clipS: number;
  readonly sessionS: number;
}

export interface LineUp {
  /** Session s of the film's first picture. */
  readonly startS: number;
  /** How far the pairs lie apart, ms; 0 for one. */
  readonly spreadMs: number;
}

/** A spread above this is more than a picture or two: probably another moment was taken. A choice. */
export const WIDE_SPREAD_MS = 100;

/** Lines a film up by the mean of the pairs; `null` without one. Film and session clock are taken to run equally fast. */
export function lineUp(pairs: readonly Pair[]): LineUp | null {
  if (pairs.length === 0) return null;
  const starts = pairs.map(({ clipS, sessionS }) => sessionS - clipS);
  const startS = starts.reduce((sum, s) => sum + s, 0) / starts.length;
  const spreadMs = (Math.max(...starts) - Math.min(...starts)) * 1000;
  return { startS, spreadMs };
}

/** Marks in the film and in the curves, taken in the same order. */
export const pairsOf = (film: readonly number[], curves: readonly number[]): readonly Pair[] =>
  film.flatMap((clipS, i) => {
    const sessionS = curves[i];
    return sessionS === undefined ? [] : [{ clipS, sessionS }];
  });
