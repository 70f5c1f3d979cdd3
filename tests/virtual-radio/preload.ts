// Preloaded into the radio's process: the room described by VIRTUAL_RADIO takes the place of the HCI socket.
import { createConnection } from 'node:net';
import { decodeReading, READING_BYTES } from './body.ts';
import { VirtualRadio } from './controller.ts';
import { liveFaster } from './faster.ts';
import { useRadio } from './install.ts';
import type { Room } from './room.ts';
import {
  movesenseSensor,
  openProfileSensor,
  type Signal,
  type VirtualSensor,
  witMotionSensor,
} from './sensors.ts';

const MAKE = {
  openProfile: openProfileSensor,
  witMotion: witMotionSensor,
  movesense: movesenseSensor,
};

/** 2048 counts are 1 g. A tap each 0.7 s reads 3 g for two readings. */
const MOTION: Record<'still' | 'tapped', Signal> = {
  still: (k) => [0, 2048 + (k % 3), 0, k % 2, 0, 0],
  tapped: (k) => [0, k % 73 < 2 ? 6144 : 2048, 0, k % 73 < 8 ? 3000 : 0, 0, 0],
};

/** The body's readings, as they are taken, to the sensors that it wears. */
function wear(sensors: readonly VirtualSensor[], path: string): void {
  let rest = Buffer.alloc(0);
  const socket = createConnection(path);
  socket.on('error', () => undefined);
  socket.on('data', (bytes: Buffer) => {
    rest = Buffer.concat([rest, bytes]);
    const whole = rest.length - (rest.length % READING_BYTES);
    for (let at = 0; at < whole; at += READING_BYTES) {
      const { sensor, us, counts } = decodeReading(rest, at);
      sensors[sensor]?.take?.(us, counts);
    }
    rest = rest.subarray(whole);
  });
  socket.unref();
}

function furnish(room: Room): VirtualRadio {
  if (room.speed !== undefined) liveFaster(room.speed);
  const radio = new VirtualRadio(room.seed ?? 1);
  radio.faults.loss = room.loss ?? 0;
  const sensors = room.sensors.map(({ kind, motion, ...options }) =>
    MAKE[kind]({
      ...options,
      ...(motion ? { signal: MOTION[motion] } : { fed: room.body !== undefined }),
    }),
  );
  if (room.body !== undefined) wear(sensors, room.body);
  for (const s of sensors) radio.add(s.peripheral);
  for (const { atMs, sensor, action } of room.script ?? []) {
    const peripheral = sensors[sensor]?.peripheral;
    if (!peripheral) continue;
    setTimeout(() => {
      if (action === 'drop') radio.drop(peripheral);
      else peripheral.power(action === 'on');
    }, atMs);
  }
  return radio;
}

const text = process.env['VIRTUAL_RADIO'];
useRadio(text ? furnish(JSON.parse(text) as Room) : null);
