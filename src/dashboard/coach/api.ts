import { useEffect, useState } from 'preact/hooks';
import type { CoachLink } from '../../streaming/hubContract/coachLink.ts';
import { askAt } from '../review/source.ts';

const BASE = '/api/coach';
/** While something is under way, and else, ms. */
const SOON_MS = 1500;
const LATER_MS = 15_000;

export const coachLink = (): Promise<CoachLink> => askAt<CoachLink>(BASE);

export const post = (path: string, body: object = {}): Promise<CoachLink> =>
  askAt<CoachLink>(`${BASE}/${path}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  });

export const disconnect = (): Promise<CoachLink> => askAt<CoachLink>(BASE, { method: 'DELETE' });

const isBusy = (link: CoachLink): boolean =>
  link.outbox.length > 0 ||
  link.sessions.some(({ state }) => state === 'sending' || state === 'waiting');

export interface Coach {
  readonly link: CoachLink | null;
  readonly problem: string | null;
  /** Does something and shows how it stands then; `true` where it was done. */
  readonly act: (work: () => Promise<CoachLink>) => Promise<boolean>;
}

const wordsOf = (error: unknown): string =>
  error instanceof Error ? error.message : String(error);

/** How the connection stands, asked again while the page is open. */
export function useCoach(): Coach {
  const [link, setLink] = useState<CoachLink | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | null = null;
    let open = true;
    const look = (): void => {
      coachLink()
        .then((next) => {
          if (open) setLink(next);
          return isBusy(next) ? SOON_MS : LATER_MS;
        })
        .catch(() => LATER_MS)
        .then((waitMs) => {
          if (open) timer = setTimeout(look, waitMs);
        });
    };
    look();
    return () => {
      open = false;
      if (timer !== null) clearTimeout(timer);
    };
  }, []);
  const act = async (work: () => Promise<CoachLink>): Promise<boolean> => {
    try {
      setLink(await work());
      setProblem(null);
      return true;
    } catch (error) {
      setProblem(wordsOf(error));
      return false;
    }
  };
  return { link, problem, act };
}
