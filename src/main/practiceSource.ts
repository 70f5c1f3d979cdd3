import type { KnownFits } from '../body/recheck.ts';
import type { Beginning } from '../practice/host.ts';
import { ReplaySource } from '../sensors/sources/replay/index.ts';
import type { SensorSource } from '../sensors/sources/source.ts';
import { SyntheticSource, type Timers } from '../sensors/sources/synthetic/index.ts';
import type { TrackHeader } from '../sessions/header.ts';
import { type RecordedSession, openSession, requireCalibration } from '../sessions/openSession.ts';
import type { LiveSensors } from './liveSensors.ts';
import type { StudentSettings } from './settings.ts';
import { warpedTimers } from './warp.ts';
import { naming } from './words.ts';

/** A source with the hand of whoever it shows. */
export interface PracticeSource {
  readonly source: SensorSource;
  readonly hand: 'left' | 'right';
  /** `idle`: it waits until somebody begins a practice. */
  readonly kind: Beginning['kind'] | 'idle';
  /** The earlier calibration that a recording's re-check compared with. */
  readonly known?: KnownFits;
  close(): Promise<void>;
}

const HOST: Timers = {
  now: () => performance.now(),
  after: (delayMs, callback) => {
    const timer = setTimeout(callback, delayMs);
    return () => clearTimeout(timer);
  },
};

/** The simulated calibration lasts about this long, ms; the demo plays it so many times as fast. */
const CALIBRATION_MS = 42_000;
const CALIBRATION_FACTOR = 10;

function simulatedStudent({ seed, speed }: StudentSettings, hand: 'left' | 'right'): SensorSource {
  const timers = warpedTimers(HOST, CALIBRATION_MS / speed, CALIBRATION_FACTOR);
  return new SyntheticSource({ seed, hand, speed, endless: true, timers });
}

/** The sensors of a practice that a person begins. */
export const sourceFor =
  (settings: StudentSettings, live: LiveSensors) =>
  ({ kind, hand, sensors }: Beginning): SensorSource => {
    if (kind === 'demo') return simulatedStudent(settings, hand);
    if (sensors === 'bluetooth') return live.source();
    const { seed, speed } = settings;
    return new SyntheticSource({ seed, hand, speed, prompted: true });
  };

async function openCalibrated(path: string): Promise<RecordedSession> {
  try {
    const session = await openSession(path);
    requireCalibration(session);
    return session;
  } catch (error) {
    throw naming(path, error);
  }
}

async function recording(path: string, speed: number): Promise<Omit<PracticeSource, 'kind'>> {
  const session = await openCalibrated(path);
  const { hand, tracks, simulated } = session.header;
  const aboutOf = (track: TrackHeader) => ({ name: track.device, nominalRateHz: track.samplingHz });
  const sensors = { chest: aboutOf(tracks.chest), trailArm: aboutOf(tracks.trailArm) };
  const source = new ReplaySource({ inputs: session.inputs(), sensors, speed, simulated });
  const known = session.known === null ? {} : { known: session.known };
  return { source, hand, ...known, close: () => session.close() };
}

/**
 * A recording that was asked for plays at once; else nothing runs until a person begins.
 * @throws SessionError where the recording cannot be read.
 */
export async function practiceSource(
  settings: StudentSettings,
  live: LiveSensors,
): Promise<PracticeSource> {
  const { replay, speed, hand, sensors } = settings;
  if (replay !== null) return { ...(await recording(replay, speed)), kind: 'demo' };
  const source = sensors === 'demo' ? simulatedStudent(settings, hand) : live.source();
  return { source, hand, kind: 'idle', close: () => Promise.resolve() };
}
