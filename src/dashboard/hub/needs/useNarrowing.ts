import { useState } from 'preact/hooks';
import { NEED_CODES } from '../../../coaching/attention.ts';
import type { Narrowing } from './order.ts';

function fromAddress(hash: string): Narrowing {
  const asked = new URLSearchParams(hash.split('?')[1] ?? '');
  const need = NEED_CODES.find((code) => code === asked.get('need')) ?? null;
  return { need, name: asked.get('name') ?? '' };
}

function addressOf({ need, name }: Narrowing): string {
  const query = new URLSearchParams({
    ...(need !== null && { need }),
    ...(name !== '' && { name }),
  });
  return `${location.hash.split('?')[0] || '#/'}${query.size === 0 ? '' : `?${query}`}`;
}

/** What the list is narrowed to; it stands in the address, so that going back shows the same. */
export function useNarrowing(): readonly [Narrowing, (by: Narrowing) => void] {
  const [by, setBy] = useState(() => fromAddress(location.hash));
  const set = (next: Narrowing): void => {
    history.replaceState(null, '', addressOf(next));
    setBy(next);
  };
  return [by, set];
}
