import { RefusedAnswer, askAt } from '../../review/source.ts';

export const API = '/api';

/** Asks the hub. What it refuses comes as a RefusedAnswer with its sentence. */
export interface Asking {
  get<T>(path: string): Promise<T>;
  send<T>(method: Changing, path: string, body?: unknown): Promise<T>;
  /** The bytes of a file. */
  upload<T>(path: string, file: Blob, type?: string): Promise<T>;
  /** What every change must carry; given by the hub on signing in. */
  useToken(csrf: string): void;
}

export type Changing = 'POST' | 'PUT' | 'PATCH' | 'DELETE';

/** @param signedOut is told when the hub no longer knows who asks */
export function asking(signedOut: () => void): Asking {
  let token = '';
  const ask = async <T>(path: string, init: RequestInit): Promise<T> => {
    try {
      return await askAt<T>(`${API}/${path}`, init);
    } catch (error) {
      if (error instanceof RefusedAnswer && error.status === 401) signedOut();
      throw error;
    }
  };
  const changing = (type?: string): Record<string, string> => ({
    'x-csrf-token': token,
    ...(type !== undefined && { 'content-type': type }),
  });
  return {
    get: (path) => ask(path, {}),
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
