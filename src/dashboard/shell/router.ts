import { useEffect, useState } from 'preact/hooks';

export const ROUTES = ['practice', 'sensors', 'safety'] as const;
export type Route = (typeof ROUTES)[number];

/** The screen that an address names; the first one where it names none. */
export function routeOf(hash: string): Route {
  const name = hash.replace(/^#\/?/, '');
  return ROUTES.find((route) => route === name) ?? ROUTES[0];
}

export const hrefOf = (route: Route): string => `#/${route}`;

export function useRoute(): Route {
  const [route, setRoute] = useState(routeOf(location.hash));
  useEffect(() => {
    const take = (): void => setRoute(routeOf(location.hash));
    addEventListener('hashchange', take);
    return () => removeEventListener('hashchange', take);
  }, []);
  return route;
}
