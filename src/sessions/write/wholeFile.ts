import { mkdir, open, rename, rm } from 'node:fs/promises';
import { dirname } from 'node:path';

/** Replaces a small file as a whole: after a crash the old or the new one stands there, never a part. */
export async function writeWhole(path: string, text: string | Uint8Array): Promise<void> {
  await mkdir(dirname(path), { recursive: true });
  const part = `${path}.part`;
  try {
    const file = await open(part, 'w');
    try {
      await file.writeFile(text);
      await file.datasync();
    } finally {
      await file.close();
    }
    await rename(part, path);
  } catch (error) {
    await rm(part, { force: true }).catch(() => undefined);
    throw error;
  }
}

export const writeJson = (path: string, value: unknown): Promise<void> =>
  writeWhole(path, `${JSON.stringify(value, null, 2)}\n`);
