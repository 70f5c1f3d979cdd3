import type { ApiError } from '../../streaming/sessionsContract.ts';

/** Asks the service; what it refuses comes as an Error with its sentence. */
export async function ask<T>(path: string, init: RequestInit = {}): Promise<T> {
  const response = await fetch(`/api/${path}`, init);
  const body: unknown = response.status === 204 ? null : await response.json().catch(() => null);
  if (!response.ok) throw new Error(sentenceOf(body) ?? `${response.status}`);
  return body as T;
}

function sentenceOf(body: unknown): string | null {
  const message = (body as Partial<ApiError> | null)?.error?.message;
  return typeof message === 'string' ? message : null;
}

export const sessionPath = (id: string): string => `sessions/${encodeURIComponent(id)}`;
