import { describe, expect, it } from 'vitest';
import {
  breakStream,
  createStream,
  streamHealth,
  takePacket,
} from '../../../src/sensors/clock/stream.ts';
import type { Packet, StreamFormat } from '../../../src/sensors/decode/packet.ts';
import { vec3 } from '../../../src/math/vec3.ts';

const OPEN: StreamFormat = {
  rateHz: 104,
  ticks: { perS: 1e6, modulus: 2 ** 32 },
  sequenceModulus: 2 ** 16,
};
const MOVESENSE: StreamFormat = {
  rateHz: 104,
  ticks: { perS: 1000, modulus: 2 ** 32 },
  sequenceModulus: null,
};
const COUNTED: StreamFormat = { rateHz: 100, ticks: null, sequenceModulus: null };

const readings = (n: number): Packet['readings'] =>
  Array.from({ length: n }, () => ({
    acc: vec3(0, 9.80665, 0),
    gyro: vec3(0, 0, 0),
    saturated: false,
  }));

describe('a stream of packets', () => {
  it('marks a loss from the counter as missing rows with a gap in time', () => {
    const stream = createStream('chest', OPEN);
    const times: number[] = [];
    for (let k = 0; k < 1040; k++) {
      if (k >= 500 && k < 520) continue;
      const packet = { readings: readings(1), sequence: k, ticks: Math.round((k * 1e6) / 104) };
      times.push(...takePacket(stream, packet, k / 104 + 0.004).map((s) => s.timeS));
    }
    const steps = times.slice(1).map((t, i) => t - (times[i] ?? 0));
    expect(Math.max(...steps)).toBeCloseTo(21 / 104, 4);
    expect(stream.lost).toBe(20);
    expect(streamHealth(stream, 10).lostPct).toBeCloseTo((100 * 20) / 1040, 6);
  });

  it('spreads the readings of a packet evenly, at the rate the device really runs', () => {
    const stream = createStream('chest', OPEN);
    const trueHz = 107;
    const times: number[] = [];
    for (let k = 0; k < 200; k++) {
      const ticks = Math.round((k * 19 * 1e6) / trueHz);
      const packet = { readings: readings(19), sequence: k, ticks };
      times.push(...takePacket(stream, packet, ((k + 1) * 19) / trueHz).map((s) => s.timeS));
    }
    const late = times.slice(-190);
    const steps = late.slice(1).map((t, i) => t - (late[i] ?? 0));
    for (const step of steps) expect(Math.abs(step * trueHz - 1)).toBeLessThan(0.02);
  });

  it('smooths stamps that are rounded to the millisecond', () => {
    const stream = createStream('chest', MOVESENSE);
    const times: number[] = [];
    for (let k = 0; k < 400; k++) {
      const packet = { readings: readings(8), sequence: null, ticks: Math.floor((k * 8000) / 104) };
      times.push(...takePacket(stream, packet, (k * 8 + 7) / 104 + 0.01).map((s) => s.timeS));
    }
    const late = times.slice(-800);
    const steps = late.slice(1).map((t, i) => t - (late[i] ?? 0));
    for (const step of steps) expect(Math.abs(step - 1 / 104)).toBeLessThan(0.0002);
    expect(stream.lost).toBe(0);
  });

  it('finds a loss in stamps where there is no counter', () => {
    const stream = createStream('chest', MOVESENSE);
    for (let k = 0; k < 50; k++) {
      if (k === 25) continue;
      const packet = { readings: readings(8), sequence: null, ticks: Math.floor((k * 8000) / 104) };
      takePacket(stream, packet, (k * 8) / 104);
    }
    expect(stream.lost).toBe(8);
  });

  it('takes a repeated packet once', () => {
    const stream = createStream('chest', OPEN);
    const packet = { readings: readings(1), sequence: 3, ticks: 77 };
    expect(takePacket(stream, packet, 1)).toHaveLength(1);
    expect(takePacket(stream, packet, 1.001)).toHaveLength(0);
  });

  it('goes on after a device restart without a step back and without inventing a loss', () => {
    const stream = createStream('chest', OPEN);
    const at = (k: number, us: number, arrivalS: number): number[] =>
      takePacket(stream, { readings: readings(1), sequence: k, ticks: us }, arrivalS).map(
        (s) => s.timeS,
      );
    const before = Array.from({ length: 2000 }, (_, k) => at(k, k * 9615, k * 0.009615)).flat();
    const after = Array.from({ length: 2000 }, (_, k) => at(k, k * 9615, 30 + k * 0.009615)).flat();
    expect(before.at(-1)).toBeCloseTo(19.22, 2);
    expect(after[0]).toBeCloseTo(30, 6);
    expect(after.at(-1)).toBeCloseTo(49.22, 2);
    expect(stream.lost).toBe(0);
  });

  it('without any clock jumps to the present after a broken link', () => {
    const stream = createStream('chest', COUNTED);
    const packet = { readings: readings(1), sequence: null, ticks: null };
    for (let k = 0; k < 1000; k++) takePacket(stream, packet, k * 0.01);
    breakStream(stream);
    const [sample] = takePacket(stream, packet, 17);
    expect(sample).toMatchObject({ timeS: 17, deviceTimeS: null, arrivalTimeS: 17 });
  });

  it('measures the rate that comes, and how old the last packet is', () => {
    const stream = createStream('trailArm', COUNTED);
    const packet = { readings: readings(1), sequence: null, ticks: null };
    expect(streamHealth(stream, 0)).toMatchObject({ measuredRateHz: null, lastPacketAgeS: null });
    for (let k = 0; k < 2000; k++) takePacket(stream, packet, k / 80);
    const health = streamHealth(stream, 25.5);
    expect(health.measuredRateHz).toBeCloseTo(80, 6);
    expect(health.nominalRateHz).toBe(100);
    expect(health.lastPacketAgeS).toBeCloseTo(25.5 - 1999 / 80, 9);
  });

  it('is plain data: cut and resumed from JSON it gives the same samples', () => {
    let cut = createStream('chest', OPEN);
    const whole = createStream('chest', OPEN);
    for (let k = 0; k < 300; k++) {
      cut = JSON.parse(JSON.stringify(cut)) as typeof cut;
      const packet = { readings: readings(2), sequence: k, ticks: k * 19231 };
      const arrivalS = k * 0.019231 + (k % 3) * 0.002;
      expect(takePacket(cut, packet, arrivalS)).toEqual(takePacket(whole, packet, arrivalS));
    }
  });
});
