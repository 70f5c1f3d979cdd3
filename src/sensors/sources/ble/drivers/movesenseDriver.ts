import { movesenseDecoder } from '../../../decode/movesense.ts';
import { BATTERY_SERVICE, type Driver } from './driver.ts';

// Source: movesense.com GATT SensorData Protocol; sensein/movesense-py docs/movesense-api.md.
const uuid = (first: string): string => `${first}71854d5db431630e7050e8f0`;
export const MOVESENSE = {
  service: uuid('34802252'),
  write: uuid('34800001'),
  notify: uuid('34800002'),
};

const RATE_HZ = 104;
const SUBSCRIBE = 1;
const REFERENCE = 42;

export const movesenseDriver: Driver = {
  kind: 'movesense',
  label: 'Movesense',
  interval: { min: 6, max: 12 },
  services: [MOVESENSE.service, BATTERY_SERVICE],
  matches: ({ name, serviceUuids }) =>
    serviceUuids.includes(MOVESENSE.service) || /^Movesense\b/.test(name),
  async prepare(gatt, onBytes) {
    await gatt.subscribe(MOVESENSE.notify, onBytes);
    const path = [...new TextEncoder().encode(`/Meas/IMU6/${RATE_HZ}`)];
    await gatt.write(MOVESENSE.write, [SUBSCRIBE, REFERENCE, ...path]);
    return { rateHz: RATE_HZ, info: null };
  },
  identify: null,
  askClock: null,
  decoder: ({ rateHz }) => movesenseDecoder(rateHz) as ReturnType<Driver['decoder']>,
};
