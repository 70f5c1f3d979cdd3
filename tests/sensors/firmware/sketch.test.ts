import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  decodeOpenProfileClock,
  decodeOpenProfileInfo,
  openProfileDecoder,
} from '../../../src/sensors/decode/openProfile.ts';
import type { Packet } from '../../../src/sensors/decode/packet.ts';
import { hex } from '../decode/bytes.ts';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));
const hasCompiler = spawnSync('g++', ['--version']).status === 0;
const U32 = 2 ** 32;

// The board is made of stand-ins (board.cpp): this shows what the sketch does, not what a real core or radio would.
describe.skipIf(!hasCompiler)('the sketch on a board of stand-ins', () => {
  let folder: string;
  let lines: string[];
  const run = (argument: string): string[] =>
    execFileSync(join(folder, 'board'), [argument], { encoding: 'utf8' }).trim().split('\n');
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'stillcatch-'));
    const include = ['-I', here('stubs'), '-I', here('../../../firmware-notes/stillcatch_sensor')];
    const flags = ['-std=gnu++14', '-Wall', '-Wextra', '-Werror', '-fsanitize=undefined'];
    execFileSync('g++', [...flags, ...include, here('board.cpp'), '-o', join(folder, 'board')]);
    // the clock wraps two seconds after the start
    lines = run(`${U32 - 2_000_000}`);
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  const told = (word: string): string => {
    const line = lines.find((l) => l.startsWith(`${word} `)) ?? '';
    return line.slice(word.length + 1);
  };
  const info = () => decodeOpenProfileInfo(hex(told('info')));
  const packets = (): Packet[] => {
    const decoder = openProfileDecoder(info());
    return lines
      .filter((l) => l.startsWith('notify '))
      .flatMap((l) => decoder.decode(null, hex(l.slice(7))));
  };

  it('offers the profile: service, name, characteristics, interval', () => {
    const uuid = (n: number): string => `ac3c000${n}-b1a3-4ef3-a73a-d8143168e58a`;
    expect(told('service')).toBe(uuid(1));
    expect(told('name')).toBe('Stillcatch sensor');
    expect(lines.filter((l) => l.startsWith('offers')).map((l) => l.slice(7))).toEqual(
      [2, 3, 4, 5].map(uuid),
    );
    expect(told('interval')).toBe('6 12');
    expect(lines).toContain('advertises');
  });

  it('sets the IMU to 104 Hz, 16 g, 2000 deg/s, whole readings, and says the full scales of those', () => {
    // LSM6DS3 data sheet: CTRL1_XL ODR 0100 FS 01, CTRL2_G ODR 0100 FS 11, CTRL3_C BDU and IF_INC
    expect(told('registers')).toBe('44 4c 44');
    expect(info()).toMatchObject({
      rateHz: 104,
      fullScale: { accG: 15.991, gyroDegPerS: 2293.76 },
    });
  });

  it('sends each reading once, in order, gyro and accelerometer where they belong, to the ends of the range', () => {
    const { fullScale } = info();
    const readings = packets().flatMap((p) => p.readings);
    const g = (v: number): number => Math.round((v / 9.80665 / fullScale.accG) * 32768);
    const dps = (v: number): number =>
      Math.round(((v * 180) / Math.PI / fullScale.gyroDegPerS) * 32768);
    expect(readings.length).toBeGreaterThan(104 * 6.5);
    const first = dps(readings[0]?.gyro.x ?? 0);
    const stop = lines.indexOf('stopped');
    const beforeStop = lines.slice(0, stop).filter((l) => l.startsWith('notify')).length;
    for (const [i, { acc, gyro, saturated }] of readings.slice(0, beforeStop).entries()) {
      const k = first + i;
      expect([g(acc.x), g(acc.y), g(acc.z)]).toEqual([2 * k, -2 * k, -32768]);
      expect([dps(gyro.x), dps(gyro.y), dps(gyro.z)]).toEqual([k, -k, 32767]);
      expect(saturated).toBe(true);
    }
  });

  it('stamps them evenly, over the wrap of its clock', () => {
    const ticks = packets().map((p) => p.ticks ?? 0);
    const steps = ticks.slice(1).map((t, i) => (t - (ticks[i] ?? 0) + U32) % U32);
    expect(Math.min(...ticks)).toBeLessThan(ticks[0] ?? 0);
    for (const step of steps.filter((s) => s < 500_000))
      expect(Math.abs(step - 9615)).toBeLessThan(150);
  });

  it('counts packets that are made while it is stopped, and sends none', () => {
    const [stop, start] = [lines.indexOf('stopped'), lines.indexOf('started')];
    expect(lines.slice(stop, start).filter((l) => l.startsWith('notify'))).toEqual([]);
    const sequences = packets().map((p) => p.sequence ?? 0);
    const jumps = sequences.slice(1).map((s, i) => s - (sequences[i] ?? 0));
    expect(jumps.filter((j) => j !== 1)).toEqual([expect.closeTo(104, -1)]);
  });

  it('tells its clock as it stands when it is asked', () => {
    expect(decodeOpenProfileClock(hex(told('clock')))).toBe(Number(told('asked')));
  });

  it('blinks as often as it is asked to, and leaves the light off', () => {
    expect(told('blinked')).toBe('6, led 0');
  });

  it('flashes twice, again and again, where the IMU does not answer', () => {
    expect(run('no-imu')[0]).toMatch(/^flashes (8|10) in 1\d{4} ms$/);
  });
});
