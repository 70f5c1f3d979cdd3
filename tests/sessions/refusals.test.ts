import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openSession, requireCalibration } from '../../src/sessions/openSession.ts';
import { SessionError } from '../../src/sessions/sessionError.ts';
import {
  CHANNELS,
  type FileTree,
  MOTION,
  STEM,
  readAll,
  refusalOf,
  restRows,
  scratch,
  soundFiles,
  tsv,
  writeTree,
} from './makeSession.ts';

/** The sound session with some files changed; `null` takes one away. */
function changed(change: Record<string, string | Buffer | null>): string {
  const files: FileTree = soundFiles();
  for (const [name, content] of Object.entries(change)) {
    if (content === null) delete files[name];
    else files[name] = content;
  }
  return writeTree(files);
}

const SIDECAR = `${STEM}_tracksys-chest_motion.json`;
const text = (name: string): string => String(soundFiles()[name]);
const withRow = (row: number, change: (cells: string[]) => string[]): string =>
  tsv(restRows().map((cells, k) => (k === row ? change(cells) : cells)));
const replaced = (cells: string[], at: number, cell: string): string[] =>
  cells.map((c, k) => (k === at ? cell : c));

describe('A sound session', () => {
  it('is read', async () => {
    const { inputs, notes } = await readAll(changed({}));
    expect(inputs).toHaveLength(604);
    expect(notes).toEqual([]);
  });
});

describe('What the official validator lets pass', () => {
  it.each([
    [
      'no TrackingSystemName',
      { [SIDECAR]: '{"TaskName":"t","SamplingFrequency":100}' },
      'missing-field',
      { file: SIDECAR },
    ],
    ['no motion.json', { [SIDECAR]: null }, 'missing-file', { file: SIDECAR }],
    ['no channels.tsv', { [CHANNELS]: null }, 'missing-file', { file: CHANNELS }],
    [
      'a header row',
      {
        [MOTION]: `time\tacc_x\tacc_y\tacc_z\tgyro_x\tgyro_y\tgyro_z\tdevice_time\tarrival_time\n${text(MOTION)}`,
      },
      'header-row',
      { file: MOTION, line: 1, column: 1 },
    ],
    [
      'a column too many',
      { [MOTION]: withRow(40, (cells) => [...cells, '1.0']) },
      'column-count',
      { file: MOTION, line: 41, column: 10 },
    ],
    [
      'a column too few',
      { [MOTION]: withRow(40, (cells) => cells.slice(0, 8)) },
      'column-count',
      { file: MOTION, line: 41, column: 8 },
    ],
    [
      'text among the numbers',
      { [MOTION]: withRow(123, (cells) => replaced(cells, 5, 'err')) },
      'not-a-number',
      { file: MOTION, line: 124, column: 6 },
    ],
  ])('is refused here: %s', async (_, change, code, place) => {
    const error = await refusalOf(changed(change));
    expect(error).toBeInstanceOf(SessionError);
    expect(error.code).toBe(code);
    expect(error.place).toEqual(place);
    expect(error.message).toContain(place.file);
  });
});

describe('A recording that is not what it says', () => {
  it.each([
    [
      'commas between columns',
      { [MOTION]: text(MOTION).replaceAll('\t', ',') },
      /tabs, not by commas/,
    ],
    [
      'decimal commas',
      { [MOTION]: text(MOTION).replaceAll('.', ',') },
      /line 1, column 1: "0,000000" is not a number: decimals need a point/,
    ],
    [
      'a binary file',
      { [MOTION]: Buffer.alloc(4000, 'a\0\x01\xff\n', 'latin1') },
      /not a text file/,
    ],
    ['one endless line', { [MOTION]: '1'.repeat(200_000) }, /a line without end/],
    ['a motion.tsv without rows', { [MOTION]: '' }, /holds no samples/],
    [
      'an unknown unit',
      { [CHANNELS]: text(CHANNELS).replace('rad/s', 'furlong') },
      /line 6, column 5: "furlong" is not a known unit of angular rate/,
    ],
    [
      'a missing channel',
      { [CHANNELS]: text(CHANNELS).replace('acc_y', 'accel_y') },
      /the channel acc_y is missing/,
    ],
    [
      'a channel twice',
      { [CHANNELS]: text(CHANNELS).replace('acc_y', 'acc_x') },
      /line 4, column 1: the channel "acc_x" appears twice/,
    ],
    [
      'no units column',
      { [CHANNELS]: text(CHANNELS).replace('units', 'unit') },
      /the column "units" is missing/,
    ],
    ['JSON that is none', { [SIDECAR]: '{"TaskName": }' }, /is not JSON/],
    ['an empty JSON file', { [SIDECAR]: '' }, /is empty/],
    [
      'a rate that is no number',
      { [SIDECAR]: '{"TrackingSystemName":"c","SamplingFrequency":"fast"}' },
      /SamplingFrequency must be a number/,
    ],
    ['no participants.tsv', { 'participants.tsv': null }, /participants.tsv: is missing/],
    [
      'no row for the subject',
      { 'participants.tsv': 'participant_id\thandedness\nsub-02\tleft\n' },
      /no row for sub-01/,
    ],
    [
      'both hands',
      { 'participants.tsv': 'participant_id\thandedness\nsub-01\tambidextrous\n' },
      /line 2, column 2: handedness is "ambidextrous"/,
    ],
    [
      'text for an onset',
      { [`${STEM}_events.tsv`]: 'onset\tduration\ttrial_type\nsoon\t1\tpause\n' },
      /line 2, column 1: "soon" is not a number/,
    ],
    [
      'pain of 11',
      { [`${STEM}_events.tsv`]: 'onset\tduration\ttrial_type\tvalue\n1\t0\tpain\t11\n' },
      /line 2, column 4: pain is rated from 0 to 10/,
    ],
    [
      'a clock that was started again',
      { [MOTION]: text(MOTION) + text(MOTION) },
      /line 301, column 1: time goes back/,
    ],
    [
      'milliseconds called seconds',
      { [MOTION]: tsv(restRows().map((c) => replaced(c, 0, String(Number(c[0]) * 1000)))) },
      /0.1 samples a second/,
    ],
    [
      'calendar time',
      { [MOTION]: tsv(restRows().map((c) => replaced(c, 0, String(Number(c[0]) + 1.77e9)))) },
      /calendar time/,
    ],
    ['ten samples a second', { [MOTION]: tsv(restRows(300, 10)) }, /at least 50/],
  ])('is refused: %s', async (_, change, message) => {
    const error = await refusalOf(changed(change));
    expect(error).toBeInstanceOf(SessionError);
    expect(error.message).toMatch(message);
  });

  it('is refused with one sensor only', async () => {
    const files = soundFiles();
    for (const name of Object.keys(files)) if (name.includes('trailArm')) delete files[name];
    const error = await refusalOf(writeTree(files));
    expect(error.code).toBe('one-sensor');
    expect(error.message).toMatch(/trail arm sensor is missing/);
  });

  it('is refused where a folder holds two of them', async () => {
    const files = soundFiles();
    for (const [name, content] of Object.entries(soundFiles()))
      if (name.startsWith('sub-')) files[name.replaceAll('sub-01', 'sub-02')] = content;
    expect((await refusalOf(writeTree(files))).code).toBe('several-sessions');
  });

  it('is refused where nothing is, or something else', async () => {
    expect((await refusalOf(join(scratch(), 'nothing'))).code).toBe('not-found');
    expect((await refusalOf(scratch())).code).toBe('not-a-session');
    expect((await refusalOf(writeTree({ 'a.txt': 'x' }))).code).toBe('not-a-session');
    expect((await refusalOf('/dev/null')).code).toBe('not-a-session');
  });

  it('follows a link inside the folder, but none that leads out of it', async () => {
    const folder = changed({ [MOTION]: null });
    writeFileSync(join(folder, 'elsewhere.tsv'), text(MOTION));
    symlinkSync(join(folder, 'elsewhere.tsv'), join(folder, MOTION));
    expect((await readAll(folder)).inputs).toHaveLength(604);
    const outside = join(scratch(), 'outside.tsv');
    writeFileSync(outside, text(MOTION));
    const other = changed({ [MOTION]: null });
    symlinkSync(outside, join(other, MOTION));
    expect((await refusalOf(other)).code).toBe('unsafe-path');
  });
});

describe('A recording without all of its calibration', () => {
  it.each([
    ['calibration-stand', /standing still \(calibration-stand\)/],
    ['calibration-bow', /bows \(calibration-bow\)/],
    ['calibration-armRaise', /arm raises \(calibration-armRaise\)/],
    ['address-reference', /the address reference \(address-reference\)/],
  ])('names the missing step %s', async (step, message) => {
    const events = text(`${STEM}_events.tsv`)
      .split('\n')
      .filter((line) => !line.includes(step))
      .join('\n');
    const session = await openSession(changed({ [`${STEM}_events.tsv`]: events }));
    expect(() => requireCalibration(session)).toThrow(message);
    await session.close();
  });

  it('names all of them where there are no events', async () => {
    const session = await openSession(changed({ [`${STEM}_events.tsv`]: null }));
    expect(() => requireCalibration(session)).toThrow(/standing.*bows.*raises.*reference/);
    await session.close();
  });
});

describe('A recording from somewhere else', () => {
  it('is read with other labels, orders, units, extra channels, missing values and line ends', async () => {
    const files: FileTree = {
      'participants.tsv':
        'age\tparticipant_id\thandedness\r\n33\tsub-99\tL\r\n41\tsub-AnnaK\tR\r\n',
    };
    const stem = 'wrapped/sub-AnnaK/motion/sub-AnnaK_task-practice';
    const units: Record<string, string> = {
      chest:
        'status\tunits\tname\ngood\tuT\tmag_x\ngood\tdeg/s\tgyro_x\ngood\tdeg/s\tgyro_z\ngood\tdeg/s\tgyro_y\ngood\tg\tacc_x\ngood\tg\tacc_y\ngood\tg\tacc_z\ngood\tms\ttime\n',
      trailArm:
        'name\tunits\ntime\ts\nacc_x\tm/s^2\nacc_y\tm/s^2\nacc_z\tm/s^2\ngyro_x\trad/s\ngyro_y\trad/s\ngyro_z\trad/s\nquality\tn/a\n',
    };
    const chest = Array.from({ length: 312 }, (_, k) => [
      k === 9 ? 'n/a' : '48.2',
      '1.5',
      '0.5',
      '-0.5',
      '0.01',
      k === 100 ? 'n/a' : '0',
      '1.001',
      ((k * 1000) / 104).toFixed(4),
    ]);
    const arm = restRows(300, 100).map((cells) => [...cells.slice(0, 7), '1']);
    for (const [role, rows] of Object.entries({ chest, trailArm: arm })) {
      files[`${stem}_tracksys-${role}_motion.tsv`] = tsv(rows).replaceAll('\n', '\r\n');
      files[`${stem}_tracksys-${role}_channels.tsv`] = units[role] as string;
      files[`${stem}_tracksys-${role}_motion.json`] =
        `\uFEFF{"TaskName":"practice","TrackingSystemName":"${role}","SamplingFrequency":${role === 'chest' ? 104 : 100}}`;
    }
    files[`${stem}_events.tsv`] =
      'trial_type\tonset\tduration\tresponse\nstimulus\t0.1\t0\tx\npain\t0.5\tn/a\ty\npause\t1\t0\tz';
    const folder = writeTree(
      Object.fromEntries(
        Object.entries(files).map(([name, c]) => [name.replace(/^(?!wrapped)/, 'wrapped/'), c]),
      ),
    );
    const session = await openSession(folder);
    expect(session.header).toMatchObject({
      id: 'sub-AnnaK',
      session: '',
      task: 'practice',
      hand: 'right',
      startedAt: null,
      tracks: { chest: { samplingHz: 104 }, trailArm: { samplingHz: 100 } },
    });
    expect(session.events.map((e) => [e.type, e.durationS, e.value])).toEqual([
      ['pain', 0, null],
      ['pause', 0, null],
    ]);
    await session.close();
    const { inputs, notes } = await readAll(folder);
    const samples = inputs.flatMap((i) => (i.kind === 'sample' ? [i.sample] : []));
    expect(samples).toHaveLength(312 + 300 - 1);
    expect(notes).toEqual(['chest: 1 rows with missing values counted as lost']);
    const first = samples.find((s) => s.sensor === 'chest');
    expect(first?.acc.z).toBeCloseTo(1.001 * 9.80665, 12);
    expect(first?.gyro).toEqual({
      x: 1.5 * (Math.PI / 180),
      y: -0.5 * (Math.PI / 180),
      z: 0.5 * (Math.PI / 180),
    });
    expect(first).toMatchObject({ timeS: 0, deviceTimeS: null, arrivalTimeS: null });
  });

  it('may have a third track on the club', async () => {
    const files = soundFiles();
    for (const [name, content] of Object.entries(soundFiles()))
      if (name.includes('chest')) files[name.replace('chest', 'club')] = content;
    const { inputs } = await readAll(writeTree(files));
    expect(inputs.filter((i) => i.kind === 'sample' && i.sample.sensor === 'club')).toHaveLength(
      300,
    );
  });

  it('gives samples and events in order of time, an event where it is over', async () => {
    const { inputs } = await readAll(changed({}));
    const times = inputs.map((i) =>
      i.kind === 'sample' ? i.sample.timeS : i.event.onsetS + i.event.durationS,
    );
    expect(times).toEqual([...times].sort((a, b) => a - b));
  });

  it('leaves out rows that are not later than the one before', async () => {
    const { inputs, notes } = await readAll(
      changed({ [MOTION]: withRow(50, (cells) => replaced(cells, 0, '0.480000')) }),
    );
    expect(inputs).toHaveLength(603);
    expect(notes).toEqual(['chest: 1 rows not later than the one before were left out']);
  });

  it('marks a reading at the end of the range, which channels.tsv may state', async () => {
    const row = (cells: string[]) => replaced(cells, 1, '-156.85000');
    const saturated = async (change: Record<string, string>) =>
      (await readAll(changed({ [MOTION]: withRow(200, row), ...change }))).inputs.filter(
        (i) => i.kind === 'sample' && i.sample.saturated,
      ).length;
    expect(await saturated({})).toBe(1);
    const [head, ...rest] = text(CHANNELS).trim().split('\n');
    const withRange = (g: string) =>
      [
        `${head}\tfull_scale`,
        ...rest.map((r) => `${r}\t${r.startsWith('acc') ? g : 'n/a'}`),
        '',
      ].join('\n');
    expect(await saturated({ [CHANNELS]: withRange('313.8') })).toBe(0);
    expect(await saturated({ [CHANNELS]: withRange('9.81') })).toBeGreaterThan(100);
  });
});

describe('A session cut off by a crash', () => {
  it('is read up to its last whole line, even behind zeros that a power cut left', async () => {
    const torn = `${text(MOTION)}3.000000\t0.01`;
    expect((await readAll(changed({ [MOTION]: torn }))).inputs).toHaveLength(604);
    const zeros = Buffer.concat([Buffer.from(torn), Buffer.alloc(4096)]);
    expect((await readAll(changed({ [MOTION]: zeros }))).inputs).toHaveLength(604);
  });

  it('keeps a last event that is whole and drops one that is not', async () => {
    const events = text(`${STEM}_events.tsv`);
    const count = async (tail: string) => {
      const session = await openSession(changed({ [`${STEM}_events.tsv`]: events + tail }));
      await session.close();
      return session.events.length;
    };
    expect(await count('2.5\t0\tpause\tn/a')).toBe(5);
    expect(await count('2.5\t0\tpau')).toBe(4);
  });
});

it('Nothing is left open or written where a session is refused', async () => {
  const folder = scratch();
  mkdirSync(join(folder, 'sub-1'));
  await refusalOf(folder);
  expect(await import('node:fs').then((fs) => fs.readdirSync(folder))).toEqual(['sub-1']);
});
