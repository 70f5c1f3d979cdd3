// noble/noble#223: scanning and connecting collide.
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { Bench, wishFor } from '../sensors/sources/ble/bench.ts';
import { nobleIsInstalled } from '../virtual-radio/install.ts';
import { openProfileSensor } from '../virtual-radio/sensors.ts';

describe.skipIf(!nobleIsInstalled())('an adapter that cannot scan and connect at once', () => {
  let bench: Bench;
  beforeEach(() => {
    bench = new Bench();
    bench.radio.faults.refusesConnectWhileScanning = true;
  });
  afterEach(() => bench.end());

  const three = () => [1, 2, 3].map((i) => openProfileSensor({ address: `c0:00:00:00:00:0${i}` }));

  it('sees scan, stop, connect, one by one', async () => {
    const sensors = three();
    sensors.forEach((s) => bench.radio.add(s.peripheral));
    bench.central.take({ type: 'scan', on: true });
    bench.central.take({ type: 'want', wishes: sensors.map((s) => wishFor(s)) });
    await bench.until(() => sensors.every((s) => bench.state(s) === 'streaming'), 20);
    expect(sensors.map((s) => bench.state(s))).toEqual(['streaming', 'streaming', 'streaming']);
    const { log } = bench.radio;
    const connects = log.flatMap((l, i) => (l.startsWith('connect') ? [i] : []));
    expect(connects).toHaveLength(3);
    expect(connects.map((i) => log[i - 1])).toEqual(['stop', 'stop', 'stop']);
  });

  it('that says "disallowed" is asked again, ever later', async () => {
    const sensors = three();
    sensors.forEach((s) => bench.radio.add(s.peripheral));
    bench.radio.faults.refusesConnects = 4;
    bench.central.take({ type: 'want', wishes: sensors.slice(0, 1).map((s) => wishFor(s)) });
    const [sensor] = sensors;
    await bench.until(() => sensor !== undefined && bench.state(sensor) === 'streaming', 20);
    const waits = bench.of('link').flatMap((m) => m.retryInMs ?? []);
    expect(waits).toEqual([0, 500, 1000, 2000]);
    expect(bench.of('link').find((m) => m.state === 'lost')?.reason).toMatch(
      /adapter is busy and refused/,
    );
  });
});
