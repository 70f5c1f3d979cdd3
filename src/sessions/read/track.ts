import type { SensorRole } from '../../sensors/sample.ts';
import type { ClockRun } from '../../sensors/clock/wholeClock.ts';
import { readAnswers } from '../clockAnswers.ts';
import type { SessionFiles } from '../files/sessionFiles.ts';
import type { TrackHeader } from '../header.ts';
import { type Channels, readChannels } from './channels.ts';
import { atFinalTimes, fitTrack } from './finalTimes.ts';
import type { TrackFiles } from './layout.ts';
import { type MotionBlock, type Skipped, motionBlocks } from './motionBlocks.ts';
import { readSidecar } from './sidecar.ts';

/** One sensor's track whose columns are known. */
export interface OpenTrack {
  readonly files: TrackFiles;
  readonly channels: Channels;
  readonly header: TrackHeader;
  /** Where the final fit's session times are asked for; else `null`. */
  readonly runs: readonly ClockRun[] | null;
}

/** Whose session times: as recorded, which practice was judged by, or fitted anew over the whole recording. */
export type SessionClock = 'recorded' | 'final';

export async function openTrack(
  files: SessionFiles,
  track: TrackFiles,
  clock: SessionClock,
): Promise<OpenTrack> {
  const channels = await readChannels(files, track.channels);
  const header = await readSidecar(files, track.sidecar, track.role, channels);
  const known = { files: track, channels, header };
  return { ...known, runs: clock === 'final' ? await trackRuns(files, known) : null };
}

/** The final clock fit of a track, oldest run first; empty where it keeps no raw times. */
export async function trackRuns(
  files: SessionFiles,
  { files: track, channels, header }: Omit<OpenTrack, 'runs'>,
): Promise<readonly ClockRun[]> {
  const answers = await readAnswers(files, track.role);
  const blocks = motionBlocks(files, track.motion, channels, { missing: 0, notLater: 0 });
  return fitTrack(blocks, answers, header.samplingHz);
}

/** Its rows, with the session times that were asked for. */
export function blocksOf(
  files: SessionFiles,
  track: OpenTrack,
  count: Skipped,
): AsyncGenerator<MotionBlock> {
  const blocks = motionBlocks(files, track.files.motion, track.channels, count);
  return track.runs === null ? blocks : atFinalTimes(blocks, track.runs, track.header.samplingHz);
}

/** What is to be said of a track that was read, in words. */
export const trackNotes = (track: OpenTrack, count: Skipped): string[] => [
  ...skippedNotes(track.files.role, count),
  ...clockNotes(track),
];

function skippedNotes(role: SensorRole, { missing, notLater }: Skipped): string[] {
  const notes: string[] = [];
  if (missing > 0) notes.push(`${role}: ${missing} rows with missing values counted as lost`);
  if (notLater > 0)
    notes.push(`${role}: ${notLater} rows not later than the one before were left out`);
  return notes;
}

function clockNotes({ files, runs }: OpenTrack): string[] {
  if (runs === null) return [];
  if (runs.length === 0)
    return [`${files.role}: no raw times are saved, so the recorded times are used`];
  const worst = (of: (run: ClockRun) => number): string => Math.max(...runs.map(of)).toFixed(1);
  const anew = runs.length > 1 ? `, in ${runs.length} runs of the sensor's clock` : '';
  return [
    `${files.role}: times fitted anew over the whole recording${anew}, within ${worst((r) => r.residualMs)} ms; 95 % of the recorded ones lay within ${worst((r) => r.movedMs)} ms of them`,
  ];
}
