import { MOVESENSE } from '../../src/sensors/sources/ble/drivers/movesenseDriver.ts';
import { OPEN_PROFILE } from '../../src/sensors/sources/ble/drivers/openProfileDriver.ts';
import { WIT_MOTION } from '../../src/sensors/sources/ble/drivers/witMotionDriver.ts';
import { concat, imu6, openPacket, witFrame } from '../sensors/decode/bytes.ts';
import { uuidBytes } from './gattServer.ts';
import { adStructure, VirtualPeripheral } from './peripheral.ts';

/** Raw counts of reading `k` since the device started; the first three tell k, so that tests can see order and loss. */
export type Signal = (k: number) => readonly number[];

const numbered: Signal = (k) => [k % 30_000, Math.floor(k / 30_000), 2048, 0, 0, 0];

export interface SensorOptions {
  readonly address: string;
  readonly name?: string;
  /** Device clock against the host's. */
  readonly ppm?: number;
  readonly perPacket?: number;
  /** Open profile: notifications that it can hold while the link is busy. */
  readonly buffer?: number;
  readonly signal?: Signal;
  /** Readings come from outside by `take`. */
  readonly fed?: boolean;
  readonly battery?: number;
  readonly maxMtu?: number;
  /** Open profile: readings a second; default 104. */
  readonly rateHz?: number;
  /** Open profile: tells its clock when asked; default so, if it has one of its own. */
  readonly tellsClock?: boolean;
  /** Open profile: somebody stopped it. */
  readonly stopped?: boolean;
}

export interface VirtualSensor {
  readonly peripheral: VirtualPeripheral;
  /** Notifications handed to the link since the device started. */
  sent: number;
  /** Blinks asked for. */
  identified: number;
  /** Connected, but sends nothing. */
  mute: boolean;
  /** One reading at a device time, us; open profile only. */
  take?: (us: number, counts: readonly number[]) => void;
}

const u32 = (value: number): Buffer => {
  const bytes = Buffer.alloc(4);
  bytes.writeUInt32LE(value);
  return bytes;
};

const fresh = () => ({ sent: 0, identified: 0, mute: false });

const FLAGS = adStructure(0x01, Buffer.from([0x06]));
const named = (name: string): Buffer => adStructure(0x09, Buffer.from(name));
const offering = (uuid: string): Buffer => adStructure(0x07, uuidBytes(uuid));

const battery = (level: number) => ({
  uuid: '180f',
  characteristics: [{ uuid: '2a19', notify: true, read: () => Uint8Array.of(level) }],
});

/** @returns the device's clock, ms. Calls `emit(k, deviceMs)` for every reading that fell due, on the device's own clock, since it was switched on. */
function readings(
  peripheral: VirtualPeripheral,
  rateHz: () => number,
  ppm: number,
  emit: (k: number, deviceMs: number) => void,
): () => number {
  let bootMs = performance.now();
  let k = 0;
  let dueMs = 0;
  const clockMs = (nowMs: number): number => (nowMs - bootMs) * (1 + ppm * 1e-6);
  peripheral.onPower = (on) => {
    if (!on) return;
    bootMs = performance.now();
    k = 0;
    dueMs = 0;
  };
  peripheral.produce = (nowMs) => {
    const deviceMs = clockMs(nowMs);
    for (; dueMs <= deviceMs; dueMs += 1000 / rateHz()) emit(k++, dueMs);
  };
  return () => clockMs(performance.now());
}

export function openProfileSensor(o: SensorOptions): VirtualSensor {
  const rateHz = o.rateHz ?? 104;
  let clockMs = (): number => 0;
  const clock = {
    uuid: OPEN_PROFILE.clock,
    read: () => u32(Math.round(clockMs() * 1000) % 2 ** 32),
  };
  const info = Buffer.concat([
    Buffer.from([1, 0, (rateHz * 100) & 0xff, (rateHz * 100) >> 8]),
    Buffer.from('803e000080841e00', 'hex'),
    Buffer.from('virtual board\0 1.0'),
  ]);
  let running = o.stopped !== true;
  const sensor = fresh();
  const peripheral = new VirtualPeripheral({
    address: o.address,
    advertisement: Buffer.concat([FLAGS, offering(OPEN_PROFILE.service)]),
    scanResponse: named(o.name ?? 'Stillcatch sensor'),
    maxMtu: o.maxMtu ?? 247,
    ...(o.buffer !== undefined && { buffer: o.buffer }),
    services: [
      {
        uuid: OPEN_PROFILE.service,
        characteristics: [
          { uuid: OPEN_PROFILE.data, notify: true },
          { uuid: OPEN_PROFILE.info, read: () => info },
          ...((o.tellsClock ?? !o.fed) ? [clock] : []),
          {
            uuid: OPEN_PROFILE.control,
            writtenBy: 'request',
            write: (value) => {
              if (value[0] === 1) running = value[1] === 1;
              if (value[0] === 3) sensor.identified += 1;
            },
          },
        ],
      },
      battery(o.battery ?? 87),
    ],
  });
  const signal = o.signal ?? numbered;
  const n = o.perPacket ?? 1;
  let sequence = 0;
  let counts: (readonly number[])[] = [];
  let us = 0;
  const take = (atUs: number, reading: readonly number[]): void => {
    if (counts.length === 0) us = atUs % 2 ** 32;
    counts.push(reading);
    if (counts.length < n) return;
    const packet = openPacket({ sequence: sequence % 2 ** 16, us, counts });
    counts = [];
    if (!running || sensor.mute || peripheral.gatt.subscribed(OPEN_PROFILE.data) === null) return;
    sequence += 1;
    sensor.sent += 1;
    peripheral.notify(OPEN_PROFILE.data, packet);
  };
  if (o.fed) return Object.assign(sensor, { peripheral, take });
  clockMs = readings(
    peripheral,
    () => rateHz,
    o.ppm ?? 0,
    (k, ms) => {
      if (k === 0) sequence = 0;
      take(Math.round(ms * 1000), signal(k));
    },
  );
  return Object.assign(sensor, { peripheral, take });
}

export function witMotionSensor(o: SensorOptions): VirtualSensor {
  let unlocked = false;
  let rateHz = 10;
  const sensor = fresh();
  const peripheral = new VirtualPeripheral({
    address: o.address,
    advertisement: Buffer.concat([FLAGS, named(o.name ?? 'WT901BLE68')]),
    scanResponse: Buffer.alloc(0),
    maxMtu: o.maxMtu ?? 247,
    services: [
      {
        uuid: WIT_MOTION.service,
        characteristics: [
          { uuid: WIT_MOTION.notify, notify: true },
          {
            uuid: WIT_MOTION.write,
            writtenBy: 'command',
            write: (v) => {
              if (v.equals(Buffer.from('ffaa6988b5', 'hex'))) unlocked = true;
              if (unlocked && v.equals(Buffer.from('ffaa030900', 'hex'))) rateHz = 100;
            },
          },
        ],
      },
    ],
  });
  const signal = o.signal ?? numbered;
  readings(
    peripheral,
    () => rateHz,
    o.ppm ?? 0,
    (k) => {
      if (sensor.mute || peripheral.gatt.subscribed(WIT_MOTION.notify) === null) return;
      sensor.sent += 1;
      peripheral.notify(WIT_MOTION.notify, witFrame([...signal(k), 0, 0, 0]));
    },
  );
  const restart = peripheral.onPower;
  peripheral.onPower = (on) => {
    unlocked = false;
    rateHz = 10;
    restart(on);
  };
  return Object.assign(sensor, { peripheral });
}

export function movesenseSensor(o: SensorOptions): VirtualSensor {
  let reference: number | null = null;
  const sensor = fresh();
  const peripheral: VirtualPeripheral = new VirtualPeripheral({
    address: o.address,
    advertisement: Buffer.concat([FLAGS, adStructure(0x03, Buffer.from([0xf3, 0xfd]))]),
    scanResponse: named(o.name ?? 'Movesense 000000000000'),
    maxMtu: 158,
    services: [
      {
        uuid: MOVESENSE.service,
        characteristics: [
          {
            uuid: MOVESENSE.write,
            write: (v) => {
              if (v[0] !== 1 || v.subarray(2).toString() !== '/Meas/IMU6/104') return;
              reference = v[1] ?? 0;
              peripheral.notify(MOVESENSE.notify, Uint8Array.of(1, reference, 200, 0));
            },
          },
          { uuid: MOVESENSE.notify, notify: true },
        ],
      },
      battery(o.battery ?? 64),
    ],
  });
  const signal = o.signal ?? numbered;
  let block: (readonly number[])[] = [];
  let stamp = 0;
  readings(
    peripheral,
    () => 104,
    o.ppm ?? 0,
    (k, ms) => {
      if (block.length === 0) stamp = Math.floor(ms);
      block.push(signal(k));
      if (block.length < 8) return;
      const acc = block.map((c) => c.slice(0, 3).map((v) => (v / 32768) * 8 * 9.80665));
      const gyro = block.map((c) => c.slice(3).map((v) => (v / 32768) * 2000));
      block = [];
      if (
        reference === null ||
        sensor.mute ||
        peripheral.gatt.subscribed(MOVESENSE.notify) === null
      )
        return;
      sensor.sent += 1;
      const payload = imu6(stamp, acc, gyro);
      peripheral.notify(MOVESENSE.notify, concat([2, reference], payload.subarray(0, 153)));
      peripheral.notify(MOVESENSE.notify, concat([3, reference], payload.subarray(153)));
    },
  );
  return Object.assign(sensor, { peripheral });
}
