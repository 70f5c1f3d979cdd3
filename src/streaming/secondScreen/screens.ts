import { randomUUID } from 'node:crypto';
import { hashOf, newToken } from '../secrets.ts';

interface Screen {
  readonly id: string;
  readonly address: string;
  readonly pairedMs: number;
}

/** The screens that were let in, for as long as the listener lives; of a token only its hash is kept. */
export interface Screens {
  /** @returns the token that lets it in from now on */
  add(address: string, nowMs: number): string;
  /** The screen that a token belongs to; `null` where it lets nobody in. */
  idOf(token: string | undefined): string | null;
  all(): readonly Screen[];
  remove(id: string): boolean;
}

export function newScreens(): Screens {
  const byHash = new Map<string, Screen>();
  return {
    add: (address, nowMs) => {
      const token = newToken();
      byHash.set(hashOf(token), { id: randomUUID(), address, pairedMs: nowMs });
      return token;
    },
    idOf: (token) => (token === undefined ? null : (byHash.get(hashOf(token))?.id ?? null)),
    all: () => [...byHash.values()],
    remove: (id) => [...byHash].some(([hash, screen]) => screen.id === id && byHash.delete(hash)),
  };
}
