// Preloaded into the radio's process: the room described by VIRTUAL_RADIO takes the place of the HCI socket.
import { VirtualRadio } from './controller.ts';
import { useRadio } from './install.ts';
import type { Room } from './room.ts';
import { movesenseSensor, openProfileSensor, witMotionSensor } from './sensors.ts';

const MAKE = {
  openProfile: openProfileSensor,
  witMotion: witMotionSensor,
  movesense: movesenseSensor,
};

function furnish(room: Room): VirtualRadio {
  const radio = new VirtualRadio(room.seed ?? 1);
  radio.faults.loss = room.loss ?? 0;
  const sensors = room.sensors.map(({ kind, ...options }) => MAKE[kind](options));
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
