// noble/noble#692: after the second disconnect each packet arrives twice.
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { NoblePeripheral } from '../../src/sensors/sources/ble/nobleApi.ts';
import { median } from '../../src/math/stats.ts';
import { Bench, wishFor } from '../sensors/sources/ble/bench.ts';
import { nobleIsInstalled } from '../virtual-radio/install.ts';
import { openProfileSensor } from '../virtual-radio/sensors.ts';

const listeners = (p: NoblePeripheral | undefined): number =>
  p?.eventNames().reduce((n, e) => n + p.listenerCount(e), 0) ?? 0;

describe.skipIf(!nobleIsInstalled())('reconnecting', () => {
  let bench: Bench;
  beforeEach(() => {
    bench = new Bench();
  });
  afterEach(() => bench.end());

  it('brings each packet once, with a constant number of listeners, within 3 s (median of 12)', async () => {
    const sensor = openProfileSensor({ address: 'c0:00:00:00:00:01' });
    bench.radio.add(sensor.peripheral);
    let peripheral: NoblePeripheral | undefined;
    bench.noble.on('discover', (p: NoblePeripheral) => (peripheral = p));
    bench.central.take({ type: 'want', wishes: [wishFor(sensor)] });
    await bench.until(() => bench.state(sensor) === 'streaming', 5);
    await bench.run(1);
    const before = listeners(peripheral);
    const timers = vi.getTimerCount();
    const times: number[] = [];
    for (let i = 0; i < 12; i++) {
      await bench.run(12);
      bench.radio.drop(sensor.peripheral);
      await bench.until(() => bench.state(sensor) !== 'streaming', 1);
      times.push(await bench.until(() => bench.state(sensor) === 'streaming', 20));
    }
    await bench.run(1);
    const sequences = bench
      .packets(sensor)
      .map((m) => new DataView(m.bytes.buffer).getUint16(2, true));
    expect(new Set(sequences).size).toBe(sequences.length);
    expect(sequences.length).toBeGreaterThan(12 * 12 * 100);
    expect(listeners(peripheral)).toBe(before);
    expect(vi.getTimerCount()).toBeLessThanOrEqual(timers + 2);
    console.log(
      `reconnect after a forced disconnect: median ${median(times)?.toFixed(2)} s, worst ${Math.max(...times).toFixed(2)} s`,
    );
    expect(median(times)).toBeLessThan(3);
  });
});
