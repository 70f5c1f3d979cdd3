import { useCallback, useRef } from 'preact/hooks';
import type { RepetitionCurves } from '../../../streaming/sessionsContract.ts';
import type { ReviewSource } from '../source.ts';

export type CurvesOf = (index: number) => Promise<RepetitionCurves>;

/** Asks for a repetition's curves once; one that was refused is asked for again. */
export function useCurves(source: ReviewSource, id: string): CurvesOf {
  const known = useRef(new Map<number, Promise<RepetitionCurves>>());
  const of = useRef({ source, id });
  if (of.current.source !== source || of.current.id !== id) {
    of.current = { source, id };
    known.current = new Map();
  }
  return useCallback(
    (index) => {
      const asked = known.current.get(index) ?? source.curves(id, index);
      known.current.set(index, asked);
      asked.catch(() => known.current.delete(index));
      return asked;
    },
    [source, id],
  );
}
