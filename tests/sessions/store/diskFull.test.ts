import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { ImuSample, SensorRole } from '../../../src/sensors/sample.ts';
import { openStore } from '../../../src/sessions/store/store.ts';
import {
  type WriterStatus,
  createSessionWriter,
} from '../../../src/sessions/write/sessionWriter.ts';
import { readAll } from '../makeSession.ts';
import { smallDisk } from './smallDisk.ts';

const HEADER = { subject: '1', session: '1', hand: 'right', startedAt: null } as const;

const sample = (sensor: SensorRole, k: number): ImuSample => ({
  sensor,
  timeS: k / 100,
  acc: { x: 0.5, y: -0.25, z: 9.81 },
  gyro: { x: 0.001, y: -0.002, z: 0.003 },
  deviceTimeS: k / 100,
  arrivalTimeS: k / 100,
  saturated: false,
});

describe('A disk that is full', () => {
  it('stops neither the practice nor, once there is room, the recording: nothing is lost', async ({
    skip,
  }) => {
    const disk = smallDisk('size=400k') ?? skip('mounting a small disk needs root');
    const heard: WriterStatus[] = [];
    const writer = await createSessionWriter(join(disk, 's'), HEADER, {
      flushEveryMs: 0,
      onStatus: (status) => heard.push(status),
    });
    let count = 0;
    const write = (samples: number) => {
      for (let k = 0; k < samples; k++, count++)
        for (const sensor of ['chest', 'trailArm'] as const) writer.sample(sample(sensor, count));
    };
    write(1000);
    await writer.flush();
    expect(writer.status().ok).toBe(true);
    for (let k = 0; k < 5; k++) {
      write(1000);
      await writer.flush();
    }
    expect(heard).toMatchObject([{ ok: false, reason: 'the disk is full' }]);
    expect(writer.status().waitingBytes).toBeGreaterThan(100_000);
    await expect(writer.close()).rejects.toMatchObject({ code: 'write-failed' });
    const before = (await readAll(join(disk, 's'))).inputs;
    expect(before.length).toBeGreaterThan(2000);
    execFileSync('mount', ['-o', 'remount,size=4m', disk]);
    write(500);
    await writer.close();
    expect(heard).toMatchObject([{ ok: false }, { ok: true, reason: '' }]);
    const { inputs } = await readAll(join(disk, 's'));
    for (const sensor of ['chest', 'trailArm'] as const)
      expect(
        inputs.flatMap((i) =>
          i.kind === 'sample' && i.sample.sensor === sensor ? [i.sample] : [],
        ),
      ).toEqual(Array.from({ length: count }, (_, k) => sample(sensor, k)));
  });
});

describe('A disk that is read-only', () => {
  it('is said in words', async ({ skip }) => {
    const disk = smallDisk('size=400k,ro') ?? skip('mounting a small disk needs root');
    await expect(createSessionWriter(join(disk, 's'), HEADER)).rejects.toThrow(
      'the disk is read-only',
    );
    await expect(openStore(join(disk, 'data'))).rejects.toMatchObject({ code: 'write-failed' });
  });
});
