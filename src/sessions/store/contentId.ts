import { createHash } from 'node:crypto';
import type { SessionFiles } from '../files/sessionFiles.ts';
import { openSession } from '../openSession.ts';

/**
 * Opens a session from elsewhere, reads it to its end and names it by its content: the same recording
 * gets the same id, whether from a folder or a zip. Results beside it do not count.
 * @throws SessionError where it is no sound recording.
 */
export async function contentId(path: string): Promise<string> {
  const session = await openSession(path);
  try {
    const iterator = session.inputs();
    for await (const batch of iterator) void batch;
    return await nameOfContent(session.files);
  } finally {
    await session.close();
  }
}

/** The same id of a session that is open, without reading what its rows say. @throws SessionError where it is damaged */
export async function nameOfContent(files: SessionFiles): Promise<string> {
  const hash = createHash('sha256');
  for (const name of files.names.filter((n) => n.startsWith('sub-'))) {
    hash.update(`${name}\n`);
    for await (const chunk of files.chunks(name)) hash.update(chunk);
  }
  return `i${hash.digest('hex').slice(0, 24)}`;
}
