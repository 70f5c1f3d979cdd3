import type { Door } from './door.ts';

/** `ended`: it was let in before. */
export type Place = 'looking' | 'outside' | 'ended' | 'inside';

/** Where the screen stands after it asked. A laptop that does not answer says nothing of that. */
export function nextPlace(place: Place, door: Door): Place {
  if (door === 'open') return 'inside';
  if (door === 'none') return place;
  return place === 'inside' || place === 'ended' ? 'ended' : 'outside';
}
