import { askAt, httpSource } from '../review/source.ts';

const BASE = '/api';

/** Asks the service; what it refuses comes as an Error with its sentence. */
export const ask = <T>(path: string, init: RequestInit = {}): Promise<T> =>
  askAt<T>(`${BASE}/${path}`, init);

export const sessionPath = (id: string): string => `sessions/${encodeURIComponent(id)}`;

/** The sessions of this computer. */
export const ownSessions = httpSource(BASE);
