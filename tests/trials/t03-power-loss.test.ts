// abandonware/noble#142: a sensor loses power, the disconnect is never confirmed, the state is stuck.
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { Bench, wishFor } from '../sensors/sources/ble/bench.ts';
import { nobleIsInstalled } from '../virtual-radio/install.ts';
import { openProfileSensor, type VirtualSensor } from '../virtual-radio/sensors.ts';

describe.skipIf(!nobleIsInstalled())('a sensor that loses power', () => {
  let bench: Bench;
  beforeEach(() => {
    bench = new Bench();
  });
  afterEach(() => bench.end());

  it('is told lost after 2 s and comes back by itself when it is on again', async () => {
    const sensor = openProfileSensor({ address: 'c0:00:00:00:00:01' });
    bench.radio.add(sensor.peripheral);
    bench.central.take({ type: 'want', wishes: [wishFor(sensor)] });
    await bench.until(() => bench.state(sensor) === 'streaming', 5);
    sensor.peripheral.power(false);
    expect(await bench.until(() => bench.state(sensor) !== 'streaming', 10)).toBeLessThan(2.6);
    await bench.run(30);
    expect(bench.state(sensor)).toBe('searching');
    expect(bench.of('link').at(-1)?.reason).toMatch(/Not found\. Is it on/);
    sensor.peripheral.power(true);
    expect(await bench.until(() => bench.state(sensor) === 'streaming', 10)).toBeLessThan(3);
  });

  it('whose end is never confirmed leads to a fresh radio stack, not to a stuck state', async () => {
    const sensor = openProfileSensor({ address: 'c0:00:00:00:00:01' });
    bench.radio.add(sensor.peripheral);
    bench.central.take({ type: 'want', wishes: [wishFor(sensor)] });
    await bench.until(() => bench.state(sensor) === 'streaming', 5);
    bench.radio.faults.ignoresDisconnects = 1;
    sensor.mute = true;
    await bench.until(() => bench.of('startMeAgain').length > 0, 10);
    expect(bench.of('startMeAgain')).toHaveLength(1);
    expect(['searching', 'retrying', 'found']).toContain(bench.state(sensor));
  });

  it('whose end is never confirmed takes nothing from another that streams', async () => {
    const [one, other] = [1, 2].map((i) =>
      openProfileSensor({ address: `c0:00:00:00:00:0${i}` }),
    ) as [VirtualSensor, VirtualSensor];
    for (const s of [one, other]) bench.radio.add(s.peripheral);
    bench.central.take({ type: 'want', wishes: [one, other].map((s) => wishFor(s)) });
    await bench.until(() => [one, other].every((s) => bench.state(s) === 'streaming'), 10);
    bench.radio.faults.ignoresDisconnects = 1;
    one.mute = true;
    await bench.run(20);
    expect(bench.of('startMeAgain')).toEqual([]);
    expect(bench.state(other)).toBe('streaming');
  });
});
