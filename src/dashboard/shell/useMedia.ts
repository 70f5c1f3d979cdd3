import { useEffect, useState } from 'preact/hooks';

/** Whether the window is as a media query says, now and after each change. */
export function useMedia(query: string): boolean {
  const [matches, setMatches] = useState(() => matchMedia(query).matches);
  useEffect(() => {
    const media = matchMedia(query);
    const take = (): void => setMatches(media.matches);
    take();
    media.addEventListener('change', take);
    return () => media.removeEventListener('change', take);
  }, [query]);
  return matches;
}
