import { type Random, seededRandom, uniform } from '../../../math/random.ts';
import { scale } from '../../../math/vec3.ts';
import { type ClockState, createClock, observePacket, sessionTime } from '../../clock/clock.ts';
import { type ImuSample, mirrorSample } from '../../sample.ts';
import type { Kinematics } from './chain.ts';
import { type SimulationOptions, forSensor } from './options.ts';
import { type SimulatedDevice } from './worn.ts';
import { REALISTIC_RADIO, type RadioState, createRadio, sendPacket } from './radio.ts';
import {
  REALISTIC,
  type SensorState,
  createSensor,
  readSensor,
  upsideDown,
} from './sensorModel.ts';

/** A sample as the analysis sees it, and when it was truly taken (host clock, s from onset). */
export interface SimulatedSample extends ImuSample {
  readonly trueTimeS: number;
}

export interface Packet {
  readonly sensor: SimulatedDevice;
  readonly arrivalTimeS: number;
  readonly samples: readonly SimulatedSample[];
}

/** One simulated sensor: where it sits, its clock, its radio. */
export interface Device {
  readonly sensor: SimulatedDevice;
  /** The name its samples carry; differs where sensors are swapped. */
  readonly label: SimulatedDevice;
  readonly hand: 'left' | 'right';
  readonly rateHz: number;
  /** Device seconds per true second, and the device's time at true time 0. */
  readonly clockRate: number;
  readonly clockOffsetS: number;
  readonly gyroSign: 1 | -1;
  /** From this true time on the sensor hangs upside down. */
  readonly turnedOverFromS: number;
  readonly state: SensorState;
  readonly radio: RadioState;
  /** The host's clock for this sensor: the same that live sensors have. */
  readonly clock: ClockState;
  /** Number of the next sample. */
  next: number;
  /** Samples of the packet being filled. */
  filling: SimulatedSample[];
}

/** Different streams for different matters, so that one option does not stir the others. */
const streamOf = (seed: number, matter: number): Random =>
  seededRandom((Math.imul(seed ^ 0x9e3779b9, 0x85ebca6b) + Math.imul(matter, 0xc2b2ae35)) >>> 0);

export function createDevice(
  sensor: SimulatedDevice,
  options: SimulationOptions,
  turnedOverFromS: number,
): Device {
  const order = { chest: 1, trailArm: 2, club: 3 }[sensor];
  const fault = options.calibrationFault;
  const clock = streamOf(options.seed, 10 * order);
  const asked = sensor === 'club' ? undefined : options.skewPpm?.[sensor];
  const skew = asked ?? uniform(clock, -40, 40);
  const part = { chest: 'chest', trailArm: 'arm', club: 'club' }[sensor];
  const other = sensor === 'chest' ? 'trailArm' : 'chest';
  return {
    sensor,
    label: fault === 'swapped' && sensor !== 'club' ? other : sensor,
    hand: options.hand ?? 'right',
    rateHz: forSensor(options.rateHz ?? 100, sensor),
    clockRate: 1 + skew * 1e-6,
    clockOffsetS: uniform(clock, 0.5, 4000),
    gyroSign: fault === `${part}-gyro-sign` ? -1 : 1,
    turnedOverFromS: fault === `${part}-turned-over` ? turnedOverFromS : Infinity,
    state: createSensor(sensor, streamOf(options.seed, 10 * order + 1), {
      ...REALISTIC,
      ...options.noise,
    }),
    radio: createRadio(streamOf(options.seed, 10 * order + 2), {
      ...REALISTIC_RADIO,
      ...forSensor(options.radio ?? {}, sensor),
    }),
    clock: createClock(),
    next: 0,
    filling: [],
  };
}

/** Device clock, s, of the next sample: whole microseconds, as such clocks count. */
const deviceTimeOf = (d: Device): number =>
  Math.round((d.clockOffsetS + d.next / d.rateHz) * 1e6) / 1e6;

/** True time of the next sample, s. */
export const nextSampleS = (d: Device): number => (deviceTimeOf(d) - d.clockOffsetS) / d.clockRate;

/** Takes the next sample of `site`; returns the packet if that one is full and arrives. */
export function takeSample(d: Device, site: (trueTimeS: number) => Kinematics): Packet | null {
  const trueTimeS = nextSampleS(d);
  const deviceTimeS = deviceTimeOf(d);
  const worn =
    trueTimeS >= d.turnedOverFromS
      ? { ...d.state, mounting: upsideDown(d.state.mounting) }
      : d.state;
  const reading = readSensor(worn, site(trueTimeS), 1 / d.rateHz);
  [d.state.gyroBias, d.state.accBias] = [worn.gyroBias, worn.accBias];
  const sample: SimulatedSample = {
    sensor: d.label,
    timeS: trueTimeS,
    acc: reading.acc,
    gyro: scale(reading.gyro, d.gyroSign),
    deviceTimeS,
    arrivalTimeS: null,
    saturated: reading.saturated,
    trueTimeS,
  };
  d.filling.push(d.hand === 'left' ? { ...sample, ...mirrorSample(sample) } : sample);
  d.next++;
  return d.filling.length >= d.radio.model.samplesPerPacket ? send(d, trueTimeS) : null;
}

function send(d: Device, readyS: number): Packet | null {
  const samples = d.filling;
  d.filling = [];
  const arrivalTimeS = sendPacket(d.radio, readyS);
  const lastS = samples.at(-1)?.deviceTimeS ?? null;
  if (arrivalTimeS === null || lastS === null) return null;
  observePacket(d.clock, lastS, arrivalTimeS);
  return {
    sensor: d.label,
    arrivalTimeS,
    samples: samples.map((s) => ({
      ...s,
      timeS: sessionTime(d.clock, s.deviceTimeS ?? lastS),
      arrivalTimeS,
    })),
  };
}
