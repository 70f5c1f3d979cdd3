import { chmod } from 'node:fs/promises';
import { isMainThread } from 'node:worker_threads';

/** Where others could read what lies in a data folder, they no longer can; what another user owns stays as it is. */
export async function ownOnly(folder: string, files: readonly string[] = []): Promise<void> {
  for (const [path, mode] of [[folder, 0o700] as const, ...files.map((f) => [f, 0o600] as const)])
    await chmod(path, mode).catch(() => undefined);
}

/** From now on what this program makes is for its own user alone: folders 0700, files 0600. */
export function makeForOwnUser(): void {
  if (isMainThread) process.umask(0o077);
}
