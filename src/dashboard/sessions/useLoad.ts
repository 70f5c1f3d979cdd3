import { useCallback, useEffect, useState } from 'preact/hooks';
import { ask } from './api.ts';

export interface Load<T> {
  readonly data: T | null;
  /** Why there is nothing, one sentence. */
  readonly problem: string | null;
  readonly again: () => void;
}

/** Something of the service's, loaded when `path` changes or on `again`. */
export function useLoad<T>(path: string): Load<T> {
  const [state, setState] = useState<Omit<Load<T>, 'again'>>({ data: null, problem: null });
  const again = useCallback(() => {
    ask<T>(path).then(
      (data) => setState({ data, problem: null }),
      (error: Error) => setState({ data: null, problem: error.message }),
    );
  }, [path]);
  useEffect(again, [again]);
  return { ...state, again };
}
