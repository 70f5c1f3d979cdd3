import { type FileHandle, open } from 'node:fs/promises';

/** A file that only grows. What could not be written is kept and tried again from the very byte. */
export interface AppendFile {
  append(bytes: Uint8Array): void;
  /** Writes what waits and syncs it to the disk. @throws the error of the disk; nothing is lost. */
  flush(): Promise<void>;
  /** Bytes not yet on the disk. */
  waiting(): number;
  close(): Promise<void>;
}

/** @throws where the file exists already or cannot be made. */
export async function createAppendFile(path: string): Promise<AppendFile> {
  const file = await open(path, 'wx');
  const queue: Uint8Array[] = [];
  let position = 0;
  let unsynced = 0;
  return {
    append: (bytes) => void queue.push(bytes),
    waiting: () => queue.reduce((sum, bytes) => sum + bytes.length, unsynced),
    async flush() {
      if (queue.length === 0 && unsynced === 0) return;
      const merged = Buffer.concat(queue.splice(0));
      let done = 0;
      try {
        while (done < merged.length) {
          const count = await writeSome(file, merged.subarray(done), position);
          done += count;
          position += count;
          unsynced += count;
        }
      } finally {
        if (done < merged.length) queue.unshift(merged.subarray(done));
      }
      await file.datasync();
      unsynced = 0;
    },
    close: () => file.close(),
  };
}

async function writeSome(file: FileHandle, bytes: Uint8Array, position: number): Promise<number> {
  const { bytesWritten } = await file.write(bytes, 0, bytes.length, position);
  if (bytesWritten > 0) return bytesWritten;
  throw Object.assign(new Error('the disk took no data'), { code: 'ENOSPC' });
}
