import { useCallback, useEffect, useRef, useState } from 'preact/hooks';
import { RefusedAnswer } from './source.ts';

export interface Answer<T> {
  readonly data: T | null;
  /** Why there is nothing, one sentence. */
  readonly problem: string | null;
  /** The service knows nothing of it: asking again is of no use. */
  readonly missing: boolean;
  readonly again: () => void;
  /** Asks again; where that fails, what is there stays. */
  readonly quietly: () => void;
}

interface Known<T> {
  /** The question that was answered: another one's answer is none. */
  readonly of: unknown;
  readonly data: T | null;
  readonly problem: string | null;
  readonly missing: boolean;
}

const NOTHING = { data: null, problem: null, missing: false };

const isMissing = (error: unknown): boolean =>
  error instanceof RefusedAnswer && error.status === 404;

/** Asks when `question` changes (keep it in useCallback), and on `again`; a late answer to an older question is dropped. */
export function useAnswer<T>(question: () => Promise<T>): Answer<T> {
  const [known, setKnown] = useState<Known<T>>({ of: question, ...NOTHING });
  const [round, setRound] = useState({ quiet: false });
  const latest = useRef(known);
  latest.current = known;
  useEffect(() => {
    let wanted = true;
    const take = (data: T | null, problem: string | null, missing = false): void => {
      const { of, data: there } = latest.current;
      const kept = of === question && there !== null && (there === data || round.quiet);
      if (!wanted || (kept && (problem !== null || there === data))) return;
      setKnown({ of: question, data, problem, missing });
    };
    question().then(
      (data) => take(data, null),
      (error: unknown) =>
        take(null, error instanceof Error ? error.message : String(error), isMissing(error)),
    );
    return () => {
      wanted = false;
    };
  }, [question, round]);
  const again = useCallback(() => setRound({ quiet: false }), []);
  const quietly = useCallback(() => setRound({ quiet: true }), []);
  const { data, problem, missing } = known.of === question ? known : NOTHING;
  return { data, problem, missing, again, quietly };
}
