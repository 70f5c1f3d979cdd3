// stoprocent/noble#12: the second device's first connect hangs for 40 s.
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { Bench, wishFor } from '../sensors/sources/ble/bench.ts';
import { nobleIsInstalled } from '../virtual-radio/install.ts';
import { openProfileSensor } from '../virtual-radio/sensors.ts';

describe.skipIf(!nobleIsInstalled())('a second sensor whose first connect hangs', () => {
  let bench: Bench;
  beforeEach(() => {
    bench = new Bench();
  });
  afterEach(() => bench.end());

  it('is connected by the second try, while the first sensor streams without loss', async () => {
    const [first, second] = [1, 2].map((i) =>
      openProfileSensor({ address: `c0:00:00:00:00:0${i}` }),
    );
    if (!first || !second) throw new Error('two sensors');
    [first, second].forEach((s) => bench.radio.add(s.peripheral));
    bench.central.take({ type: 'want', wishes: [wishFor(first)] });
    await bench.until(() => bench.state(first) === 'streaming', 5);
    second.peripheral.ignoresConnects = 1;
    setTimeout(() => (second.peripheral.ignoresConnects = 0), 11_000);
    bench.central.take({ type: 'want', wishes: [first, second].map((s) => wishFor(s)) });
    const took = await bench.until(() => bench.state(second) === 'streaming', 60);
    expect(took).toBeLessThan(20);
    await bench.run(5);
    const sequences = bench
      .packets(first)
      .map((m) => new DataView(m.bytes.buffer).getUint16(2, true));
    expect(sequences).toEqual(sequences.map((_, i) => i));
  });
});
