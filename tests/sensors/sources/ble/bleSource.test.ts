import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Answer } from '../../../../src/sensors/clock/asked.ts';
import type { ImuSample, SensorRole } from '../../../../src/sensors/sample.ts';
import { BleSource } from '../../../../src/sensors/sources/ble/bleSource.ts';
import { monotonicMs } from '../../../../src/sensors/sources/ble/messages.ts';
import { Radio } from '../../../../src/sensors/sources/ble/radio.ts';
import type { RadioProcessOptions } from '../../../../src/sensors/sources/ble/radioProcess.ts';
import type { SensorLink, SensorSource } from '../../../../src/sensors/sources/source.ts';
import { nobleIsInstalled } from '../../../virtual-radio/install.ts';
import { inRoom, type Room, withoutNoble } from '../../../virtual-radio/room.ts';

const A = 'c0:00:00:00:00:01';
const B = 'c0:00:00:00:00:02';
const id = (address: string): string => address.replaceAll(':', '');
const TWO: Room = {
  sensors: [
    { kind: 'openProfile', address: A, ppm: 40 },
    { kind: 'openProfile', address: B, ppm: -30 },
  ],
  loss: 0.1,
};
const ASSIGNED = [
  { role: 'chest', sensor: { id: id(A), driver: 'openProfile', name: 'One' } },
  { role: 'trailArm', sensor: { id: id(B), driver: 'openProfile', name: 'Two' } },
] as const;

const until = async (done: () => boolean, seconds = 15): Promise<void> => {
  const end = performance.now() + seconds * 1000;
  while (!done()) {
    if (performance.now() > end) throw new Error('waited too long');
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
};

class Ear {
  readonly samples: ImuSample[] = [];
  readonly links: SensorLink[] = [];
  readonly answers: [SensorRole, Answer][] = [];
  ended = false;

  constructor(source: SensorSource) {
    source.start({
      samples: (batch) => this.samples.push(...batch),
      event: () => undefined,
      answer: (sensor, answer) => this.answers.push([sensor, answer]),
      link: (link) => this.links.push(link),
      end: () => (this.ended = true),
    });
  }

  of(role: SensorRole): ImuSample[] {
    return this.samples.filter((s) => s.sensor === role);
  }

  state(role: SensorRole): string | undefined {
    return this.links.findLast((l) => l.sensor === role)?.state;
  }

  both(state: string): boolean {
    return this.state('chest') === state && this.state('trailArm') === state;
  }
}

const rises = (samples: readonly ImuSample[]): boolean =>
  samples.every((s, i) => i === 0 || s.timeS > (samples[i - 1]?.timeS ?? Infinity));

describe.skipIf(!nobleIsInstalled())('sensors through the radio process', () => {
  let folder: string;
  const radios: Radio[] = [];
  const radioWith = (options: RadioProcessOptions): Radio => {
    const radio = new Radio(monotonicMs, options);
    radios.push(radio);
    return radio;
  };
  const lock = (): string => join(folder, 'lock');

  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'stillcatch-'));
  });
  afterEach(async () => {
    await Promise.all(radios.splice(0).map((r) => r.stop()));
    rmSync(folder, { recursive: true, force: true });
  });

  it('two sensors stream in session time, with battery, signal and health', async () => {
    const radio = radioWith(inRoom(TWO, lock()));
    const source = new BleSource(radio, ASSIGNED, monotonicMs);
    const ear = new Ear(source);
    await until(() => ear.of('chest').length > 250 && ear.of('trailArm').length > 250);
    expect(ear.links.at(-1)).toMatchObject({ state: 'streaming', batteryPct: 87, rssiDbm: -60 });
    expect(source.health()).toMatchObject({
      chest: { nominalRateHz: 104, lostPct: 0, malformed: 0 },
      trailArm: { nominalRateHz: 104, lostPct: 0, malformed: 0 },
    });
    for (const role of ['chest', 'trailArm'] as const) {
      const samples = ear.of(role);
      expect(rises(samples)).toBe(true);
      const late = samples.slice(-150);
      const spanS = (late.at(-1)?.timeS ?? 0) - (late[0]?.timeS ?? 0);
      expect(Math.abs(149 / spanS - 104)).toBeLessThan(2);
      // what the device answered when it was asked for its time is told for the recording, on the samples' clocks
      const answers = ear.answers.flatMap(([sensor, answer]) => (sensor === role ? [answer] : []));
      expect(answers.length).toBeGreaterThan(3);
      for (const { deviceS, sentS } of answers)
        expect(deviceS - sentS - ((late[0]?.deviceTimeS ?? 0) - (late[0]?.timeS ?? 0))).toSatisfy(
          (waitS: number) => waitS > -0.02 && waitS < 0.5,
        );
    }
    // while the service is busy packets wait, with the time at which they came
    const before = ear.of('chest').length;
    Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 700);
    await until(() => ear.of('chest').length > before + 90);
    const [lastS = 0, ...arrivals] = ear
      .of('chest')
      .slice(before - 1)
      .map((s) => s.arrivalTimeS ?? 0);
    expect(arrivals.filter((t) => t < lastS + 0.6).length).toBeGreaterThan(10);
    await source.stop();
  });

  it('killed with -9 in mid-session, it is back by itself; the source never ends and time never falls', async () => {
    const radio = radioWith(inRoom(TWO, lock()));
    const ear = new Ear(new BleSource(radio, ASSIGNED, monotonicMs));
    await until(() => ear.both('streaming') && ear.of('trailArm').length > 100);
    const before = ear.samples.length;
    process.kill(radio.pid ?? 0, 'SIGKILL');
    await until(() => ear.both('lost'));
    expect(radio.status.problem).toMatchObject({ code: 'crashed' });
    expect(radio.status.problem?.detail).toMatch(/SIGKILL/);
    await until(() => ear.both('streaming') && ear.samples.length > before + 300);
    expect(radio.status.problem).toBeNull();
    expect(ear.ended).toBe(false);
    expect([rises(ear.of('chest')), rises(ear.of('trailArm'))]).toEqual([true, true]);
  });

  it('a dropped link shows as a gap of the right length, nothing twice', async () => {
    const script = [{ atMs: 3000, sensor: 0, action: 'drop' as const }];
    const radio = radioWith(inRoom({ ...TWO, loss: 0, script }, lock()));
    const ear = new Ear(new BleSource(radio, ASSIGNED, monotonicMs));
    await until(() => ear.links.some((l) => l.state === 'lost'));
    await until(() => ear.both('streaming'));
    const count = ear.of('chest').length;
    await until(() => ear.of('chest').length > count + 100);
    const chest = ear.of('chest');
    const gaps = chest.flatMap((s, i) => {
      const before = chest[i - 1];
      if (!before || s.timeS - before.timeS < 0.05) return [];
      return [
        {
          session: s.timeS - before.timeS,
          device: (s.deviceTimeS ?? 0) - (before.deviceTimeS ?? 0),
        },
      ];
    });
    expect(gaps).toHaveLength(1);
    expect(Math.abs((gaps[0]?.session ?? 0) - (gaps[0]?.device ?? 1))).toBeLessThan(0.01);
    expect(new Set(chest.map((s) => s.deviceTimeS)).size).toBe(chest.length);
    const arm = ear.of('trailArm').map((s) => Math.round((s.acc.x / 9.80665 / 16) * 32768));
    expect(arm).toEqual(arm.map((_, i) => (arm[0] ?? 0) + i));
  });

  it('is not fought over by two services on one machine', async () => {
    const first = radioWith(inRoom(TWO, lock()));
    first.browse(true);
    await until(() => first.status.ready);
    const second = radioWith(inRoom(TWO, lock()));
    second.browse(true);
    await until(() => second.status.problem !== null);
    expect(second.status.problem).toMatchObject({ code: 'in-use' });
    expect(second.status.problem?.message).toMatch(/Another Stillcatch/);
    await first.stop();
    const third = radioWith(inRoom(TWO, lock()));
    third.browse(true);
    await until(() => third.status.ready && third.status.seen.length === 2);
  });

  it('is not searched for while a recording runs', async () => {
    const radio = radioWith(inRoom(TWO, lock()));
    const source = new BleSource(radio, ASSIGNED, monotonicMs);
    const ear = new Ear(source);
    expect(radio.browse(true)).toBe(false);
    await until(() => ear.both('streaming'));
    await source.stop();
    expect(radio.browse(true)).toBe(true);
  });

  it('says what is missing where there is no adapter', async () => {
    const radio = radioWith(inRoom(null, lock()));
    radio.browse(true);
    await until(() => radio.status.problem !== null);
    expect(radio.status.problem).toMatchObject({ code: 'no-adapter' });
    expect(radio.status.problem?.mend.length).toBeGreaterThan(1);
  });
});

describe('without the optional Bluetooth part', () => {
  it('says so and how to get it; nothing throws', async () => {
    const radio = new Radio(monotonicMs, withoutNoble(join(tmpdir(), `stillcatch-${process.pid}`)));
    radio.hold([ASSIGNED[0].sensor]);
    await until(() => radio.status.problem !== null);
    expect(radio.status.problem).toMatchObject({ code: 'noble-missing' });
    expect(radio.status.problem?.mend[0]?.run).toBe('npm install --include=optional');
    await radio.stop();
  });
});
