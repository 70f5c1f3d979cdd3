import { readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { AnalysisInput } from '../../src/analysis/contract.ts';
import type { ImuSample, SensorRole } from '../../src/sensors/sample.ts';
import { SESSION_EVENT_TYPES } from '../../src/sensors/sessionEvent.ts';
import { openSession } from '../../src/sessions/openSession.ts';
import type { NewSession } from '../../src/sessions/write/descriptors.ts';
import { createSessionWriter, writeSession } from '../../src/sessions/write/sessionWriter.ts';
import { zipSession } from '../../src/sessions/write/zipSession.ts';
import { readAll, scratch } from './makeSession.ts';

const HEADER: NewSession = {
  subject: '01',
  session: '20260301T1000',
  hand: 'left',
  startedAt: '2026-03-01T10:00:00',
  simulated: true,
  tracks: { chest: { samplingHz: 100, device: 'Board 7' }, trailArm: { samplingHz: 104 } },
};

const fixed = (decimals: number, range: number) =>
  fc
    .integer({ min: -Math.round(range * 10 ** decimals), max: Math.round(range * 10 ** decimals) })
    .map((n) => Number((n / 10 ** decimals).toFixed(decimals)) + 0);

/** At rest but for what the property adds, so that the border lets it in. */
const reading = (sensor: SensorRole, k: number, hz: number): ImuSample => ({
  sensor,
  timeS: Number((k / hz + (sensor === 'chest' ? 0 : 0.003)).toFixed(6)),
  acc: { x: 0.1, y: -0.2, z: 9.80123 },
  gyro: { x: 0.001, y: -0.002, z: 0.000123 },
  deviceTimeS: Number((k / hz + 2).toFixed(6)),
  arrivalTimeS: null,
  saturated: false,
});

const vec = (decimals: number, range: number) =>
  fc.record({ x: fixed(decimals, range), y: fixed(decimals, range), z: fixed(decimals, range) });

const session = fc.record({
  accs: fc.array(vec(5, 150), { minLength: 1, maxLength: 20 }),
  gyros: fc.array(vec(6, 34), { minLength: 1, maxLength: 20 }),
  events: fc.array(
    fc.record({
      type: fc.constantFrom(...SESSION_EVENT_TYPES.filter((t) => t !== 'pain')),
      onsetS: fixed(6, 2).map(Math.abs),
      durationS: fixed(6, 2).map(Math.abs),
      value: fc.constant(null),
    }),
    { maxLength: 6 },
  ),
});

describe('A session that was written', () => {
  it('is read back sample by sample and event by event', async () => {
    await fc.assert(
      fc.asyncProperty(session, async ({ accs, gyros, events }) => {
        const samples = [...Array(400).keys()].flatMap((k) => [
          reading('chest', k, 100),
          reading('trailArm', k, 100),
        ]);
        accs.forEach((acc, k) => (samples[700 + k] = { ...(samples[700 + k] as ImuSample), acc }));
        gyros.forEach(
          (gyro, k) => (samples[700 + k] = { ...(samples[700 + k] as ImuSample), gyro }),
        );
        const folder = scratch();
        await writeSession(folder, HEADER, [
          events.map((event): AnalysisInput => ({ kind: 'event', event })),
          samples.map((sample): AnalysisInput => ({ kind: 'sample', sample })),
        ]);
        const { inputs } = await readAll(folder);
        expect(inputs.flatMap((i) => (i.kind === 'sample' ? [i.sample] : []))).toEqual(samples);
        const back = inputs.flatMap((i) => (i.kind === 'event' ? [i.event] : []));
        expect(back).toHaveLength(events.length);
        expect(back).toEqual(expect.arrayContaining(events));
      }),
      { numRuns: 25 },
    );
  });

  it('says the same of itself from its zip', async () => {
    const folder = scratch();
    const inputs = [...Array(300).keys()].flatMap((k): AnalysisInput[] => [
      { kind: 'sample', sample: reading('chest', k, 100) },
      { kind: 'sample', sample: reading('trailArm', k, 100) },
    ]);
    await writeSession(folder, HEADER, [inputs]);
    const zips = [join(scratch(), 'a.zip'), join(scratch(), 'b.zip')] as const;
    for (const zip of zips) await zipSession(folder, zip);
    expect(readFileSync(zips[0]).equals(readFileSync(zips[1]))).toBe(true);
    const [a, b] = [await openSession(folder), await openSession(zips[0])];
    expect(b.header).toEqual(a.header);
    expect(a.header).toMatchObject({
      id: 'sub-01_ses-20260301T1000',
      hand: 'left',
      startedAt: '2026-03-01T10:00:00',
      simulated: true,
      tracks: { chest: { samplingHz: 100, device: 'Board 7', accFullScaleG: 16 } },
    });
    expect((await readAll(zips[0])).inputs).toEqual((await readAll(folder)).inputs);
    await a.close();
    await b.close();
  });

  it('is readable while it is being written, without its torn last line', async () => {
    const folder = scratch();
    const writer = await createSessionWriter(folder, HEADER, { flushEveryMs: 0 });
    for (let k = 0; k < 200; k++)
      for (const sensor of ['chest', 'trailArm'] as const) writer.sample(reading(sensor, k, 100));
    await writer.flush();
    expect((await readAll(folder)).inputs).toHaveLength(400);
    const motion = join(folder, 'sub-01/ses-20260301T1000/motion');
    const chest = readdirSync(motion).find((f) => f.endsWith('chest_motion.tsv')) as string;
    writeFileSync(join(motion, chest), '2.000000\t0.1000', { flag: 'a' });
    expect((await readAll(folder)).inputs).toHaveLength(400);
    await writer.close();
  });

  it('is never written over another', async () => {
    const folder = scratch();
    await (await createSessionWriter(folder, HEADER)).close();
    await expect(createSessionWriter(folder, HEADER)).rejects.toMatchObject({ code: 'exists' });
  });

  it('takes labels of letters and digits only', async () => {
    await expect(
      createSessionWriter(scratch(), { ...HEADER, subject: '../x' }),
    ).rejects.toMatchObject({ code: 'bad-field' });
  });
});
