import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type { Me } from '../../../streaming/hubContract/people.ts';
import type { HubClient } from '../client/client.ts';

/** What every page of somebody who is signed in has at hand. */
export interface SignedIn {
  readonly client: HubClient;
  readonly me: Me;
  /** Forgets who it was; the sign-in page follows. */
  readonly leave: () => void;
}

export const HubContext = createContext<SignedIn | null>(null);

export function useHub(): SignedIn {
  const hub = useContext(HubContext);
  if (hub === null) throw new Error('This page is for somebody who is signed in');
  return hub;
}
