import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { createStream, takePacket } from '../../../../src/sensors/clock/stream.ts';
import { driverOf } from '../../../../src/sensors/sources/ble/drivers/drivers.ts';
import type { Decoder } from '../../../../src/sensors/decode/packet.ts';
import { nobleIsInstalled } from '../../../virtual-radio/install.ts';
import { openProfileSensor, type VirtualSensor } from '../../../virtual-radio/sensors.ts';
import { Bench, idOf, wishFor } from './bench.ts';

const SECONDS = 600;

describe.skipIf(!nobleIsInstalled())('ten virtual minutes of two sensors at 104 Hz', () => {
  let bench: Bench;
  beforeEach(() => {
    bench = new Bench(7);
  });
  afterEach(() => bench.end());

  /** Counts and checks each packet as it comes, so that nothing is kept. */
  const follow = (sensor: VirtualSensor) => {
    const seen = { decoder: null as Decoder<unknown> | null, packets: 0, wrong: 0, lastS: -1 };
    let stream: ReturnType<typeof createStream> | null = null;
    const take = (bytes: Uint8Array, atMs: number): void => {
      if (!seen.decoder || !stream) return;
      for (const packet of seen.decoder.decode(null, bytes)) {
        if (packet.sequence !== seen.packets % 2 ** 16) seen.wrong += 1;
        seen.packets += 1;
        for (const s of takePacket(stream, packet, atMs / 1000)) {
          if (!(s.timeS > seen.lastS)) seen.wrong += 1;
          seen.lastS = s.timeS;
        }
      }
    };
    return {
      seen,
      id: idOf(sensor),
      take,
      begin: (decoder: Decoder<unknown>) => {
        seen.decoder = decoder;
        stream = createStream('chest', decoder.format);
      },
    };
  };

  it('with 10 % of connection events lost: nothing lost above the link, nothing twice, in order', async () => {
    const sensors = [
      openProfileSensor({ address: 'c0:00:00:00:00:01', ppm: 35 }),
      openProfileSensor({ address: 'c0:00:00:00:00:02', ppm: -42 }),
    ];
    sensors.forEach((s) => bench.radio.add(s.peripheral));
    bench.radio.faults.loss = 0.1;
    bench.keepPackets = false;
    const all = sensors.map(follow);
    bench.onMessage = (m) => {
      const one = 'id' in m ? all.find((f) => f.id === m.id) : undefined;
      if (m.type === 'setup') one?.begin(driverOf('openProfile').decoder(m.setup));
      if (m.type === 'packet') one?.take(m.bytes, m.atMs);
    };
    bench.central.take({ type: 'want', wishes: sensors.map((s) => wishFor(s)) });
    await bench.until(() => sensors.every((s) => bench.state(s) === 'streaming'), 20);
    await bench.run(SECONDS);
    bench.radio.faults.loss = 0;
    sensors.forEach((s) => (s.mute = true));
    await bench.run(1);
    expect(all.map((f) => f.seen.packets)).toEqual(sensors.map((s) => s.sent));
    expect(all.map((f) => f.seen.wrong)).toEqual([0, 0]);
    expect(sensors.map((s) => s.peripheral.droppedByDevice)).toEqual([0, 0]);
    expect(Math.min(...all.map((f) => f.seen.packets))).toBeGreaterThan(104 * SECONDS * 0.999);
    expect(bench.of('link').filter((m) => m.state === 'lost')).toHaveLength(0);
  });
});
