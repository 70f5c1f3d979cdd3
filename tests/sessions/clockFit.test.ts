import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import type { Answer } from '../../src/sensors/clock/asked.ts';
import { createClock, observePacket, sessionTime } from '../../src/sensors/clock/clock.ts';
import type { ImuSample, SensorRole } from '../../src/sensors/sample.ts';
import { streamSession } from '../../src/sensors/sources/synthetic/index.ts';
import { analyseSession } from '../../src/sessions/analyseSession.ts';
import { CLOCK_FITS_FILE, writeClockFits } from '../../src/sessions/clockFits.ts';
import { type OpenOptions, openSession } from '../../src/sessions/openSession.ts';
import { createSessionWriter } from '../../src/sessions/write/sessionWriter.ts';
import { type Link, answers, packets } from '../sensors/clock/links.ts';
import { readAll, scratch } from './makeSession.ts';
import { writeSimulated } from './simulated.ts';

const SIMULATED = { seed: 12, script: 'r b r', rateHz: 104 };
const ANSWERS = 'sourcedata/clockAnswers.tsv';

interface Kept extends Record<SensorRole, { readonly runs: readonly object[] }> {
  readonly description: string;
}

async function opened(folder: string, options: OpenOptions = {}) {
  const session = await openSession(folder, options);
  onTestFinished(() => session.close());
  return session;
}

async function simulatedFolder(): Promise<string> {
  const folder = join(scratch(), 'session');
  await writeSimulated(folder, SIMULATED);
  return folder;
}

describe('The final clock fit of a recording', () => {
  it('is kept with method, line and residual for each run of each sensor', async () => {
    const folder = await simulatedFolder();
    await writeClockFits(folder, await (await opened(folder)).clockFits());
    const kept = JSON.parse(readFileSync(join(folder, CLOCK_FITS_FILE), 'utf8')) as Kept;
    expect(kept.description).toMatch(/slope x device time \+ offsetS/);
    const number = expect.any(Number) as number;
    for (const role of ['chest', 'trailArm'] as const)
      expect(kept[role].runs).toEqual([
        {
          fromS: expect.closeTo(0, 1) as number,
          untilS: number,
          kind: 'stamped',
          method: expect.stringMatching(/^line under the earliest arrivals/) as string,
          slope: expect.closeTo(1, 4) as number,
          offsetS: number,
          residualMs: number,
          recordedOffMs: number,
          packets: number,
          answers: 0,
        },
      ]);
  });

  it('gives the times at which samples were truly taken, between the sensors to 1 ms', async () => {
    const folder = await simulatedFolder();
    const truth = new Map<SensorRole, number[]>([
      ['chest', []],
      ['trailArm', []],
    ]);
    for (const item of streamSession(SIMULATED))
      if (item.kind === 'packet')
        for (const s of item.packet.samples) truth.get(s.sensor)?.push(s.trueTimeS);
    const errors = new Map<SensorRole, number[]>();
    const session = await opened(folder, { clock: 'final' });
    for await (const batch of session.inputs())
      for (const input of batch) {
        if (input.kind !== 'sample') continue;
        const { sensor, timeS } = input.sample;
        const found = errors.get(sensor) ?? [];
        found.push(timeS - (truth.get(sensor)?.[found.length] ?? NaN));
        errors.set(sensor, found);
      }
    const [chest = [], arm = []] = [errors.get('chest'), errors.get('trailArm')];
    expect(chest).toHaveLength(truth.get('chest')?.length ?? NaN);
    const worst = Math.max(
      ...[...chest.keys()].map((i) => Math.abs((chest[i] ?? NaN) - (arm[i] ?? 0))),
    );
    expect(worst).toBeLessThan(0.001);
  });

  it('measures the same repetitions as the recorded times do', async () => {
    const folder = await simulatedFolder();
    const [recorded, final] = await Promise.all(
      (['recorded', 'final'] as const).map(async (clock) =>
        analyseSession(await opened(folder, { clock }), DEFAULT_PLAN),
      ),
    );
    const verdicts = (result: typeof final) =>
      result?.repetitions.map((r) => [r.kind, r.kind === 'rehearsal' && r.verdict.passed]);
    expect(verdicts(final)).toEqual(verdicts(recorded));
    expect(final).not.toEqual(recorded);
    expect(final?.repetitions[0]?.startS).toBeCloseTo(recorded?.repetitions[0]?.startS ?? NaN, 1);
  });
});

const LOCKED: Link = { rateHz: 100, intervalMs: 30, ppm: 20, seconds: 90, seed: 6, asked: true };

/** Two sensors at rest whose packets come in step with the connection; the chest's is asked for its time. */
async function record(folder: string, said: readonly Answer[]) {
  const writer = await createSessionWriter(
    folder,
    { subject: '1', session: '1', hand: 'right', startedAt: null },
    { flushEveryMs: 0 },
  );
  let next = 0;
  for (const sensor of ['chest', 'trailArm'] as const) {
    const clock = createClock();
    for (const p of packets({ ...LOCKED, seed: sensor === 'chest' ? LOCKED.seed : 9 })) {
      for (let a = said[next]; sensor === 'chest' && a && a.sentS < p.arrivalS; a = said[++next])
        writer.answer(sensor, a);
      observePacket(clock, p.deviceS, p.arrivalS);
      writer.sample(resting(sensor, sessionTime(clock, p.deviceS), p));
    }
  }
  return writer;
}

const resting = (
  sensor: SensorRole,
  timeS: number,
  p: { deviceS: number; arrivalS: number },
): ImuSample => ({
  sensor,
  timeS,
  acc: { x: 0.1, y: -0.2, z: 9.8 },
  gyro: { x: 0.001, y: -0.002, z: 0.0001 },
  deviceTimeS: p.deviceS,
  arrivalTimeS: p.arrivalS,
  saturated: false,
});

describe('What a sensor answered to questions for its time', () => {
  const said = [...answers(LOCKED)];

  it('is kept, and the fit with it can be redone from the recording alone', async () => {
    const folder = join(scratch(), 'session');
    const writer = await record(folder, said);
    await writer.close();
    const lines = readFileSync(join(folder, ANSWERS), 'utf8').trimEnd().split('\n');
    expect(lines[0]).toBe('sensor\tdevice_time\tsent_time');
    const kept = writer.clockFits();
    expect(kept.chest).toMatchObject([{ answers: lines.length - 1 }]);
    expect(kept.trailArm).toMatchObject([{ answers: 0 }]);
    expect(lines.length - 1).toBeGreaterThan(said.length - 5);
    const session = await opened(folder, { clock: 'final' });
    expect(await session.clockFits()).toEqual(kept);
    await analyseSession(session, DEFAULT_PLAN);
    const [chest] = kept.chest ?? [];
    expect(session.notes()[0]).toBe(
      `chest: times fitted anew over the whole recording, within ${chest?.residualMs.toFixed(1)} ms; 95 % of the recorded ones lay within ${chest?.movedMs.toFixed(1)} ms of them`,
    );
  });

  it('makes no file where nothing was asked', async () => {
    const folder = join(scratch(), 'session');
    await (await record(folder, [])).close();
    expect(existsSync(join(folder, ANSWERS))).toBe(false);
  });

  it('is read without its last line where that is torn', async () => {
    const folder = join(scratch(), 'session');
    await (await record(folder, said)).close();
    const path = join(folder, ANSWERS);
    writeFileSync(path, `${readFileSync(path, 'utf8')}chest\t12.`);
    await expect(opened(folder, { clock: 'final' })).resolves.toBeDefined();
  });

  it.each([
    ['chest\t12.5\tsoon\n', 'line 2, column 3: "soon" is not a number'],
    ['chest\t12.5\tn/a\n', 'line 2, column 3: a time is missing'],
    ['chest\t12.5\n', 'line 2, column 3: 2 columns where the header has 3'],
  ])('is refused with the place where it is broken: %j', async (row, where) => {
    const folder = join(scratch(), 'session');
    await (await record(folder, said)).close();
    writeFileSync(join(folder, ANSWERS), `sensor\tdevice_time\tsent_time\n${row}`);
    await expect(openSession(folder, { clock: 'final' })).rejects.toThrow(`${ANSWERS}, ${where}`);
    // as recorded it is not needed
    await readAll(folder);
  });
});
