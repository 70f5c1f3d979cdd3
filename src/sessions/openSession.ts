import type { AnalysisInput } from '../analysis/contract.ts';
import type { SensorRole } from '../sensors/sample.ts';
import type { SessionEvent, SessionEventType } from '../sensors/sessionEvent.ts';
import { openFiles } from './files/openFiles.ts';
import { LIMITS, type Limits, type SessionFiles } from './files/sessionFiles.ts';
import type { SessionHeader, TrackHeader } from './header.ts';
import type { ClockFits } from './clockFits.ts';
import type { KnownFits } from '../body/recheck.ts';
import { type Before, readBefore } from './before.ts';
import { readKnown } from './knownCalibration.ts';
import { readEvents } from './read/events.ts';
import { readHeader } from './read/header.ts';
import { findLayout } from './read/layout.ts';
import { mergeTracks } from './read/merge.ts';
import { SLOT_COUNT } from './read/channels.ts';
import { type Skipped, motionBlocks } from './read/motionBlocks.ts';
import {
  type OpenTrack,
  type SessionClock,
  blocksOf,
  openTrack,
  trackRuns,
  trackNotes,
} from './read/track.ts';
import { checkPlausible } from './read/plausible.ts';
import { SessionError } from './sessionError.ts';

/** An opened recording, checked at its border; close it when done. */
export interface RecordedSession {
  readonly header: SessionHeader;
  /** In the order in which they are over. */
  readonly events: readonly SessionEvent[];
  readonly files: SessionFiles;
  /** The earlier calibration that a re-check compared with; `null` where there is none. */
  readonly known: KnownFits | null;
  /** What was known before it. */
  readonly before: Before;
  /**
   * All samples and events in order of session time, in batches. Each sensor's times rise strictly.
   * Can be called again for another run from the start.
   * @throws SessionError where a row is not what channels.tsv says.
   */
  inputs(): AsyncGenerator<readonly AnalysisInput[]>;
  /** The final clock fit of each track: a run through all its rows. */
  clockFits(): Promise<ClockFits>;
  /** What the last run through `inputs` passed over, in words. */
  notes(): readonly string[];
  close(): Promise<void>;
}

export interface OpenOptions {
  readonly limits?: Limits;
  readonly clock?: SessionClock;
}

/** How much of each track is looked at before anything is handed out, rows: about 80 s. */
const OPENING_ROWS = 8192;

/**
 * Opens a session folder or zip in the recording format.
 * @throws SessionError naming file, line and column where it is not one, or its units cannot be right.
 */
export async function openSession(
  path: string,
  { limits = LIMITS, clock = 'recorded' }: OpenOptions = {},
): Promise<RecordedSession> {
  const files = await openFiles(path, limits);
  try {
    return await open(files, clock);
  } catch (error) {
    await files.close();
    throw error;
  }
}

async function open(files: SessionFiles, clock: SessionClock): Promise<RecordedSession> {
  const layout = findLayout(files);
  const tracks: OpenTrack[] = [];
  for (const track of layout.tracks) tracks.push(await openTrack(files, track, clock));
  const headers = new Map<SensorRole, TrackHeader>(tracks.map((t) => [t.files.role, t.header]));
  const header = await readHeader(files, layout, headers);
  const events = await readEvents(files, layout.events);
  const known = await readKnown(files);
  const before = await readBefore(files);
  for (const track of tracks) await checkOpening(files, track);
  let skipped: { track: OpenTrack; count: Skipped }[] = [];
  return {
    header,
    events,
    files,
    known,
    before,
    inputs() {
      skipped = tracks.map((track) => ({ track, count: { missing: 0, notLater: 0 } }));
      const streams = skipped.map(({ track, count }) => ({
        role: track.files.role,
        header: track.header,
        blocks: blocksOf(files, track, count),
      }));
      return mergeTracks(streams, events);
    },
    clockFits: async () => {
      const fits: ClockFits = {};
      for (const track of tracks)
        fits[track.files.role] = track.runs ?? (await trackRuns(files, track));
      return fits;
    },
    notes: () => skipped.flatMap(({ track, count }) => trackNotes(track, count)),
    close: () => files.close(),
  };
}

async function checkOpening(files: SessionFiles, track: OpenTrack): Promise<void> {
  const values = new Float64Array(OPENING_ROWS * SLOT_COUNT);
  let rows = 0;
  const blocks = motionBlocks(files, track.files.motion, track.channels, {
    missing: 0,
    notLater: 0,
  });
  for await (const block of blocks) {
    const take = Math.min(block.rows, OPENING_ROWS - rows);
    values.set(block.values.subarray(0, take * SLOT_COUNT), rows * SLOT_COUNT);
    rows += take;
    if (rows === OPENING_ROWS) break;
  }
  checkPlausible({
    file: track.files.motion,
    rows,
    values,
    worn: track.files.role !== 'club',
    gyroFullScale: (track.header.gyroFullScaleDegPerS * Math.PI) / 180,
  });
}

/** Steps without which sensors cannot be tied to segments, in the order in which they are done. */
const CALIBRATION_STEPS: readonly { readonly type: SessionEventType; readonly words: string }[] = [
  { type: 'calibration-stand', words: 'standing still' },
  { type: 'calibration-bow', words: 'bows' },
  { type: 'calibration-armRaise', words: 'arm raises' },
  { type: 'address-reference', words: 'the address reference' },
];

/** @throws SessionError `missing-calibration` that names the steps which events.tsv does not have. */
export function requireCalibration({ events }: Pick<RecordedSession, 'events'>): void {
  const rechecked = events.some((e) => e.type === 'recheck-armRaise');
  const needed = rechecked ? CALIBRATION_STEPS.slice(-1) : CALIBRATION_STEPS;
  const missing = needed.filter(({ type }) => !events.some((e) => e.type === type));
  if (missing.length === 0) return;
  const steps = missing.map(({ type, words }) => `${words} (${type})`).join(', ');
  throw new SessionError(
    'missing-calibration',
    `the recording cannot be measured: its events lack the calibration step${missing.length > 1 ? 's' : ''} ${steps}`,
  );
}
