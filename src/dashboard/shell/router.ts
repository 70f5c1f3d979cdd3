import { useEffect, useState } from 'preact/hooks';
import type { Stage } from '../../streaming/contract.ts';
import { useFeed, useFeedPart } from '../feed/hooks.ts';
import { setPrefs } from './prefs.ts';

export const ROUTES = [
  'today',
  'ready',
  'practice',
  'after',
  'sessions',
  'progress',
  'plan',
  'coach',
  'sensors',
  'screen',
  'safety',
  'help',
] as const;
export type Route = (typeof ROUTES)[number];

/** Pages that can be gone to at any time. */
export const NAV: readonly Route[] = [
  'today',
  'practice',
  'sessions',
  'progress',
  'plan',
  'coach',
  'sensors',
  'safety',
];

/** What comes after a `?` belongs to the screen. */
const partsOf = (hash: string): string[] =>
  hash.replace(/^#\/?/, '').replace(/\?.*$/, '').split('/');

/** The screen that an address names; `null` where it names none. */
export function routeOf(hash: string): Route | null {
  const [name] = partsOf(hash);
  return ROUTES.find((route) => route === name) ?? null;
}

export const hrefOf = (route: Route): string => `#/${route}`;

/** Where a practice at that stage is to be seen. */
export function routeForStage(stage: Stage): Route {
  if (stage === 'idle') return 'today';
  if (stage === 'practice') return 'practice';
  if (stage === 'after' || stage === 'over') return 'after';
  return 'ready';
}

export function go(route: Route): void {
  location.hash = hrefOf(route);
}

function useHash(): string {
  const [hash, setHash] = useState(location.hash);
  useEffect(() => {
    const take = (): void => setHash(location.hash);
    addEventListener('hashchange', take);
    return () => removeEventListener('hashchange', take);
  }, []);
  return hash;
}

/** Screens of the practice itself: which of them is shown follows from how far it is. */
const FLOW: readonly Route[] = ['ready', 'practice', 'after'];

/** Nothing is under way: the page opens on the first screen. */
const AT_REST: readonly Stage[] = ['idle', 'over', 'stopped'];

/** The screen to show for an address while the practice is at `stage`; `null`: not known yet. */
export function screenFor(hash: string, stage: Stage | null): Route {
  const named = routeOf(hash);
  if (named !== null && !FLOW.includes(named)) return named;
  if (stage === null) return named ?? 'today';
  return named === null && AT_REST.includes(stage) ? 'today' : routeForStage(stage);
}

/** What stands behind the screen's name in the address: `#/sessions/<this>`. */
export const useRest = (): string => decoded(partsOf(useHash())[1] ?? '');

/** An address typed by hand may not be one: it then names nothing that is there. */
export function decoded(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}

export function useRoute(): Route {
  const stage = useFeedPart(({ view }) => view?.stage ?? null);
  return screenFor(useHash(), stage);
}

/** Goes along when the practice comes to another stage, or another practice begins; not into one that came instead of an interrupted one. */
export function useFollowStage(): void {
  const feed = useFeed();
  useEffect(() => {
    let before = feed.state().view;
    return feed.onMessage(({ view, interrupted }) => {
      const moved =
        before !== null &&
        view !== null &&
        (before.stage !== view.stage || before.practiceId !== view.practiceId);
      // From here on it is read from afar.
      if (before?.stage === 'address' && view?.stage === 'practice') setPrefs({ far: true });
      before = view;
      if (moved && view !== null) go(interrupted === null ? routeForStage(view.stage) : 'today');
    });
  }, [feed]);
}
