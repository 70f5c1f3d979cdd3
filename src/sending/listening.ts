import { setTimeout as pause } from 'node:timers/promises';

export interface ListeningOptions {
  /** Somebody would see it now. */
  readonly wanted: () => boolean;
  /** Asks once and waits for the answer; throws where there is none. */
  readonly ask: (signal: AbortSignal) => Promise<void>;
  /** For tests. */
  readonly pausesMs?: Partial<typeof PAUSES_MS> | undefined;
}

/**
 * Choices, ms. `look`: how often it is looked whether somebody is there; `least`: from one question to the next;
 * `most`: a question without answer is given up; `failed`: then nothing is asked for so long.
 */
const PAUSES_MS = { look: 2000, least: 3000, most: 60_000, failed: 30_000 };

/** Asks again and again, one question at a time, as long as somebody is there. @returns ends it */
export function listening({ wanted, ask, pausesMs }: ListeningOptions): () => void {
  const { look, least, most, failed } = { ...PAUSES_MS, ...pausesMs };
  const end = new AbortController();
  const { signal } = end;
  let asking: AbortController | null = null;
  const wait = (ms: number): Promise<void> =>
    pause(ms, undefined, { signal, ref: false }).catch(() => undefined);
  const answered = async (): Promise<boolean> => {
    const question = (asking = new AbortController());
    const giveUp = setTimeout(() => question.abort(), most).unref();
    try {
      await ask(question.signal);
      return true;
    } catch {
      return false; // the rounds say why
    } finally {
      clearTimeout(giveUp);
    }
  };
  const go = async (): Promise<void> => {
    while (!signal.aborted) {
      if (!wanted()) await wait(look);
      else if (!(await Promise.all([answered(), wait(least)]))[0]) await wait(failed);
    }
  };
  void go();
  return () => {
    end.abort();
    asking?.abort();
  };
}
