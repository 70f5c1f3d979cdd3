import { witMotionDecoder } from '../../../decode/witMotion.ts';
import type { Driver } from './driver.ts';

// Source: WITMOTION/WitBluetooth_BWT901BLE5_0. The base ends in 9a34fb, not in the standard's 9b34fb.
const uuid = (short: string): string => `0000${short}00001000800000805f9a34fb`;
export const WIT_MOTION = { service: uuid('ffe5'), notify: uuid('ffe4'), write: uuid('ffe9') };

const UNLOCK = [0xff, 0xaa, 0x69, 0x88, 0xb5];
const RATE_100_HZ = [0xff, 0xaa, 0x03, 0x09, 0x00];

export const witMotionDriver: Driver = {
  kind: 'witMotion',
  label: 'WitMotion BLE 5',
  // 7.5 to 11.25 ms: at 15 ms its 100 Hz would beat with the connection.
  interval: { min: 6, max: 9 },
  services: [WIT_MOTION.service],
  matches: ({ name, serviceUuids }) =>
    serviceUuids.includes(WIT_MOTION.service) || /^(WT|BWT)\w*BLE/i.test(name),
  async prepare(gatt, onBytes) {
    // Not saved to the sensor: it is set again at each connection and its memory wears.
    await gatt.write(WIT_MOTION.write, UNLOCK);
    await gatt.write(WIT_MOTION.write, RATE_100_HZ);
    await gatt.subscribe(WIT_MOTION.notify, onBytes);
    return { rateHz: 100, info: null };
  },
  identify: null,
  askClock: null,
  decoder: ({ rateHz }) => witMotionDecoder(rateHz) as ReturnType<Driver['decoder']>,
};
