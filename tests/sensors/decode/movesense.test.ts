import { describe, expect, it } from 'vitest';
import { movesenseDecoder } from '../../../src/sensors/decode/movesense.ts';
import { concat, hex, imu6 } from './bytes.ts';

const decoder = movesenseDecoder(104);
const EIGHT = Array.from({ length: 8 }, (_, i) => i);
const PAYLOAD = imu6(
  3000,
  EIGHT.map((i) => [0.5 * i, -0.25, 9.75]),
  EIGHT.map((i) => [90, -i, 0.5]),
);

describe('IMU6 of Movesense GATT sensor data', () => {
  it('gives m/s^2 as sent and deg/s as rad/s (bytes by hand)', () => {
    // 3000 ms; acc 1, -2, 9.75; gyro 180, -90, 0.5 as IEEE 754 singles, little-endian
    const bytes = hex('02 07 b8 0b 00 00 0000803f 000000c0 00001c41 00003443 0000b4c2 0000003f');
    const [packet] = decoder.decode(decoder.create(), bytes);
    expect(packet?.ticks).toBe(3000);
    expect(packet?.readings).toHaveLength(1);
    expect(packet?.readings[0]).toMatchObject({ acc: { x: 1, y: -2, z: 9.75 }, saturated: false });
    expect(packet?.readings[0]?.gyro.x).toBeCloseTo(Math.PI, 6);
    expect(packet?.readings[0]?.gyro.y).toBeCloseTo(-Math.PI / 2, 6);
  });

  it('first all accelerations, then all rates', () => {
    const [packet] = decoder.decode(decoder.create(), concat([2, 7], PAYLOAD));
    expect(packet?.readings.map((r) => r.acc.x)).toEqual(EIGHT.map((i) => 0.5 * i));
    expect(packet?.readings.map((r) => Math.round((r.gyro.y / Math.PI) * 180) + 0)).toEqual(
      EIGHT.map((i) => -i + 0),
    );
  });

  it('comes in two parts where the link carries 155 bytes', () => {
    const state = decoder.create();
    expect(decoder.decode(state, concat([2, 7], PAYLOAD.subarray(0, 153)))).toEqual([]);
    const [packet] = decoder.decode(state, concat([3, 7], PAYLOAD.subarray(153)));
    expect(packet?.readings).toHaveLength(8);
    expect(packet?.readings[7]?.acc.x).toBe(3.5);
  });

  it('loses only the packet whose second part was lost', () => {
    const state = decoder.create();
    decoder.decode(state, concat([2, 7], PAYLOAD.subarray(0, 153)));
    expect(decoder.decode(state, concat([2, 7], PAYLOAD))).toHaveLength(1);
    expect(() => decoder.decode(state, concat([3, 7], PAYLOAD.subarray(153)))).toThrow(
      expect.objectContaining({ code: 'continuation' }),
    );
  });

  it('that never ends is refused before it grows, and the next is read', () => {
    const state = decoder.create();
    decoder.decode(state, concat([2, 7], new Uint8Array(150)));
    const more = (): unknown => decoder.decode(state, concat([3, 7], new Uint8Array(151)));
    expect(() => {
      for (let i = 0; i < 12; i++) more();
    }).toThrow(expect.objectContaining({ code: 'length' }));
    expect(decoder.decode(state, concat([2, 7], PAYLOAD))).toHaveLength(1);
  });

  it('tells a reading at the end of its range, 8 g or 2000 deg/s', () => {
    const clipped = (acc: number, gyro: number): unknown =>
      decoder.decode(decoder.create(), concat([2, 7], imu6(0, [[0, acc, 0]], [[gyro, 0, 0]])))[0]
        ?.readings[0]?.saturated;
    expect([clipped(78.45, 0), clipped(0, -2000), clipped(78, 1990)]).toEqual([true, true, false]);
  });

  it('answers to commands hold no motion', () => {
    expect(decoder.decode(decoder.create(), hex('01 07 00 c8'))).toEqual([]);
  });

  it.each([
    ['NaN', imu6(0, [[NaN, 0, 0]], [[0, 0, 0]]), 'value'],
    ['infinite', imu6(0, [[0, 0, 0]], [[0, Infinity, 0]]), 'value'],
    ['absurd', imu6(0, [[0, 0, 3e9]], [[0, 0, 0]]), 'value'],
  ])('%s values are refused', (_what, payload, code) => {
    expect(() => decoder.decode(decoder.create(), concat([2, 7], payload))).toThrow(
      expect.objectContaining({ name: 'PacketError', code }),
    );
  });
});
