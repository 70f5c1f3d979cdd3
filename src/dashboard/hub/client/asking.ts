import { h } from '../../strings/hub.ts';
import { RefusedAnswer, answerIn, reach } from '../../review/source.ts';

export const API = '/api';

/** Asks the hub. What it refuses comes as a RefusedAnswer with its sentence. */
export interface Asking {
  /** An answer that is the same as the last one is the very same object. */
  get<T>(path: string): Promise<T>;
  send<T>(method: Changing, path: string, body?: unknown): Promise<T>;
  /** The bytes of a file. */
  upload<T>(path: string, file: Blob, type?: string): Promise<T>;
  /** What every change must carry; given by the hub on signing in. */
  useToken(csrf: string): void;
}

interface Kept {
  readonly etag: string;
  readonly data: unknown;
}

/** Answers that are kept to be told unchanged. */
const MOST_KEPT = 20;

function keep(kept: Map<string, Kept>, path: string, one: Kept): void {
  kept.delete(path);
  kept.set(path, one);
  for (const oldest of kept.keys()) if (kept.size > MOST_KEPT) kept.delete(oldest);
}

export type Changing = 'POST' | 'PUT' | 'PATCH' | 'DELETE';

/** @param signedOut is told when the hub no longer knows who asks */
export function asking(signedOut: () => void): Asking {
  let token = '';
  const kept = new Map<string, Kept>();
  const ask = async <T>(path: string, init: RequestInit): Promise<T> => {
    try {
      const response = await reach(`${API}/${path}`, init);
      if (response.status === 304) return kept.get(path)?.data as T;
      const data = await answerIn<T>(response);
      const etag = init.method === undefined ? response.headers.get('etag') : null;
      if (etag !== null) keep(kept, path, { etag, data });
      return data;
    } catch (error) {
      if (error instanceof RefusedAnswer && error.status === 401) signedOut();
      throw error instanceof RefusedAnswer ? error : new Error(h.shell.unreachable);
    }
  };
  const changing = (type?: string): Record<string, string> => ({
    'x-csrf-token': token,
    ...(type !== undefined && { 'content-type': type }),
  });
  return {
    get: (path) => {
      const etag = kept.get(path)?.etag;
      return ask(path, etag === undefined ? {} : { headers: { 'if-none-match': etag } });
    },
    send: (method, path, body) =>
      body === undefined
        ? ask(path, { method, headers: changing() })
        : ask(path, {
            method,
            headers: changing('application/json'),
            body: JSON.stringify(body),
          }),
    upload: (path, file, type = file.type) =>
      ask(path, { method: 'POST', headers: changing(type), body: file }),
    useToken: (csrf) => {
      token = csrf;
    },
  };
}

/** A part of an address, whatever stands in it. */
export const part = (text: string): string => encodeURIComponent(text);
