import { unpackSession } from '../files/unpack.ts';
import { type Failed, errorOf } from '../threads/failed.ts';
import { jobThread } from '../threads/jobThread.ts';
import { startThread } from '../threads/startThread.ts';
import { contentId } from './contentId.ts';
import { type Found, type Unindexed, look } from './indexing.ts';

/** What takes long with a session: reading it whole. */
export interface SessionReading {
  /** The id of a recording from elsewhere. @throws SessionError where it is no sound recording. */
  nameOf(path: string): Promise<string>;
  /** Copies the recording at `path` to the session's new folder and looks at it there. */
  takeIn(path: string, session: Unindexed): Promise<Found>;
  /** Reads a session's folder and analyses it where no result is kept. Nothing is written. */
  look(session: Unindexed): Promise<Found>;
  close(): Promise<void>;
}

export const readHere: SessionReading = {
  nameOf: contentId,
  async takeIn(path, session) {
    await unpackSession(path, session.folder);
    return look(session);
  },
  look,
  close: () => Promise.resolve(),
};

export type ReadingJob =
  | { readonly do: 'nameOf'; readonly path: string }
  | { readonly do: 'takeIn'; readonly path: string; readonly session: Unindexed }
  | { readonly do: 'look'; readonly session: Unindexed };

export type ReadingAnswer = { readonly ok: true; readonly done: string | Found } | Failed;

/** Reads in a thread of its own, one thing after the other: a practice and the pages do not wait. */
export function readingThread(
  start = () => startThread('readingWorker', import.meta.url),
): SessionReading {
  const thread = jobThread<ReadingJob, ReadingAnswer>({
    start,
    gone: (message) => ({ ok: false, code: null, message }),
  });
  const ask = async (job: ReadingJob): Promise<string | Found> => {
    const answer = await thread.run(job);
    if (answer.ok) return answer.done;
    throw errorOf(answer);
  };
  return {
    nameOf: async (path) => (await ask({ do: 'nameOf', path })) as string,
    takeIn: async (path, session) => (await ask({ do: 'takeIn', path, session })) as Found,
    look: async (session) => (await ask({ do: 'look', session })) as Found,
    close: () => thread.close(),
  };
}
