import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  decodeOpenProfileInfo,
  openProfileDecoder,
} from '../../../src/sensors/decode/openProfile.ts';
import { OPEN_PROFILE } from '../../../src/sensors/sources/ble/drivers/openProfileDriver.ts';
import { hex } from '../decode/bytes.ts';

const notes = fileURLToPath(new URL('../../../firmware-notes/', import.meta.url));
const source = fileURLToPath(new URL('./packets.cpp', import.meta.url));
const hasCompiler = spawnSync('g++', ['--version']).status === 0;
if (!hasCompiler) console.warn('Skipped: no g++ here, so the firmware header cannot be compiled.');

const FLAGS = [
  '-Wall',
  '-Wextra',
  '-Wconversion',
  '-Werror',
  '-I',
  join(notes, 'stillcatch_sensor'),
];
const i16 = (v: number): number => (v << 16) >> 16;

describe.skipIf(!hasCompiler)("the firmware's packet header", () => {
  let folder: string;
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'stillcatch-'));
    const output = join(folder, 'packets');
    execFileSync('g++', [
      '-std=c++11',
      ...FLAGS.filter((f) => f !== '-Wconversion'),
      source,
      '-o',
      output,
    ]);
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  const lines = (n: number, firstUs: number): string[] =>
    execFileSync(join(folder, 'packets'), [`${n}`, `${firstUs}`], { encoding: 'utf8' })
      .trim()
      .split('\n');

  it('is clean C99 and C++11', () => {
    const header = join(notes, 'stillcatch_sensor', 'stillcatch_packet.h');
    for (const language of [
      ['-x', 'c', '-std=c99'],
      ['-x', 'c++', '-std=c++11'],
    ])
      execFileSync(
        'g++',
        [...language, ...FLAGS, '-pedantic', '-fsyntax-only', '-include', header, '-'].filter(
          Boolean,
        ),
        { input: 'int main(void) { return 0; }\n' },
      );
  });

  it.each([1, 6, 19])(
    'with %i samples in a packet comes through the decoder as it went in',
    (n) => {
      const firstUs = 2 ** 32 - 500_000;
      const [info = '', ...rest] = lines(n, firstUs);
      const packets = rest.slice(0, -6).map(hex);
      const decoder = openProfileDecoder({
        ...decodeOpenProfileInfo(hex(info)),
        fullScale: { accG: 32768 / 9.80665, gyroDegPerS: (32768 * 180) / Math.PI },
      });
      const decoded = packets.flatMap((bytes) => decoder.decode(null, bytes));
      expect(decoded).toHaveLength(Math.floor(300 / n));
      decoded.forEach((packet, i) => {
        expect(packet.sequence).toBe(i);
        expect(packet.ticks).toBe((firstUs + i * n * 9615) % 2 ** 32);
      });
      const readings = decoded.flatMap((p) => p.readings);
      readings.forEach((r, k) => {
        const acc = [r.acc.x, r.acc.y, r.acc.z].map(Math.round);
        const gyro = [r.gyro.x, r.gyro.y, r.gyro.z].map(Math.round);
        expect(acc).toEqual([0, 1, 2].map((a) => i16(k * 211 + a * 7919) + 0));
        expect(gyro.map((v) => v + 0)).toEqual(
          [0, 1, 2].map((a) => i16(-k * 307 - a * 104729) + 0),
        );
      });
    },
  );

  it.each([1, 19])(
    'with %i samples keeps the ends of the range, over the end of its sequence',
    (n) => {
      const decoder = openProfileDecoder({
        ...decodeOpenProfileInfo(hex(lines(n, 0)[0] ?? '')),
        fullScale: { accG: 32768 / 9.80665, gyroDegPerS: (32768 * 180) / Math.PI },
      });
      const packets = lines(n, 0)
        .slice(-6, -2)
        .flatMap((line) => decoder.decode(null, hex(line)));
      expect(packets.map((p) => p.sequence)).toEqual([65_534, 65_535, 0, 1]);
      for (const { acc, gyro, saturated } of packets.flatMap((p) => p.readings)) {
        expect([acc.x, acc.y, acc.z].map(Math.round)).toEqual([-32_768, 32_767, -1]);
        expect([gyro.x, gyro.y, gyro.z].map(Math.round)).toEqual([0, 1, -32_767]);
        expect(saturated).toBe(true);
      }
    },
  );

  it('evens out times noticed up to 2.5 ms late, with readings missed and a rate 2 % off', () => {
    const late = (lines(1, 0).at(-2) ?? '').trim().split(' ').map(Number);
    expect(late.length).toBeGreaterThan(900);
    expect(Math.max(...late) - Math.min(...late)).toBeLessThan(900);
  });

  it('writes the info that the decoder reads', () => {
    expect(decodeOpenProfileInfo(hex(lines(1, 0)[0] ?? ''))).toEqual({
      role: 2,
      rateHz: 104,
      fullScale: { accG: 15.991, gyroDegPerS: 2293.76 },
      hardware: 'board',
      firmware: '1.0',
    });
  });

  it('chooses as many samples as the link carries', () => {
    expect(lines(1, 0).at(-1)?.trim()).toBe('1 3 14 19 19');
  });
});

describe('the profile', () => {
  it('has the same UUIDs in driver, header and text', () => {
    const header = readFileSync(join(notes, 'stillcatch_sensor', 'stillcatch_packet.h'), 'utf8');
    const text = readFileSync(join(notes, 'README.md'), 'utf8');
    for (const uuid of Object.values(OPEN_PROFILE)) {
      const dashed = uuid.replace(/^(.{8})(.{4})(.{4})(.{4})(.{12})$/, '$1-$2-$3-$4-$5');
      expect(header).toContain(dashed);
      expect(text).toContain(dashed);
    }
  });
});
