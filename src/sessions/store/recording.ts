import { join } from 'node:path';
import type { Kysely } from 'kysely';
import type { AnalysisResult } from '../../analysis/result.ts';
import type { Plan } from '../../coaching/plan.ts';
import type { KnownFits } from '../../body/recheck.ts';
import { type Before, NOTHING_BEFORE, writeBefore } from '../before.ts';
import { writeKnown } from '../knownCalibration.ts';
import { writeClockFits } from '../clockFits.ts';
import { writeAnalysis, writePlan } from '../derivatives.ts';
import { NO_NOTES, type PracticeNotes, checkNotes, writeNotes } from '../practiceNotes.ts';
import type { NewSession } from '../write/descriptors.ts';
import {
  type SessionWriter,
  type WriterOptions,
  createSessionWriter,
} from '../write/sessionWriter.ts';
import { type Identity, newRow, resultColumns, saveDetails, saveRow } from './rows.ts';
import type { IndexTables } from './tables.ts';

export interface NewRecording extends Pick<
  NewSession,
  'subject' | 'hand' | 'name' | 'simulated' | 'tracks'
> {
  readonly plan: Plan;
  /** An earlier calibration that may be re-checked. */
  readonly known?: KnownFits;
  /** What was known before it; left out = nothing. */
  readonly before?: Before;
  readonly startedAt: Date;
  readonly painBefore?: number | null;
  /** Hears when writing fails and when it works again. */
  readonly onStatus?: WriterOptions['onStatus'];
}

/** A session that is being recorded. */
export interface Recording {
  readonly id: string;
  readonly writer: SessionWriter;
  /** Keeps another plan with it, as when the student's own range has just been measured. */
  replan(plan: Plan): Promise<void>;
  /**
   * Ends it: closes the files, keeps result and notes beside them, puts it into the index.
   * @throws SessionError where the disk refuses; nothing is lost and it may be called again.
   */
  finish(analysis: AnalysisResult, notes?: Partial<PracticeNotes>): Promise<void>;
}

/** Local date and time without zone, as scans.tsv has it. */
function localTime(date: Date): string {
  const local = new Date(date.getTime() - date.getTimezoneOffset() * 60_000);
  return local.toISOString().slice(0, 19);
}

export async function startRecording(
  db: Kysely<IndexTables>,
  sessions: string,
  id: string,
  given: NewRecording,
): Promise<Recording> {
  const {
    startedAt,
    painBefore = null,
    known,
    before = NOTHING_BEFORE,
    onStatus,
    ...about
  } = given;
  let { plan } = given;
  checkNotes({ painBefore });
  const folder = join(sessions, id);
  const name = about.name ?? 'Practice';
  const writer = await createSessionWriter(
    folder,
    { ...about, name, session: id, startedAt: localTime(startedAt) },
    onStatus === undefined ? {} : { onStatus },
  );
  await writePlan(folder, plan);
  if (known !== undefined) await writeKnown(folder, known);
  if (before.history !== null || before.warnings.length > 0) await writeBefore(folder, before);
  const identity: Omit<Identity, 'plan'> = {
    id,
    name,
    subject: about.subject,
    hand: about.hand,
    simulated: about.simulated ?? false,
    startedMs: startedAt.getTime(),
    state: 'running',
    deletedMs: null,
    notes: { ...NO_NOTES, painBefore },
  };
  await saveRow(db, newRow({ ...identity, plan }));
  return {
    id,
    writer,
    async replan(next) {
      plan = next;
      await writePlan(folder, next);
    },
    async finish(analysis, notes = {}) {
      checkNotes(notes);
      const all: PracticeNotes = { ...identity.notes, ...notes };
      await writer.close();
      // an earlier try may have found the disk full
      await writePlan(folder, plan);
      await writeClockFits(folder, writer.clockFits());
      await writeAnalysis(folder, analysis);
      await writeNotes(folder, all);
      const done = newRow({ ...identity, plan, state: 'complete', notes: all });
      await db.transaction().execute(async (transaction) => {
        await saveRow(transaction, { ...done, ...resultColumns(analysis) });
        await saveDetails(transaction, id, analysis);
      });
    },
  };
}
