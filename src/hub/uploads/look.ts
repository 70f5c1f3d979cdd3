import { DEFAULT_PLAN, type Plan } from '../../coaching/plan.ts';
import { readPlan } from '../../sessions/derivatives.ts';
import { openSession } from '../../sessions/openSession.ts';
import { NO_NOTES, type PracticeNotes, readNotes } from '../../sessions/practiceNotes.ts';
import { nameOfContent } from '../../sessions/store/contentId.ts';

/** What a zip says of itself before it is analysed. */
export interface Looked {
  /** Names the recording by what it holds. */
  readonly content: string;
  readonly name: string;
  readonly hand: 'left' | 'right';
  readonly simulated: boolean;
  /** `null` where it does not say. */
  readonly startedMs: number | null;
  readonly plan: Plan;
  readonly notes: PracticeNotes;
}

/**
 * Opens a zip from elsewhere with all the limits of the format and checks each file of the recording to its end.
 * @throws SessionError in words where it is no sound session.
 */
export async function lookInto(zip: string): Promise<Looked> {
  const session = await openSession(zip);
  try {
    const { header, files } = session;
    const startedMs = header.startedAt === null ? NaN : new Date(header.startedAt).getTime();
    return {
      content: await nameOfContent(files),
      name: header.name || 'Practice',
      hand: header.hand,
      simulated: header.simulated,
      startedMs: Number.isFinite(startedMs) ? startedMs : null,
      plan: await readPlan(files).catch(() => DEFAULT_PLAN),
      notes: (await readNotes(files)) ?? NO_NOTES,
    };
  } finally {
    await session.close();
  }
}
