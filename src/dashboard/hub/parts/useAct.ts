import { useState } from 'preact/hooks';
import { h } from '../../strings/hub.ts';
import { RefusedAnswer } from '../../review/source.ts';

/** Why something could not be done, in one sentence. */
export const sentenceOf = (error: unknown): string =>
  error instanceof RefusedAnswer ? error.message : h.shell.unreachable;

export interface Act {
  readonly busy: boolean;
  readonly problem: string | null;
  /** Does one thing at a time; true where it was done. */
  /** Of the last problem, where something else is tried. */
  readonly forget: () => void;
  readonly run: (what: () => Promise<unknown>) => Promise<boolean>;
}

/** Something that the person asks the hub to do. */
export function useAct(): Act {
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  const run = async (what: () => Promise<unknown>): Promise<boolean> => {
    if (busy) return false;
    setBusy(true);
    setProblem(null);
    try {
      await what();
      return true;
    } catch (error) {
      setProblem(sentenceOf(error));
      return false;
    } finally {
      setBusy(false);
    }
  };
  return { busy, problem, run, forget: () => setProblem(null) };
}
