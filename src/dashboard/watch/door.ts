import type { ApiError } from '../../streaming/sessionsContract.ts';
import type { PairRefusal } from '../../streaming/secondScreenContract.ts';

/** `none`: the laptop does not answer. */
export type Door = 'open' | 'closed' | 'none';

const PAIR = '/pair';
const LONGEST_MS = 4000;

/** Is this screen let in? */
export async function askDoor(): Promise<Door> {
  try {
    const { status } = await fetch(PAIR, { signal: AbortSignal.timeout(LONGEST_MS) });
    if (status === 204) return 'open';
    return status === 401 ? 'closed' : 'none';
  } catch {
    return 'none';
  }
}

/** Tries a code. @returns why not; `null` where it was the right one */
export async function tryCode(code: string): Promise<PairRefusal | 'unreachable' | null> {
  try {
    const response = await fetch(PAIR, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ code }),
      signal: AbortSignal.timeout(LONGEST_MS),
    });
    if (response.ok) return null;
    const { error } = (await response.json()) as ApiError;
    return error.code === 'no-code' ? 'no-code' : 'wrong-code';
  } catch {
    return 'unreachable';
  }
}
