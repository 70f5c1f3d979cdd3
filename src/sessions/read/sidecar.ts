import { STANDARD_GRAVITY } from '../../math/gravity.ts';
import { degrees } from '../../math/angle.ts';
import type { SensorRole } from '../../sensors/sample.ts';
import { checkWord } from '../files/names.ts';
import type { SessionFiles } from '../files/sessionFiles.ts';
import { DEFAULT_PLACEMENT, DEFAULT_TRACK, type TrackHeader } from '../header.ts';
import { SessionError } from '../sessionError.ts';
import { type Channels } from './channels.ts';
import { type JsonObject, readJson } from './text.ts';

export async function readSidecar(
  files: SessionFiles,
  file: string,
  role: SensorRole,
  { placement, accFullScale, gyroFullScale }: Channels,
): Promise<TrackHeader> {
  const json = await readJson(files, file);
  const system = json['TrackingSystemName'];
  if (typeof system !== 'string' || system.trim() === '')
    throw new SessionError('missing-field', 'the field TrackingSystemName is missing', { file });
  const { ManufacturersModelName: device } = json;
  return {
    samplingHz: positive(json, 'SamplingFrequency', file),
    accFullScaleG:
      accFullScale === null ? DEFAULT_TRACK.accFullScaleG : accFullScale / STANDARD_GRAVITY,
    gyroFullScaleDegPerS:
      gyroFullScale === null ? DEFAULT_TRACK.gyroFullScaleDegPerS : degrees(gyroFullScale),
    placement: placement === '' ? DEFAULT_PLACEMENT[role] : placement,
    device: typeof device === 'string' ? checkWord(device, 'ManufacturersModelName', file) : '',
  };
}

function positive(json: JsonObject, field: string, file: string): number | null {
  const value = json[field];
  if (value === undefined || value === null || value === 'n/a') return null;
  if (typeof value === 'number' && Number.isFinite(value) && value > 0) return value;
  throw new SessionError('bad-field', `${field} must be a number above 0`, { file });
}
