// Preloaded into the radio's process: the room described by VIRTUAL_RADIO takes the place of the HCI socket.
import { VirtualRadio } from './controller.ts';
import { useRadio } from './install.ts';
import type { Room } from './room.ts';
import { movesenseSensor, openProfileSensor, type Signal, witMotionSensor } from './sensors.ts';

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

function furnish(room: Room): VirtualRadio {
  const radio = new VirtualRadio(room.seed ?? 1);
  radio.faults.loss = room.loss ?? 0;
  const sensors = room.sensors.map(({ kind, motion, ...options }) =>
    MAKE[kind](motion ? { ...options, signal: MOTION[motion] } : options),
  );
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
