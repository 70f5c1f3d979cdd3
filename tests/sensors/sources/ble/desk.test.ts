import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type Assignment, BleSource } from '../../../../src/sensors/sources/ble/bleSource.ts';
import { SensorDesk } from '../../../../src/sensors/sources/ble/desk.ts';
import { monotonicMs } from '../../../../src/sensors/sources/ble/messages.ts';
import { Pairings } from '../../../../src/sensors/sources/ble/pairings.ts';
import { Radio } from '../../../../src/sensors/sources/ble/radio.ts';
import { nobleIsInstalled } from '../../../virtual-radio/install.ts';
import { inRoom, type Room } from '../../../virtual-radio/room.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'stillcatch-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const until = async (done: () => boolean, seconds = 15): Promise<void> => {
  const end = performance.now() + seconds * 1000;
  while (!done()) {
    if (performance.now() > end) throw new Error('waited too long');
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
};

const chest = { role: 'chest', sensor: { id: 'a', driver: 'openProfile', name: 'A' } } as const;
const arm = { role: 'trailArm', sensor: { id: 'b', driver: 'witMotion', name: 'B' } } as const;

describe('who is worn where', () => {
  const file = (): string => join(folder, 'deep', 'sensors.json');

  it('is remembered', () => {
    new Pairings(file()).set([chest, arm]);
    expect(new Pairings(file()).all).toEqual([chest, arm]);
    expect(JSON.parse(readFileSync(file(), 'utf8'))).toMatchObject({ schema: 1 });
  });

  it.each(['', '{', '[]', '{"pairings":7}', '{"pairings":[{"role":"head","sensor":{}}]}'])(
    'a spoilt file (%s) is as if empty',
    (text) => {
      const spoilt = join(folder, 'sensors.json');
      writeFileSync(spoilt, text);
      expect(new Pairings(spoilt).all).toEqual([]);
    },
  );
});

describe.skipIf(!nobleIsInstalled())('the sensors page over the radio', () => {
  const room = (shaken: number | null): Room => ({
    sensors: [1, 2, 3].map((i) => ({
      kind: 'openProfile',
      address: `c0:00:00:00:00:0${i}`,
      name: `Sensor ${i}`,
      motion: i === shaken ? 'tapped' : 'still',
    })),
  });
  let radio: Radio;
  let changes: (readonly Assignment[])[];
  const desk = (shaken: number | null): SensorDesk => {
    radio = new Radio(monotonicMs, inRoom(room(shaken), join(folder, 'lock')));
    changes = [];
    const pairings = new Pairings(join(folder, 'sensors.json'));
    return new SensorDesk(radio, pairings, monotonicMs, (all) => changes.push(all));
  };
  afterEach(() => radio.stop());

  it('connects those around, draws them, and lets go when the page is left', async () => {
    const d = desk(null);
    d.obey({ type: 'open' });
    await until(() => d.view.sensors.filter((s) => s.state === 'streaming').length === 3);
    await until(() => d.view.sensors.every((s) => s.trace.length === 100 && s.measuredRateHz));
    expect(d.view).toMatchObject({ problem: null, searching: true, shaken: null, tapFor: null });
    expect(d.view.sensors[0]).toMatchObject({
      name: 'Sensor 1',
      kind: 'Open-profile sensor',
      role: null,
      canBlink: true,
      nominalRateHz: 104,
    });
    d.obey({ type: 'close' });
    await until(() => radio.status.links.length === 0);
  });

  it('gives a place to the sensor that is tapped, and keeps it', async () => {
    const d = desk(2);
    d.obey({ type: 'open' });
    await until(() => d.view.shaken === 'c00000000002');
    d.obey({ type: 'assign-by-tap', role: 'chest' });
    await until(() => d.view.sensors.some((s) => s.role === 'chest'));
    expect(d.view.sensors[0]).toMatchObject({ id: 'c00000000002', role: 'chest' });
    expect(changes.at(-1)).toMatchObject([{ role: 'chest', sensor: { id: 'c00000000002' } }]);
    expect(new Pairings(join(folder, 'sensors.json')).all).toEqual(changes.at(-1));
  });

  it('one place, one sensor: assigning anew, swapping, forgetting', async () => {
    const d = desk(null);
    d.obey({ type: 'open' });
    await until(() => d.view.sensors.length === 3);
    const roles = (): unknown => d.view.sensors.map((s) => [s.id.at(-1), s.role]);
    d.obey({ type: 'assign', id: 'c00000000001', role: 'chest' });
    d.obey({ type: 'assign', id: 'c00000000002', role: 'trailArm' });
    d.obey({ type: 'assign', id: 'c00000000003', role: 'chest' });
    expect(roles()).toEqual([
      ['3', 'chest'],
      ['2', 'trailArm'],
      ['1', null],
    ]);
    d.obey({ type: 'swap' });
    expect(roles()).toEqual([
      ['2', 'chest'],
      ['3', 'trailArm'],
      ['1', null],
    ]);
    d.obey({ type: 'forget', id: 'c00000000003' });
    expect(roles()).toEqual([
      ['2', 'chest'],
      ['1', null],
      ['3', null],
    ]);
    expect(d.obey({ type: 'assign', id: 'nobody', role: 'club' })).toMatch(/no longer available/);
  });

  it('a practice that waits for sensors begins with those chosen on the page', async () => {
    const d = desk(null);
    const source = new BleSource(radio, [], monotonicMs);
    let samples = 0;
    const reasons: (string | null)[] = [];
    source.start({
      samples: (batch) => (samples += batch.length),
      event: () => undefined,
      link: (l) => reasons.push(l.reason),
      end: () => undefined,
    });
    expect(reasons[0]).toMatch(/Open Sensors/);
    d.obey({ type: 'open' });
    await until(() => d.view.sensors.length === 3);
    d.obey({ type: 'assign', id: 'c00000000001', role: 'chest' });
    d.obey({ type: 'assign', id: 'c00000000002', role: 'trailArm' });
    source.assign(changes.at(-1) ?? []);
    await until(() => samples > 200);
    expect(d.view).toMatchObject({ recording: true, searching: false });
    await source.stop();
    await until(() => d.view.searching);
  });

  it('asks for both sensors before it checks their clocks', () => {
    const d = desk(null);
    d.obey({ type: 'open' });
    expect(d.obey({ type: 'sync' })).toMatch(/Both sensors/);
  });
});
