// cleanflight/cleanflight#1467: the gyro clips at full scale and nobody is told.
import { describe, expect, it } from 'vitest';
import { createStream, streamHealth, takePacket } from '../../src/sensors/clock/stream.ts';
import { openProfileDecoder } from '../../src/sensors/decode/openProfile.ts';
import { openPacket } from '../sensors/decode/bytes.ts';

const decoder = openProfileDecoder({
  rateHz: 104,
  fullScale: { accG: 16, gyroDegPerS: 2000 },
  role: 0,
  hardware: '',
  firmware: '',
});

/** Raw gyro counts of a turn whose peak would be 2600 deg/s, as the converter cuts it. */
const clipped = (k: number): number =>
  Math.max(-32768, Math.min(32767, Math.round((2600 / 2000) * 32768 * Math.sin(k / 8))));

describe('a gyro at the end of its range', () => {
  it('is known from the raw counts, sample by sample', () => {
    const stream = createStream('trailArm', decoder.format);
    const samples = Array.from({ length: 208 }, (_, k) =>
      decoder
        .decode(
          null,
          openPacket({ sequence: k, us: k * 9615, counts: [[0, 0, 2048, clipped(k), 0, 0]] }),
        )
        .flatMap((packet) => takePacket(stream, packet, k / 104)),
    ).flat();
    const truth = samples.map((_, k) => Math.abs(2600 * Math.sin(k / 8)) >= 2000);
    expect(samples.map((s) => s.saturated)).toEqual(truth);
    expect(streamHealth(stream, 2).saturated).toBe(truth.filter(Boolean).length);
  });

  it('just below the end is not', () => {
    const [packet] = decoder.decode(
      null,
      openPacket({ sequence: 0, us: 0, counts: [[0, 0, 0, 32700, -32700, 0]] }),
    );
    expect(packet?.readings[0]?.saturated).toBe(false);
  });
});
