import { useCallback, useEffect, useState } from 'preact/hooks';

export interface Answer<T> {
  readonly data: T | null;
  /** Why there is nothing, one sentence. */
  readonly problem: string | null;
  readonly again: () => void;
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
  const [round, setRound] = useState(0);
  useEffect(() => {
    let wanted = true;
    const take = (data: T | null, problem: string | null): void => {
      if (wanted) setKnown({ of: question, data, problem });
    };
    question().then(
      (data) => take(data, null),
      (error: unknown) => take(null, error instanceof Error ? error.message : String(error)),
    );
    return () => {
      wanted = false;
    };
  }, [question, round]);
  const again = useCallback(() => setRound((n) => n + 1), []);
  const { data, problem } = known.of === question ? known : { data: null, problem: null };
  return { data, problem, again };
}
