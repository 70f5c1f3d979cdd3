import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { NoblePeripheral } from '../../../../src/sensors/sources/ble/nobleApi.ts';
import type { StreamSetup } from '../../../../src/sensors/sources/ble/drivers/driver.ts';
import { driverOf } from '../../../../src/sensors/sources/ble/drivers/drivers.ts';
import { decodeOpenProfileInfo } from '../../../../src/sensors/decode/openProfile.ts';
import { nobleIsInstalled } from '../../../virtual-radio/install.ts';
import {
  movesenseSensor,
  openProfileSensor,
  type VirtualSensor,
  witMotionSensor,
} from '../../../virtual-radio/sensors.ts';
import { Bench, idOf, wishFor } from './bench.ts';

describe.skipIf(!nobleIsInstalled())('the client on the real Bluetooth stack', () => {
  let bench: Bench;
  beforeEach(() => {
    bench = new Bench();
  });
  afterEach(() => bench.end());

  it('lists the sensors around with kind, name and signal, and nothing else', async () => {
    const sensors = [
      openProfileSensor({ address: 'c0:00:00:00:00:01', name: 'Left one' }),
      witMotionSensor({ address: 'c0:00:00:00:00:02' }),
      movesenseSensor({ address: 'c0:00:00:00:00:03' }),
    ];
    sensors.forEach((s) => bench.radio.add(s.peripheral));
    bench.central.take({ type: 'scan', on: true });
    await bench.run(3);
    const seen = new Map(bench.of('seen').map((m) => [m.id, [m.driver, m.name, m.rssiDbm]]));
    expect(Object.fromEntries(seen)).toEqual({
      c00000000001: ['openProfile', 'Left one', -60],
      c00000000002: ['witMotion', 'WT901BLE68', -60],
      c00000000003: ['movesense', 'Movesense 000000000000', -60],
    });
    // told often enough to follow, not with each advertisement
    expect(bench.of('seen').length).toBeLessThan(3 * 9);
    await bench.run(45);
    expect(bench.radio.log.filter((l) => l === 'scan').length).toBe(3);
    bench.central.take({ type: 'scan', on: false });
    await bench.run(0.1);
    expect(bench.radio.scanning).toBe(false);
  });

  it('brings one up: searching, found, connecting, preparing, streaming; then scans no more', async () => {
    const sensor = openProfileSensor({ address: 'c0:00:00:00:00:01' });
    bench.radio.add(sensor.peripheral);
    bench.central.take({ type: 'want', wishes: [wishFor(sensor)] });
    await bench.until(() => bench.state(sensor) === 'streaming', 5);
    expect(bench.states(sensor)).toEqual([
      'searching',
      'found',
      'connecting',
      'preparing',
      'streaming',
    ]);
    await bench.run(2);
    expect(bench.radio.scanning).toBe(false);
    expect(bench.of('battery')).toMatchObject([{ pct: 87 }]);
    expect(bench.of('rssi')[0]).toMatchObject({ rssiDbm: -60 });
    expect(bench.packets(sensor).length).toBe(sensor.sent);
  });

  it('asks a sensor for its time, at uneven times, and one that cannot tell it no more than once', async () => {
    const [one, other] = [
      openProfileSensor({ address: 'c0:00:00:00:00:01', rateHz: 100, ppm: 30 }),
      openProfileSensor({ address: 'c0:00:00:00:00:02', tellsClock: false }),
    ];
    for (const s of [one, other]) bench.radio.add(s.peripheral);
    bench.radio.faults.loss = 0.1;
    bench.central.take({ type: 'want', wishes: [wishFor(one), wishFor(other)] });
    await bench.run(15);
    const answers = bench.of('clock');
    expect(answers.length).toBeGreaterThan(40);
    expect(new Set(answers.map((a) => a.id))).toEqual(new Set(['c00000000001']));
    const sent = answers.slice(30).map((a) => a.sentMs);
    const pauses = sent.slice(1).map((s, i) => s - (sent[i] ?? 0));
    expect(Math.max(...pauses) - Math.min(...pauses)).toBeGreaterThan(80);
    // the device answers after the question left, soon, and now and then at once
    const waitsMs = answers.map((a) => a.ticks / 1000 - a.sentMs);
    const soonest = Math.min(...waitsMs);
    expect(Math.max(...waitsMs) - soonest).toBeLessThan(150);
    expect(waitsMs.filter((w) => w - soonest < 3).length).toBeGreaterThan(3);
    expect(bench.packets(one).length).toBe(one.sent - one.peripheral.outbox.length);
    expect(bench.packets(other).length).toBe(other.sent - other.peripheral.outbox.length);
  });

  it.each([
    ['openProfile', openProfileSensor, 104],
    ['witMotion', witMotionSensor, 100],
    ['movesense', movesenseSensor, 104],
  ] as const)('%s streams at its rate, every notification once', async (driver, make, rateHz) => {
    const sensor = make({ address: 'c0:00:00:00:00:01' });
    bench.radio.add(sensor.peripheral);
    bench.central.take({ type: 'want', wishes: [wishFor(sensor, driver)] });
    await bench.until(() => bench.state(sensor) === 'streaming', 5);
    const decoder = driverOf(driver).decoder(bench.of('setup')[0]?.setup as StreamSetup);
    const before = bench.packets(sensor).length;
    await bench.run(10);
    const state = decoder.create();
    const packets = bench.packets(sensor);
    const numbers = packets
      .flatMap((m) => decoder.decode(state, m.bytes))
      .flatMap((p) => p.readings.map((r) => r.acc.x));
    const steps = numbers.slice(1).map((v, i) => v - (numbers[i] ?? 0));
    expect(Math.max(...steps) / Math.min(...steps)).toBeCloseTo(1, 3);
    const perPacket = numbers.length / packets.length;
    expect(Math.abs((packets.length - before) * perPacket - 10 * rateHz)).toBeLessThan(17);
  });

  it('asks for a supervision time of 4 s and an interval that does not beat with the packets', async () => {
    const sensor = witMotionSensor({ address: 'c0:00:00:00:00:02' });
    bench.radio.add(sensor.peripheral);
    bench.central.take({ type: 'want', wishes: [wishFor(sensor, 'witMotion')] });
    await bench.until(() => bench.state(sensor) === 'streaming', 5);
    expect(bench.radio.settings(sensor.peripheral)).toEqual({
      intervalMs: 11.25,
      latency: 0,
      supervisionMs: 4000,
    });
  });

  it('starts a sensor that somebody stopped, on a link that carries 20 bytes and no more', async () => {
    const sensor = openProfileSensor({ address: 'c0:00:00:00:00:01', maxMtu: 23, stopped: true });
    bench.radio.add(sensor.peripheral);
    bench.central.take({ type: 'want', wishes: [wishFor(sensor)] });
    await bench.until(() => bench.state(sensor) === 'streaming', 5);
    await bench.run(1);
    const info = bench.of('setup')[0]?.setup.info;
    expect(info && decodeOpenProfileInfo(info)).toMatchObject({ rateHz: 104, firmware: ' 1.0' });
    expect(bench.packets(sensor).length).toBeGreaterThan(90);
    expect(bench.packets(sensor).every((m) => m.bytes.length === 20)).toBe(true);
  });

  it('makes a sensor blink', async () => {
    const sensor = openProfileSensor({ address: 'c0:00:00:00:00:01' });
    bench.radio.add(sensor.peripheral);
    bench.central.take({ type: 'want', wishes: [wishFor(sensor)] });
    await bench.until(() => bench.state(sensor) === 'streaming', 5);
    bench.central.take({ type: 'identify', id: 'c00000000001' });
    await bench.run(0.5);
    expect(sensor.identified).toBe(1);
  });

  it('lets go of a sensor that nobody wants any more', async () => {
    const sensor = openProfileSensor({ address: 'c0:00:00:00:00:01' });
    bench.radio.add(sensor.peripheral);
    bench.central.take({ type: 'want', wishes: [wishFor(sensor)] });
    await bench.until(() => bench.state(sensor) === 'streaming', 5);
    bench.central.take({ type: 'want', wishes: [] });
    await bench.run(1);
    expect([bench.state(sensor), bench.radio.links]).toEqual(['ended', 0]);
  });

  it('a link that ends while it is being prepared is told at once and made anew', async () => {
    const sensor = openProfileSensor({ address: 'c0:00:00:00:00:01' });
    bench.radio.add(sensor.peripheral);
    bench.central.take({ type: 'want', wishes: [wishFor(sensor)] });
    for (const waitS of [0.01, 0.05, 0.1, 0.15]) {
      await bench.until(() => bench.state(sensor) === 'preparing', 10);
      await bench.run(waitS);
      expect(bench.state(sensor)).toBe('preparing');
      bench.radio.drop(sensor.peripheral);
      await bench.run(0.001);
      expect(['retrying', 'searching']).toContain(bench.state(sensor));
    }
    await bench.until(() => bench.state(sensor) === 'streaming', 10);
    await bench.run(1);
    expect(bench.packets(sensor).length).toBe(sensor.sent - sensor.peripheral.outbox.length);
  });

  it.each([
    ['answers nothing', Infinity, 5],
    ['takes its time for each answer', 1200, 12],
  ])('a sensor that %s while it is being prepared is given up', async (_what, afterMs, limitS) => {
    const sensor = openProfileSensor({ address: 'c0:00:00:00:00:01' });
    bench.radio.add(sensor.peripheral);
    bench.central.take({ type: 'want', wishes: [wishFor(sensor)] });
    sensor.peripheral.answersAfterMs = afterMs;
    await bench.until(() => bench.state(sensor) === 'preparing', 5);
    const took = await bench.until(() => bench.state(sensor) !== 'preparing', 30);
    expect(Math.abs(took - limitS)).toBeLessThan(0.2);
    expect(bench.of('link').at(-1)?.reason).toMatch(/stopped responding during setup/);
    sensor.peripheral.answersAfterMs = 0;
    await bench.until(() => bench.state(sensor) === 'streaming', 10);
    expect([bench.state(sensor), bench.radio.links]).toEqual(['streaming', 1]);
  });

  it('connects only what was seen a moment ago', async () => {
    const [one, other] = [1, 2].map((i) =>
      openProfileSensor({ address: `c0:00:00:00:00:0${i}` }),
    ) as [VirtualSensor, VirtualSensor];
    for (const s of [one, other]) bench.radio.add(s.peripheral);
    const seen = new Map<string, NoblePeripheral>();
    bench.noble.on('discover', (p: NoblePeripheral) => seen.set(p.id, p));
    bench.central.take({ type: 'scan', on: true });
    await bench.until(() => seen.size === 2, 2);
    bench.central.take({ type: 'scan', on: false });
    one.peripheral.ignoresConnects = 1;
    other.peripheral.power(false);
    bench.central.take({ type: 'want', wishes: [one, other].map((s) => wishFor(s)) });
    await bench.until(() => bench.state(one) === 'connecting', 5);
    bench.noble.emit('discover', seen.get(idOf(other)));
    expect(bench.state(other)).toBe('found');
    await bench.until(() => bench.state(one) !== 'connecting', 15);
    one.peripheral.ignoresConnects = 0;
    await bench.until(() => bench.state(one) === 'streaming', 10);
    await bench.run(1);
    expect(bench.state(other)).toBe('searching');
    expect(bench.radio.log).not.toContain(`connect ${other.peripheral.address}`);
  });

  it('hangs up a connection that was made at the moment it was called off', async () => {
    const sensor = openProfileSensor({ address: 'c0:00:00:00:00:01' });
    bench.radio.add(sensor.peripheral);
    bench.radio.faults.connectsOnCancel = true;
    sensor.peripheral.ignoresConnects = 1;
    bench.central.take({ type: 'want', wishes: [wishFor(sensor)] });
    await bench.until(() => bench.state(sensor) === 'connecting', 5);
    await bench.until(() => bench.state(sensor) !== 'connecting', 15);
    expect(bench.radio.links).toBe(0);
    sensor.peripheral.ignoresConnects = 0;
    await bench.until(() => bench.state(sensor) === 'streaming', 10);
    expect([bench.state(sensor), bench.radio.links]).toEqual(['streaming', 1]);
  });

  it('goes on, later, with an adapter that never confirms the start or end of a search', async () => {
    const sensor = openProfileSensor({ address: 'c0:00:00:00:00:01' });
    bench.radio.add(sensor.peripheral);
    bench.radio.faults.confirmsNoScan = true;
    bench.central.take({ type: 'want', wishes: [wishFor(sensor)] });
    await bench.until(() => bench.state(sensor) === 'streaming', 10);
    expect(bench.state(sensor)).toBe('streaming');
  });

  it('says that a device lacks the services, and does not hang', async () => {
    const impostor = witMotionSensor({ address: 'c0:00:00:00:00:01' });
    bench.radio.add(impostor.peripheral);
    bench.central.take({ type: 'want', wishes: [wishFor(impostor, 'movesense')] });
    await bench.until(() => bench.state(impostor) === 'retrying', 10);
    expect(bench.of('link').at(-1)?.reason).toMatch(/does not offer the services/);
  });

  it('when the adapter goes, says that all links are lost, and asks for a fresh start when it is back', async () => {
    const sensors = [1, 2].map((i) => openProfileSensor({ address: `c0:00:00:00:00:0${i}` }));
    sensors.forEach((s) => bench.radio.add(s.peripheral));
    bench.central.take({ type: 'want', wishes: sensors.map((s) => wishFor(s)) });
    await bench.until(() => sensors.every((s) => bench.state(s) === 'streaming'), 10);
    bench.radio.power(false);
    await bench.run(2);
    expect(sensors.map((s) => bench.state(s))).toEqual(['lost', 'lost']);
    expect(bench.of('adapter').at(-1)?.problem).toBe('adapter-off');
    bench.radio.power(true);
    await bench.run(3);
    expect(bench.of('startMeAgain')).toHaveLength(1);
    bench.restart(sensors.map((s) => wishFor(s)));
    await bench.until(() => sensors.every((s) => bench.state(s) === 'streaming'), 10);
    expect(sensors.map((s) => bench.state(s))).toEqual(['streaming', 'streaming']);
  });

  it('notices a link that stays up without data', async () => {
    const sensor = openProfileSensor({ address: 'c0:00:00:00:00:01' });
    bench.radio.add(sensor.peripheral);
    bench.central.take({ type: 'want', wishes: [wishFor(sensor)] });
    await bench.until(() => bench.state(sensor) === 'streaming', 5);
    sensor.mute = true;
    await bench.until(() => bench.state(sensor) !== 'streaming', 5);
    expect(bench.of('link').at(-1)?.reason).toMatch(/no data for 2 s/);
    sensor.mute = false;
    await bench.until(() => bench.state(sensor) === 'streaming', 5);
    expect(bench.state(sensor)).toBe('streaming');
  });

  it('a sensor switched off and on at once is waited for until its old link has ended, and comes back', async () => {
    const sensor = openProfileSensor({ address: 'c0:00:00:00:00:01' });
    bench.radio.add(sensor.peripheral);
    bench.central.take({ type: 'want', wishes: [wishFor(sensor)] });
    await bench.until(() => bench.state(sensor) === 'streaming', 5);
    sensor.peripheral.power(false);
    await bench.run(0.5);
    sensor.peripheral.power(true);
    await bench.until(() => bench.state(sensor) !== 'streaming', 5);
    expect(await bench.until(() => bench.state(sensor) === 'streaming', 10)).toBeLessThan(3);
    expect(bench.of('startMeAgain')).toHaveLength(0);
    expect(bench.radio.log.filter((l) => l.startsWith('connect'))).toHaveLength(2);
    await bench.run(5);
    expect(bench.state(sensor)).toBe('streaming');
    expect(bench.of('link').filter((m) => m.state === 'lost')).toHaveLength(1);
  });

  it('finds its sensors when Bluetooth is switched on after the search began', async () => {
    const sensor = openProfileSensor({ address: 'c0:00:00:00:00:01' });
    bench.radio.add(sensor.peripheral);
    bench.radio.write = () => undefined;
    bench.central.take({ type: 'want', wishes: [wishFor(sensor)] });
    bench.noble.emit('stateChange', 'poweredOff');
    expect(bench.of('link').at(-1)).toMatchObject({ state: 'lost' });
    Reflect.deleteProperty(bench.radio, 'write');
    bench.radio.power(false);
    await bench.run(2);
    bench.radio.power(true);
    await bench.until(() => bench.state(sensor) === 'streaming', 10);
    expect(bench.state(sensor)).toBe('streaming');
    expect(bench.of('startMeAgain')).toHaveLength(0);
  });

  it('a wish withdrawn while the search is being stopped asks for no connection', async () => {
    const sensor = openProfileSensor({ address: 'c0:00:00:00:00:01' });
    bench.radio.add(sensor.peripheral);
    bench.central.take({ type: 'want', wishes: [wishFor(sensor)] });
    for (let i = 0; i < 2000 && bench.state(sensor) !== 'found'; i++) await bench.run(0.001);
    bench.central.take({ type: 'want', wishes: [] });
    await bench.run(2);
    expect(bench.states(sensor)).toEqual(['searching', 'found', 'ended']);
    expect(bench.radio.log.filter((l) => l.startsWith('connect'))).toEqual([]);
  });

  it('stops only when a connection that was being made is called off', async () => {
    const sensor = openProfileSensor({ address: 'c0:00:00:00:00:01' });
    sensor.peripheral.ignoresConnects = 1;
    bench.radio.add(sensor.peripheral);
    bench.central.take({ type: 'want', wishes: [wishFor(sensor)] });
    await bench.until(() => bench.state(sensor) === 'connecting', 5);
    await bench.run(0.1);
    let stopped = false;
    void bench.central.stop().then(() => (stopped = true));
    await vi.advanceTimersByTimeAsync(0);
    expect(stopped).toBe(false);
    await bench.run(0.05);
    expect(stopped).toBe(true);
    expect(bench.radio.log.at(-1)).toBe('cancel');
  });

  it('asks an adapter that never tells the signal strength no more than once', async () => {
    const sensor = openProfileSensor({ address: 'c0:00:00:00:00:01' });
    bench.radio.add(sensor.peripheral);
    bench.radio.faults.tellsNoRssi = true;
    let peripheral: NoblePeripheral | undefined;
    bench.noble.on('discover', (p: NoblePeripheral) => (peripheral = p));
    bench.central.take({ type: 'want', wishes: [wishFor(sensor)] });
    await bench.until(() => bench.state(sensor) === 'streaming', 5);
    await bench.run(120);
    expect(peripheral?.listenerCount('rssiUpdate')).toBe(1);
    expect(bench.state(sensor)).toBe('streaming');
  });

  it('leaves most of the air to a sensor that streams while another stays away, and finds that one later', async () => {
    const [here, away] = [1, 2].map((i) =>
      openProfileSensor({ address: `c0:00:00:00:00:0${i}` }),
    ) as [VirtualSensor, VirtualSensor];
    for (const s of [here, away]) bench.radio.add(s.peripheral);
    away.peripheral.power(false);
    bench.central.take({ type: 'want', wishes: [here, away].map((s) => wishFor(s)) });
    await bench.until(() => bench.state(here) === 'streaming', 5);
    const searched = async (seconds: number): Promise<number> => {
      let on = 0;
      for (let i = 0; i < 10 * seconds; i++) {
        await bench.run(0.1);
        if (bench.radio.scanning) on += 1;
      }
      return on / (10 * seconds);
    };
    // one that was just lost is looked for all the time
    expect(await searched(8)).toBeGreaterThan(0.9);
    await bench.run(5);
    expect(await searched(24)).toBeLessThan(0.5);
    away.peripheral.power(true);
    expect(await bench.until(() => bench.state(away) === 'streaming', 20)).toBeLessThan(6);
  });

  it('closes the links that a killed process left in the adapter, so that sensors can be found again', async () => {
    const sensor = openProfileSensor({ address: 'c0:00:00:00:00:01' });
    bench.radio.add(sensor.peripheral);
    bench.central.take({ type: 'want', wishes: [wishFor(sensor)] });
    await bench.until(() => bench.state(sensor) === 'streaming', 5);
    const handles = bench.of('handle').flatMap((m) => m.handle ?? []);
    expect(handles).toHaveLength(1);
    bench.kill();
    expect(bench.radio.links).toBe(1);
    bench.revive();
    bench.central.take({ type: 'hangUp', handles });
    bench.central.take({ type: 'want', wishes: [wishFor(sensor)] });
    expect(await bench.until(() => bench.state(sensor) === 'streaming', 10)).toBeLessThan(3);
  });

  it('says so when the adapter never answers', async () => {
    bench.radio.up = true;
    bench.radio.write = () => undefined;
    await bench.run(6);
    expect(bench.of('adapter')).toMatchObject([{ problem: 'no-answer' }]);
  });
});
