import type { SensorRole } from '../sensors/sample.ts';

/** What is known of one sensor's track before its rows are read. */
export interface TrackHeader {
  /** Stated rate, Hz; `null` where the sidecar gives none. The analysis measures it from the times. */
  readonly samplingHz: number | null;
  /** End of the accelerometer's range, g. */
  readonly accFullScaleG: number;
  /** End of the gyroscope's range, deg/s. */
  readonly gyroFullScaleDegPerS: number;
  readonly placement: string;
  /** Make, model or address of the device; empty where not known. */
  readonly device: string;
}

export const DEFAULT_TRACK: Omit<TrackHeader, 'placement'> = {
  samplingHz: null,
  accFullScaleG: 16,
  gyroFullScaleDegPerS: 2000,
  device: '',
};

export const DEFAULT_PLACEMENT: Readonly<Record<SensorRole, string>> = {
  chest: 'sternum',
  trailArm: 'distal upper arm',
  club: 'under the grip end',
};

export interface SessionTracks {
  readonly chest: TrackHeader;
  readonly trailArm: TrackHeader;
  readonly club?: TrackHeader;
}

export interface SessionHeader {
  /** `sub-<subject>_ses-<session>`, or `sub-<subject>` where the dataset has no session level. */
  readonly id: string;
  /** Letters and digits. */
  readonly subject: string;
  /** Letters and digits; empty where the dataset has no session level. */
  readonly session: string;
  readonly task: string;
  /** The golfer's hand. */
  readonly hand: 'left' | 'right';
  /** Local date and time of the recording's onset as written in scans.tsv. */
  readonly startedAt: string | null;
  /** The recording says that it comes from a simulator. */
  readonly simulated: boolean;
  readonly name: string;
  readonly tracks: SessionTracks;
}

export const TASK = 'holdReleaseCatch';

export const sessionId = (subject: string, session: string): string =>
  session === '' ? `sub-${subject}` : `sub-${subject}_ses-${session}`;
