import { STANDARD_GRAVITY } from '../../math/gravity.ts';
import { radians } from '../../math/angle.ts';
import type { SensorRole } from '../../sensors/sample.ts';
import {
  PAIN_SIGNS,
  SESSION_EVENT_TYPES,
  type SessionEventType,
} from '../../sensors/sessionEvent.ts';
import { TASK, type TrackHeader } from '../header.ts';
import { FULL_SCALE, SLOTS } from '../read/channels.ts';
import { VERSION } from '../version.ts';

const BIDS_VERSION = '1.9.0';

/** What a new recording is told about itself. */
export interface NewSession {
  /** Letters and digits; never a person's name. */
  readonly subject: string;
  /** Letters and digits. */
  readonly session: string;
  readonly hand: 'left' | 'right';
  /** Date and time of the onset, `YYYY-MM-DDThh:mm:ss`; `null` where it is not to be said. */
  readonly startedAt: string | null;
  readonly name?: string;
  /** True for all that does not come from a body. */
  readonly simulated?: boolean;
  readonly tracks?: Partial<Record<SensorRole, Partial<TrackHeader>>>;
}

/** Code 82: the validator takes the first row of a motion.tsv, which has no header, for names of columns. */
export const VALIDATOR_CONFIG = { ignore: [82] };

const generatedBy = [{ Name: 'Stillcatch', Version: VERSION }];

export const datasetDescription = (header: NewSession) => ({
  Name: header.name ?? `Practice of sub-${header.subject}`,
  BIDSVersion: BIDS_VERSION,
  DatasetType: 'raw',
  Keywords: header.simulated === true ? ['simulated'] : [],
  GeneratedBy: generatedBy,
});

export const derivativesDescription = {
  Name: 'Stillcatch results',
  BIDSVersion: BIDS_VERSION,
  DatasetType: 'derivative',
  GeneratedBy: generatedBy,
};

export const readme = (header: NewSession): string => `${header.name ?? 'Practice session'}
${header.simulated === true ? 'SIMULATED DATA: made by a simulator, no person was measured.\n' : ''}
Two inertial sensors, on the chest and on the trail upper arm, of a golfer who practises the hold,
release, catch rehearsal. A Motion-BIDS dataset: each motion.tsv has no header row, its columns are
named with their units in the channels.tsv beside it. Times are seconds from the recording's onset.
Lost samples are absent rows. time is the session clock: for each sensor a line through its device
clock and the arrival at the host, along the earliest arrivals (delay only adds), sliding while it was
recorded, and above the questions of a sensor that is asked for its time. The practice was judged by it.
device_time and arrival_time are the raw clocks, and sourcedata/clockAnswers.tsv holds what a sensor
answered when it was asked for its time (its clock, and when the question left), so that the line can be
fitted again. The fit over the whole recording, its method and how far it may be off are in
derivatives/stillcatch/clockFit.json. What was detected and measured lies under derivatives/ too, and can
be computed again from the rest. Where the golfer's earlier calibration was re-checked instead of done anew, it
lies in sourcedata/calibration.json (for each sensor, in its own frame: mean specific force of its still stands,
m/s^2, and the unit vector to the golfer's right) and belongs to the recording.

Training aid, not a medical device. It measures movement, not injury risk.
`;

export const participants = (header: NewSession): string =>
  `participant_id\thandedness\nsub-${header.subject}\t${header.hand}\n`;

export function channelsTable(role: SensorRole, track: TrackHeader): string {
  const rows = SLOTS.map((name) => {
    const axis = /_([xyz])$/.exec(name)?.[1] ?? 'n/a';
    return [name, axis, ...kindOf(name, role), track.placement, fullScale(name, track)].join('\t');
  });
  const columns = ['name', 'component', 'type', 'tracked_point', 'units', 'placement', FULL_SCALE];
  return [columns.join('\t'), ...rows, ''].join('\n');
}

function fullScale(name: string, track: TrackHeader): string {
  if (name.startsWith('acc_')) return (track.accFullScaleG * STANDARD_GRAVITY).toFixed(6);
  if (name.startsWith('gyro_')) return radians(track.gyroFullScaleDegPerS).toFixed(6);
  return 'n/a';
}

/** Describes the one column that is not of the standard. */
export const channelsSidecar = {
  [FULL_SCALE]: {
    Description:
      'End of the range of the sensor on this axis, in the units of the channel: a reading within 0.1 % of it counts as saturated',
  },
};

function kindOf(name: string, role: SensorRole): [type: string, point: string, units: string] {
  if (name.startsWith('acc_')) return ['ACCEL', role, 'm/s^2'];
  if (name.startsWith('gyro_')) return ['GYRO', role, 'rad/s'];
  return [name === 'time' ? 'LATENCY' : 'MISC', role, 's'];
}

export const motionSidecar = (
  role: SensorRole,
  track: TrackHeader,
  measured: { readonly samplingHz: number; readonly effectiveHz: number | null },
) => ({
  TaskName: TASK,
  TaskDescription: 'Hold at the top, release the club, catch it with the trail arm turned outward.',
  SamplingFrequency: measured.samplingHz,
  ...(measured.effectiveHz === null ? {} : { SamplingFrequencyEffective: measured.effectiveHz }),
  TrackingSystemName: role,
  MotionChannelCount: SLOTS.length,
  ACCELChannelCount: 3,
  GYROChannelCount: 3,
  TrackedPointsCount: 1,
  MissingValues: 'absent rows',
  ...(track.device === '' ? {} : { ManufacturersModelName: track.device }),
});

export const EVENTS_HEADER = 'onset\tduration\ttrial_type\tvalue\tsigns\n';

const LEVELS: Readonly<Record<SessionEventType, string>> = {
  'calibration-stand': 'Upright and still, arms hanging',
  'calibration-bow': 'Forward bows',
  'calibration-armRaise': 'Straight trail arm raised forward to shoulder height',
  'address-reference': 'Still in the own address: turn is 0 here',
  'recheck-stand':
    'Upright and still, compared with the kept calibration in sourcedata/calibration.json',
  'recheck-bow': 'One forward bow, compared likewise',
  'recheck-armRaise': 'One raise of the straight trail arm, compared likewise',
  'mark-ball': 'The repetition in which the onset lies is a ball; the mark was made at its end',
  'mark-rehearsal': 'As mark-ball: a rehearsal',
  'mark-practiceSwing': 'As mark-ball: a practice swing without a ball',
  'mark-ignore': 'As mark-ball: no repetition at all',
  'mark-undo': 'Takes back the latest mark that still stands',
  'mark-tap': 'The sensors were tapped together',
  pain: 'Pain as rated by the golfer',
  pause: 'Practice paused',
  resume: 'Practice resumed',
};

export const eventsSidecar = {
  onset: { Description: 'From the onset of the recording', Units: 's' },
  duration: { Description: '0 for an instant', Units: 's' },
  trial_type: {
    Description: 'What was asked of the golfer or marked by hand',
    Levels: Object.fromEntries(SESSION_EVENT_TYPES.map((type) => [type, LEVELS[type]])),
  },
  value: { Description: 'For pain the rating from 0 to 10, else n/a' },
  signs: {
    Description: `For pain what it was like, separated by commas: ${PAIN_SIGNS.join(', ')}; else n/a`,
  },
};
