import { type SimulatedDevice, type SimulatedSensor, SIMULATED_SENSORS } from './worn.ts';
import type { CalibrationMotionFault } from './motions/calibration.ts';
import type { RadioModel } from './radio.ts';
import type { NoiseModel } from './sensorModel.ts';

/** What can be wrong with a calibration; analysis shall notice each. */
type CalibrationFault =
  | CalibrationMotionFault
  /** Chest and arm sensor exchanged. */
  | 'swapped'
  /** The sensor is turned over between the first stand and the movements. */
  | 'chest-turned-over'
  | 'arm-turned-over'
  /** All three rates of the sensor have the wrong sign. */
  | 'chest-gyro-sign'
  | 'arm-gyro-sign';

export interface SimulationOptions {
  readonly seed: number;
  /** A third sensor on the club; default none. */
  readonly club?: boolean;
  /** The golfer's hand; default right. */
  readonly hand?: 'left' | 'right';
  /** See `parseScript`; default empty. */
  readonly script?: string;
  /** Default `normal`; `none` starts upright without any calibration step. */
  readonly calibration?: 'normal' | 'short' | 'none';
  /** Scales sway, breathing and tremor; default 1, a calm adult. */
  readonly unrest?: number;
  /** Bows and raises in the calibration, default 3. */
  readonly calibrationRepetitions?: number;
  readonly calibrationFault?: CalibrationFault;
  /** Hz, of each device's own clock; default 100. */
  readonly rateHz?: number | Readonly<Record<SimulatedSensor, number>>;
  /** Default realistic; given fields replace single values. */
  readonly noise?: Partial<NoiseModel>;
  readonly radio?: Partial<RadioModel> | Readonly<Record<SimulatedSensor, Partial<RadioModel>>>;
  /** Device clock fast by so many parts per million; default drawn from +-40. */
  readonly skewPpm?: Readonly<Record<SimulatedSensor, number>>;
}

/** One value for all sensors, or one each; the club's is the chest's. */
export function forSensor<T>(
  value: T | Readonly<Record<SimulatedSensor, T>>,
  sensor: SimulatedDevice,
): T {
  const own = sensor === 'club' ? 'chest' : sensor;
  return typeof value === 'object' && value !== null && own in value
    ? (value as Readonly<Record<SimulatedSensor, T>>)[own]
    : (value as T);
}

function finiteWithin(name: string, value: number, low: number, high: number): void {
  if (!(value >= low && value <= high)) {
    throw new RangeError(`simulation: ${name} must be from ${low} to ${high}, not ${value}`);
  }
}

/** @throws RangeError naming the option. */
export function checkOptions(options: SimulationOptions): void {
  finiteWithin('seed', options.seed, 0, 0xffffffff);
  finiteWithin('calibrationRepetitions', options.calibrationRepetitions ?? 3, 0, 10);
  finiteWithin('unrest', options.unrest ?? 1, 0, 20);
  for (const sensor of SIMULATED_SENSORS) {
    finiteWithin('rateHz', forSensor(options.rateHz ?? 100, sensor), 1, 1000);
    finiteWithin('skewPpm', options.skewPpm?.[sensor] ?? 0, -30_000, 30_000);
    const radio = forSensor(options.radio ?? {}, sensor);
    finiteWithin('radio.lostShare', radio.lostShare ?? 0, 0, 0.9);
    finiteWithin('radio.samplesPerPacket', radio.samplesPerPacket ?? 1, 1, 100);
  }
}
