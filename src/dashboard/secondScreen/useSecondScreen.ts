import { useEffect, useState } from 'preact/hooks';
import type { SecondScreenView } from '../../streaming/secondScreenContract.ts';
import { RefusedAnswer, askAt } from '../review/source.ts';

const BASE = '/api/second-screen';
/** Screens come and codes run out while one looks, ms. */
const EVERY_MS = 1000;

const ask = (path: string, method: string, body?: object): Promise<SecondScreenView> =>
  askAt<SecondScreenView>(`${BASE}${path}`, {
    method,
    ...(body && {
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(body),
    }),
  });

export const secondScreenAsk = {
  look: () => ask('', 'GET'),
  on: (address: string) => ask('/on', 'POST', { address }),
  off: () => ask('/off', 'POST'),
  code: () => ask('/code', 'POST'),
  end: (id: string) => ask(`/screens/${encodeURIComponent(id)}`, 'DELETE'),
  endAll: () => ask('/screens', 'DELETE'),
};

export interface SecondScreenState {
  /** `null`: not known yet. `'none'`: this service has none. */
  readonly view: SecondScreenView | 'none' | null;
  readonly problem: string | null;
  /** Does something and shows how it stands then. */
  readonly act: (work: () => Promise<SecondScreenView>) => void;
}

const wordsOf = (error: unknown): string =>
  error instanceof Error ? error.message : String(error);

/** How the second screen stands, asked again while the page is open. */
export function useSecondScreen(): SecondScreenState {
  const [view, setView] = useState<SecondScreenState['view']>(null);
  const [problem, setProblem] = useState<string | null>(null);
  useEffect(() => {
    let open = true;
    const look = (): void =>
      void secondScreenAsk.look().then(
        (next) => open && setView(next),
        (error: unknown) =>
          open && error instanceof RefusedAnswer && error.status === 404 && setView('none'),
      );
    look();
    const timer = setInterval(look, EVERY_MS);
    return () => {
      open = false;
      clearInterval(timer);
    };
  }, []);
  const act = (work: () => Promise<SecondScreenView>): void =>
    void work().then(
      (next) => {
        setView(next);
        setProblem(null);
      },
      (error: unknown) => setProblem(wordsOf(error)),
    );
  return { view, problem, act };
}
