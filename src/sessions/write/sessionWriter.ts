import { mkdir, readdir } from 'node:fs/promises';
import { join } from 'node:path';
import type { AnalysisInput } from '../../analysis/contract.ts';
import type { Answer } from '../../sensors/clock/asked.ts';
import type { ImuSample, SensorRole } from '../../sensors/sample.ts';
import type { SessionEvent } from '../../sensors/sessionEvent.ts';
import type { ClockFits } from '../clockFits.ts';
import { TASK, sessionId } from '../header.ts';
import { SessionError } from '../sessionError.ts';
import { diskWords, makeFolder } from './disk.ts';
import { createAnswersWriter } from './answersWriter.ts';
import { type AppendFile, createAppendFile } from './appendFile.ts';
import {
  EVENTS_HEADER,
  type NewSession,
  VALIDATOR_CONFIG,
  datasetDescription,
  eventsSidecar,
  participants,
  readme,
} from './descriptors.ts';
import { eventRow } from './eventsFile.ts';
import { type TrackWriter, createTrackWriter } from './trackWriter.ts';
import { writeJson, writeWhole } from './wholeFile.ts';

/** So that a second is lost at most, the sync itself included. */
const FLUSH_MS = 500;

export interface WriterStatus {
  /** False while the disk takes no data; what comes in meanwhile is kept in memory and written later. */
  readonly ok: boolean;
  /** In words; empty while `ok`. */
  readonly reason: string;
  readonly waitingBytes: number;
}

export interface WriterOptions {
  /** Called when writing begins to fail and when it works again. */
  readonly onStatus?: (status: WriterStatus) => void;
  /** 0: only `flush` writes. */
  readonly flushEveryMs?: number;
}

/** Writes a recording while it runs. `sample`, `event` and `answer` never fail and never wait. */
export interface SessionWriter {
  readonly folder: string;
  sample(sample: ImuSample): void;
  event(event: SessionEvent): void;
  /** What a sensor answered to a question for its time. */
  answer(sensor: SensorRole, answer: Answer): void;
  /** The final clock fit over all that was written so far. */
  clockFits(): ClockFits;
  /** Writes and syncs all that waits; a failure is in `status`, not thrown. */
  flush(): Promise<void>;
  status(): WriterStatus;
  /** @throws SessionError `write-failed` where some of it could not be written; may be called again. */
  close(): Promise<void>;
}

/**
 * Starts a session in `folder`, which is made; from then on it is a valid dataset.
 * @throws SessionError where it holds something already, or cannot be made.
 */
export async function createSessionWriter(
  folder: string,
  header: NewSession,
  options: WriterOptions = {},
): Promise<SessionWriter> {
  checkLabels(header);
  const id = sessionId(header.subject, header.session);
  const sessionFolder = join(folder, `sub-${header.subject}`, `ses-${header.session}`);
  const motion = join(sessionFolder, 'motion');
  const stem = `${id}_task-${TASK}`;
  const events = await begin(folder, motion, stem, header).catch((error: unknown) => {
    throw error instanceof SessionError
      ? error
      : new SessionError('write-failed', diskWords(error));
  });
  const tracks = new Map<SensorRole, TrackWriter>();
  const answers = createAnswersWriter(folder);
  const scans = () =>
    writeWhole(join(sessionFolder, `${id}_scans.tsv`), scansTable(tracks, header.startedAt));
  const flushAll = async () => {
    let made = false;
    for (const track of tracks.values()) made = (await track.flush()) || made;
    if (made) await scans();
    await events.flush();
    await answers.flush();
  };
  const closeAll = async () => {
    for (const track of tracks.values()) await track.close();
    await events.close();
    await answers.close();
  };
  return running(folder, options, {
    waiting: () =>
      [events, answers, ...tracks.values()].reduce((sum, part) => sum + part.waiting(), 0),
    flushAll,
    closeAll,
    sample(sample) {
      let track = tracks.get(sample.sensor);
      if (track === undefined) {
        const given = header.tracks?.[sample.sensor] ?? {};
        track = createTrackWriter(motion, stem, sample.sensor, given);
        tracks.set(sample.sensor, track);
      }
      track.sample(sample);
    },
    event: (event) => events.append(Buffer.from(eventRow(event))),
    clockFits: () => Object.fromEntries([...tracks].map(([role, t]) => [role, t.clockRuns()])),
    answer(sensor, answer) {
      answers.answer(sensor, answer);
      tracks.get(sensor)?.answer(answer);
    },
  });
}

function checkLabels(header: NewSession): void {
  for (const [what, label] of [
    ['subject', header.subject],
    ['session', header.session],
  ] as const)
    if (!/^[A-Za-z0-9]+$/.test(label))
      throw new SessionError(
        'bad-field',
        `the ${what} label "${label}" may hold letters and digits only`,
      );
}

/** Makes the folder and every file that does not depend on a sample. */
async function begin(
  folder: string,
  motion: string,
  stem: string,
  header: NewSession,
): Promise<AppendFile> {
  const there = await readdir(folder).catch(() => []);
  if (there.length > 0)
    throw new SessionError('exists', `${folder} is not empty: nothing is written over`);
  await makeFolder(folder);
  await mkdir(motion, { recursive: true });
  await writeJson(join(folder, 'dataset_description.json'), datasetDescription(header));
  await writeJson(join(folder, '.bids-validator-config.json'), VALIDATOR_CONFIG);
  await writeWhole(join(folder, 'README'), readme(header));
  await writeWhole(join(folder, 'participants.tsv'), participants(header));
  await writeJson(join(motion, `${stem}_events.json`), eventsSidecar);
  const events = await createAppendFile(join(motion, `${stem}_events.tsv`));
  events.append(Buffer.from(EVENTS_HEADER));
  await events.flush();
  return events;
}

function scansTable(tracks: ReadonlyMap<SensorRole, TrackWriter>, startedAt: string | null) {
  const rows = [...tracks.values()].map((t) => `motion/${t.fileName}\t${startedAt ?? 'n/a'}`);
  return ['filename\tacq_time', ...rows, ''].join('\n');
}

interface Parts extends Pick<SessionWriter, 'sample' | 'event' | 'answer' | 'clockFits'> {
  waiting(): number;
  flushAll(): Promise<void>;
  closeAll(): Promise<void>;
}

/** Flushes in turn, one at a time, and tells when the disk fails and when it is back. */
function running(folder: string, options: WriterOptions, parts: Parts): SessionWriter {
  let reason = '';
  let turn: Promise<void> = Promise.resolve();
  const status = (): WriterStatus => ({ ok: reason === '', reason, waitingBytes: parts.waiting() });
  const flushOnce = async () => {
    const before = reason;
    reason = await parts.flushAll().then(() => '', diskWords);
    if ((before === '') !== (reason === '')) options.onStatus?.(status());
  };
  const flush = () => (turn = turn.then(flushOnce));
  const every = options.flushEveryMs ?? FLUSH_MS;
  const timer = every > 0 ? setInterval(() => void flush(), every) : undefined;
  timer?.unref();
  return {
    folder,
    sample: (sample) => parts.sample(sample),
    event: (event) => parts.event(event),
    answer: (sensor, answer) => parts.answer(sensor, answer),
    clockFits: () => parts.clockFits(),
    flush,
    status,
    async close() {
      clearInterval(timer);
      await flush();
      if (reason !== '') throw new SessionError('write-failed', reason);
      await parts.closeAll().catch((error: unknown) => {
        throw new SessionError('write-failed', diskWords(error));
      });
    },
  };
}

/** Inputs between flushes of a whole recording: about 6 MB of text. */
const BULK = 65_536;

/** Writes a whole recording at once, as fast as the disk takes it. */
export async function writeSession(
  folder: string,
  header: NewSession,
  batches: AsyncIterable<Iterable<AnalysisInput>> | Iterable<Iterable<AnalysisInput>>,
): Promise<void> {
  const writer = await createSessionWriter(folder, header, { flushEveryMs: 0 });
  let count = 0;
  for await (const batch of batches)
    for (const input of batch) {
      if (input.kind === 'event') writer.event(input.event);
      else writer.sample(input.sample);
      if (++count % BULK === 0) await writer.flush();
    }
  await writer.close();
}
