import { homedir } from 'node:os';
import { join } from 'node:path';
import { BleSource } from '../sensors/sources/ble/bleSource.ts';
import { SensorDesk } from '../sensors/sources/ble/desk.ts';
import { monotonicMs } from '../sensors/sources/ble/messages.ts';
import { Pairings } from '../sensors/sources/ble/pairings.ts';
import { Radio } from '../sensors/sources/ble/radio.ts';

/** Real sensors: nothing touches Bluetooth before the sensors page or a live practice asks for it. */
export interface LiveSensors {
  readonly desk: SensorDesk;
  /** The sensors that are worn, now and as the sensors page changes them. */
  source(): BleSource;
  stop(): Promise<void>;
}

/** Where pairings are kept: the folder named by STILLCATCH_HOME, else `.stillcatch` in the home folder. */
const pairingsFile = (): string =>
  join(process.env['STILLCATCH_HOME'] ?? join(homedir(), '.stillcatch'), 'sensors.json');

export function liveSensors(file = pairingsFile()): LiveSensors {
  const radio = new Radio(monotonicMs);
  const pairings = new Pairings(file);
  const sources = new Set<BleSource>();
  const desk = new SensorDesk(radio, pairings, monotonicMs, (all) =>
    sources.forEach((source) => source.assign(all)),
  );
  return {
    desk,
    source: () => {
      const source = new BleSource(radio, pairings.all, monotonicMs);
      sources.add(source);
      return source;
    },
    stop: () => radio.stop(),
  };
}
