import { describe, expect, it } from 'vitest';
import {
  decodeOpenProfileClock,
  decodeOpenProfileInfo,
  openProfileDecoder,
  type OpenProfileInfo,
} from '../../../src/sensors/decode/openProfile.ts';
import { hex } from './bytes.ts';

const INFO: OpenProfileInfo = {
  rateHz: 104,
  fullScale: { accG: 16, gyroDegPerS: 2000 },
  role: 0,
  hardware: 'board',
  firmware: '1',
};

describe('the clock of the open profile', () => {
  it('is four bytes of microseconds', () => {
    expect(decodeOpenProfileClock(hex('40 42 0f 00'))).toBe(1_000_000);
    expect(decodeOpenProfileClock(hex('ff ff ff ff'))).toBe(2 ** 32 - 1);
    expect(() => decodeOpenProfileClock(hex('01 02 03'))).toThrow('3 bytes');
  });
});

describe('a packet of the open profile', () => {
  const decoder = openProfileDecoder(INFO);

  it('of one sample is 20 bytes: the default link carries it', () => {
    const bytes = hex('01 01 34 12  40 42 0f 00  00 08 00 f8 00 00  00 40 00 c0 01 00');
    expect(bytes).toHaveLength(20);
    const [packet] = decoder.decode(null, bytes);
    expect(packet).toMatchObject({ sequence: 0x1234, ticks: 1_000_000 });
    const [reading] = packet?.readings ?? [];
    // 0x0800 / 32768 x 16 g = 1 g; 0x4000 / 32768 x 2000 deg/s = 1000 deg/s
    expect(reading?.acc.x).toBeCloseTo(9.80665, 9);
    expect(reading?.acc.y).toBeCloseTo(-9.80665, 9);
    expect(reading?.gyro.x).toBeCloseTo((1000 * Math.PI) / 180, 9);
    expect(reading?.gyro.y).toBeCloseTo((-1000 * Math.PI) / 180, 9);
    expect(reading?.gyro.z).toBeCloseTo((2000 / 32768 / 180) * Math.PI, 12);
    expect(reading?.saturated).toBe(false);
  });

  it('of nineteen samples is 236 bytes and keeps their order', () => {
    const sample = (i: number): string =>
      `${i.toString(16).padStart(2, '0')}00 0000 0000 000000000000`;
    const bytes = hex(
      `01 13 0000 00000000 ${Array.from({ length: 19 }, (_, i) => sample(i)).join('')}`,
    );
    expect(bytes).toHaveLength(236);
    const [packet] = decoder.decode(null, bytes);
    const counts = packet?.readings.map((r) => Math.round((r.acc.x / 9.80665 / 16) * 32768));
    expect(counts).toEqual(Array.from({ length: 19 }, (_, i) => i));
  });

  it.each([
    ['nothing', '', 'length'],
    ['a header only', '01 01 0000 00000000', 'length'],
    ['another version', '02 01 0000 00000000 000000000000 000000000000', 'version'],
    ['no sample', '01 00 0000 00000000', 'count'],
    ['a byte too few', '01 01 0000 00000000 000000000000 0000000000', 'length'],
    ['a byte too many', '01 01 0000 00000000 000000000000 00000000000000', 'length'],
  ])('with %s is refused', (_what, text, code) => {
    expect(() => decoder.decode(null, hex(text))).toThrow(
      expect.objectContaining({ name: 'PacketError', code }),
    );
  });
});

describe('the info characteristic', () => {
  it('tells rate, full scales, role, hardware and firmware', () => {
    // 104.00 Hz, 15990.784 mg would be 15991: the value of 32768 counts at 0.488 mg each; 2293.760 deg/s at 70 mdps.
    const bytes = hex('01 02 a0 28 77 3e 00 00 00 00 23 00 62 6f 61 72 64 00 31 2e 30');
    expect(decodeOpenProfileInfo(bytes)).toEqual({
      rateHz: 104,
      fullScale: { accG: 15.991, gyroDegPerS: 2293.76 },
      role: 2,
      hardware: 'board',
      firmware: '1.0',
    });
  });

  it.each([
    ['too short', '01 00 a028', 'length'],
    ['of another version', '07 00 a028 773e0000 00002300', 'version'],
    ['with a rate of zero', '01 00 0000 773e0000 00002300', 'value'],
    ['with a full scale of zero', '01 00 a028 00000000 00002300', 'value'],
  ])('%s is refused', (_what, text, code) => {
    expect(() => decodeOpenProfileInfo(hex(text))).toThrow(
      expect.objectContaining({ name: 'PacketError', code }),
    );
  });
});
