import { type Vec3, vec3 } from '../math/vec3.ts';
import type { ImuSample } from './sample.ts';
import type { SessionEvent } from './sessionEvent.ts';

/** Decimals of a recording: a microsecond; 1e-5 m/s^2 and 1e-6 rad/s are far below a count of the widest range. */
export const RECORDED_DECIMALS = { time: 6, acc: 5, gyro: 6 } as const;

/** The very number that is read again once `value` was written with so many decimals. */
export function recordedNumber(value: number, decimals: number): number {
  const scale = 10 ** decimals;
  const size = Math.abs(value);
  const whole = Math.floor(size);
  // beyond this nothing is left behind the point worth rounding
  if (!(whole * scale < Number.MAX_SAFE_INTEGER / 2)) return value;
  const counts = whole * scale + Math.round((size - whole) * scale);
  return counts === 0 ? 0 : (Math.sign(value) * counts) / scale;
}

/** A time (s) as it is recorded. */
export const recordedTime = (timeS: number): number =>
  recordedNumber(timeS, RECORDED_DECIMALS.time);

const recordedVec = ({ x, y, z }: Vec3, decimals: number): Vec3 =>
  vec3(recordedNumber(x, decimals), recordedNumber(y, decimals), recordedNumber(z, decimals));

const timeOrNull = (timeS: number | null): number | null =>
  timeS === null ? null : recordedTime(timeS);

/** A reading as it is recorded: who measures these measures what the recording gives. */
export const recordedSample = (sample: ImuSample): ImuSample => ({
  sensor: sample.sensor,
  timeS: recordedTime(sample.timeS),
  acc: recordedVec(sample.acc, RECORDED_DECIMALS.acc),
  gyro: recordedVec(sample.gyro, RECORDED_DECIMALS.gyro),
  deviceTimeS: timeOrNull(sample.deviceTimeS),
  arrivalTimeS: timeOrNull(sample.arrivalTimeS),
  saturated: sample.saturated,
});

/** An event as it is recorded; it is over no earlier than it was. */
export function recordedEvent(event: SessionEvent): SessionEvent {
  const onsetS = recordedTime(event.onsetS);
  const endS = recordedTime(event.onsetS + event.durationS);
  return { ...event, onsetS, durationS: recordedTime(endS - onsetS) };
}

/** An event is known once it is over. Session s, to the microsecond. */
export const eventEndS = ({ onsetS, durationS }: SessionEvent): number =>
  recordedTime(onsetS + durationS);
