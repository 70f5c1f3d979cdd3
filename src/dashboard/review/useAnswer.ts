import { useCallback, useEffect, useRef, useState } from 'preact/hooks';

export interface Answer<T> {
  readonly data: T | null;
  /** Why there is nothing, one sentence. */
  readonly problem: string | null;
  readonly again: () => void;
  /** Asks again; where that fails, what is there stays. */
  readonly quietly: () => void;
}

interface Known<T> {
  /** The question that was answered: another one's answer is none. */
  readonly of: unknown;
  readonly data: T | null;
  readonly problem: string | null;
}

/** Asks when `question` changes (keep it in useCallback), and on `again`; a late answer to an older question is dropped. */
export function useAnswer<T>(question: () => Promise<T>): Answer<T> {
  const [known, setKnown] = useState<Known<T>>({ of: question, data: null, problem: null });
  const [round, setRound] = useState({ quiet: false });
  const latest = useRef(known);
  latest.current = known;
  useEffect(() => {
    let wanted = true;
    const take = (data: T | null, problem: string | null): void => {
      const { of, data: there } = latest.current;
      const kept = of === question && there !== null && (there === data || round.quiet);
      if (!wanted || (kept && (problem !== null || there === data))) return;
      setKnown({ of: question, data, problem });
    };
    question().then(
      (data) => take(data, null),
      (error: unknown) => take(null, error instanceof Error ? error.message : String(error)),
    );
    return () => {
      wanted = false;
    };
  }, [question, round]);
  const again = useCallback(() => setRound({ quiet: false }), []);
  const quietly = useCallback(() => setRound({ quiet: true }), []);
  const { data, problem } = known.of === question ? known : { data: null, problem: null };
  return { data, problem, again, quietly };
}
