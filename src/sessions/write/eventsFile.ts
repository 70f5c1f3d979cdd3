import { open, readFile, readdir } from 'node:fs/promises';
import { join } from 'node:path';
import type { SessionEvent } from '../../sensors/sessionEvent.ts';
import { TASK } from '../header.ts';
import { SessionError } from '../sessionError.ts';
import { diskWords } from './disk.ts';

/** One event as a row of the table. */
export const eventRow = (event: SessionEvent): string =>
  `${event.onsetS.toFixed(6)}\t${event.durationS.toFixed(6)}\t${event.type}\t${event.value ?? 'n/a'}\t${event.signs?.join(',') ?? 'n/a'}\n`;

/**
 * Adds an event to a recording that has been closed.
 * @throws SessionError `write-failed` where the disk refuses.
 */
export async function appendEvent(folder: string, event: SessionEvent): Promise<void> {
  try {
    const file = await open(await eventsFile(folder), 'a');
    try {
      await file.writeFile(eventRow(event));
      await file.datasync();
    } finally {
      await file.close();
    }
  } catch (error) {
    throw new SessionError('write-failed', diskWords(error));
  }
}

/** How many events a recording's table has; 0 where there is none. */
export async function countEvents(folder: string): Promise<number> {
  const text = await eventsFile(folder)
    .then((path) => readFile(path, 'utf8'))
    .catch(() => '');
  return Math.max(0, text.split('\n').filter((line) => line.trim() !== '').length - 1);
}

async function eventsFile(folder: string): Promise<string> {
  const names = await readdir(folder, { recursive: true });
  const name = names.find((n) => n.startsWith('sub-') && n.endsWith(`_task-${TASK}_events.tsv`));
  if (name === undefined) throw Object.assign(new Error(), { code: 'ENOENT' });
  return join(folder, name);
}
