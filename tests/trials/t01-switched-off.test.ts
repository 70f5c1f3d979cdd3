// noble/noble#522: connecting to a sensor that was switched off never returns.
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { Bench, wishFor } from '../sensors/sources/ble/bench.ts';
import { nobleIsInstalled } from '../virtual-radio/install.ts';
import { openProfileSensor } from '../virtual-radio/sensors.ts';

describe.skipIf(!nobleIsInstalled())(
  'a sensor that goes off between being seen and connected',
  () => {
    let bench: Bench;
    beforeEach(() => {
      bench = new Bench();
    });
    afterEach(() => bench.end());

    it('is given up after 10 s, tried again later, and the other sensor loses nothing', async () => {
      const good = openProfileSensor({ address: 'c0:00:00:00:00:01' });
      const off = openProfileSensor({ address: 'c0:00:00:00:00:02' });
      off.peripheral.ignoresConnects = 1;
      [good, off].forEach((s) => bench.radio.add(s.peripheral));
      bench.central.take({ type: 'want', wishes: [wishFor(good)] });
      await bench.until(() => bench.state(good) === 'streaming', 5);
      bench.central.take({ type: 'want', wishes: [wishFor(good), wishFor(off)] });
      await bench.until(() => bench.state(off) === 'connecting', 5);
      const took = await bench.until(() => bench.state(off) !== 'connecting', 30);
      expect(took).toBeGreaterThan(9.9);
      expect(took).toBeLessThan(12);
      expect(bench.radio.log.filter((l) => l === 'cancel')).toHaveLength(1);
      const told = bench.of('link').findLast((m) => m.id === 'c00000000002');
      expect(told?.reason).toMatch(/No answer within 10 s/);
      off.peripheral.ignoresConnects = 0;
      await bench.until(() => bench.state(off) === 'streaming', 10);
      expect([bench.state(good), bench.state(off)]).toEqual(['streaming', 'streaming']);
      await bench.run(0.05);
      expect(bench.packets(good).length).toBeGreaterThanOrEqual(good.sent - 2);
      expect(good.peripheral.droppedByDevice).toBe(0);
    });
  },
);
