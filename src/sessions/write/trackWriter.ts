import { join } from 'node:path';
import type { Answer } from '../../sensors/clock/asked.ts';
import {
  type ClockRun,
  type RecordedTimes,
  clockRuns,
  createWholeClock,
  takeAnswered,
  takeTimes,
} from '../../sensors/clock/wholeClock.ts';
import { RECORDED_DECIMALS as DECIMALS, recordedTime } from '../../sensors/recorded.ts';
import type { ImuSample, SensorRole } from '../../sensors/sample.ts';
import { DEFAULT_PLACEMENT, DEFAULT_TRACK, type TrackHeader } from '../header.ts';
import { type AppendFile, createAppendFile } from './appendFile.ts';
import { channelsSidecar, channelsTable, motionSidecar } from './descriptors.ts';
import { LONGEST_NUMBER, writeFixed } from './digits.ts';
import { writeJson, writeWhole } from './wholeFile.ts';

const BUFFER_BYTES = 64 * 1024;
const LONGEST_ROW = 9 * (LONGEST_NUMBER + 1);
const TAB = 9;
const LF = 10;

/** One sensor's files. They are made with the first flush that has a sample. */
export interface TrackWriter {
  readonly role: SensorRole;
  readonly fileName: string;
  sample(sample: ImuSample): void;
  /** What the sensor answered to a question for its time. */
  answer(answer: Answer): void;
  /** The final clock fit over all that was written. */
  clockRuns(): readonly ClockRun[];
  waiting(): number;
  /** @returns true where this call made the files. */
  flush(): Promise<boolean>;
  close(): Promise<void>;
}

export function createTrackWriter(
  folder: string,
  stem: string,
  role: SensorRole,
  given: Partial<TrackHeader>,
): TrackWriter {
  const base = `${stem}_tracksys-${role}`;
  const header: TrackHeader = { ...DEFAULT_TRACK, placement: DEFAULT_PLACEMENT[role], ...given };
  const clock = createWholeClock(header.samplingHz);
  const seen = { count: 0, firstS: 0, lastS: 0 };
  let buffer = Buffer.allocUnsafe(BUFFER_BYTES);
  let used = 0;
  let full: Buffer[] = [];
  let file: AppendFile | null = null;

  const sidecar = (closing: boolean) => {
    const spanS = seen.lastS - seen.firstS;
    const effectiveHz = spanS > 0 ? Number(((seen.count - 1) / spanS).toFixed(3)) : null;
    const samplingHz = header.samplingHz ?? effectiveHz ?? 1;
    return writeJson(
      join(folder, `${base}_motion.json`),
      motionSidecar(role, header, { samplingHz, effectiveHz: closing ? effectiveHz : null }),
    );
  };
  const create = async (): Promise<AppendFile> => {
    await writeWhole(join(folder, `${base}_channels.tsv`), channelsTable(role, header));
    await writeJson(join(folder, `${base}_channels.json`), channelsSidecar);
    await sidecar(false);
    return createAppendFile(join(folder, `${base}_motion.tsv`));
  };

  return {
    role,
    fileName: `${base}_motion.tsv`,
    sample(sample) {
      if (used + LONGEST_ROW > buffer.length) {
        full.push(buffer.subarray(0, used));
        buffer = Buffer.allocUnsafe(BUFFER_BYTES);
        used = 0;
      }
      used = writeRow(buffer, used, sample);
      if (seen.count++ === 0) seen.firstS = sample.timeS;
      seen.lastS = sample.timeS;
      takeTimes(clock, asWritten(sample));
    },
    answer: ({ deviceS, sentS }) =>
      takeAnswered(clock, { deviceS: recordedTime(deviceS), sentS: recordedTime(sentS) }),
    clockRuns: () => clockRuns(clock),
    waiting: () => full.reduce((sum, b) => sum + b.length, used) + (file?.waiting() ?? 0),
    async flush() {
      const made = file === null && seen.count > 0;
      if (file === null && !made) return false;
      file ??= await create();
      for (const bytes of full) file.append(bytes);
      if (used > 0) file.append(Uint8Array.from(buffer.subarray(0, used)));
      full = [];
      used = 0;
      await file.flush();
      return made;
    },
    async close() {
      if (file === null) return;
      await file.close();
      await sidecar(true);
    },
  };
}

/** Whoever fits the clock anew from the file finds the very same. */
const asWritten = ({ timeS, deviceTimeS, arrivalTimeS }: ImuSample): RecordedTimes => ({
  timeS: recordedTime(timeS),
  deviceTimeS: deviceTimeS === null ? null : recordedTime(deviceTimeS),
  arrivalTimeS: arrivalTimeS === null ? null : recordedTime(arrivalTimeS),
});

function writeRow(out: Buffer, from: number, sample: ImuSample): number {
  const { acc, gyro } = sample;
  let at = cell(out, from, sample.timeS, DECIMALS.time);
  at = cell(out, at, acc.x, DECIMALS.acc);
  at = cell(out, at, acc.y, DECIMALS.acc);
  at = cell(out, at, acc.z, DECIMALS.acc);
  at = cell(out, at, gyro.x, DECIMALS.gyro);
  at = cell(out, at, gyro.y, DECIMALS.gyro);
  at = cell(out, at, gyro.z, DECIMALS.gyro);
  at = cell(out, at, sample.deviceTimeS ?? NaN, DECIMALS.time);
  at = cell(out, at, sample.arrivalTimeS ?? NaN, DECIMALS.time);
  out[at - 1] = LF;
  return at;
}

function cell(out: Buffer, at: number, value: number, decimals: number): number {
  const end = writeFixed(out, at, value, decimals);
  out[end] = TAB;
  return end + 1;
}
