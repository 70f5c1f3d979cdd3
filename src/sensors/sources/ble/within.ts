import { LinkError, type LinkErrorCode } from './linkError.ts';

export const sleep = (ms: number): Promise<void> =>
  new Promise((resolve) => {
    setTimeout(resolve, ms);
  });

/**
 * The promise, or an error after `ms`, or the signal's reason: noble's promises need not settle at all.
 * A late rejection of the loser is swallowed.
 */
export function within<T>(
  promise: Promise<T>,
  ms: number,
  code: LinkErrorCode,
  signal?: AbortSignal,
): Promise<T> {
  return new Promise<T>((resolve, reject) => {
    const timer = setTimeout(() => settle(() => reject(new LinkError(code))), ms);
    const onAbort = (): void => settle(() => reject(signal?.reason as Error));
    const settle = (how: () => void): void => {
      clearTimeout(timer);
      signal?.removeEventListener('abort', onAbort);
      how();
    };
    if (signal?.aborted) onAbort();
    else signal?.addEventListener('abort', onAbort);
    promise.then(
      (value) => settle(() => resolve(value)),
      (error: unknown) => settle(() => reject(error as Error)),
    );
  });
}
