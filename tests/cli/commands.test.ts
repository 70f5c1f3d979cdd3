import { existsSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { AnalysisResult } from '../../src/analysis/result.ts';
import { analysisProblem } from '../../src/sessions/analysisSchema.ts';
import { STEM, scratch, soundFiles, writeTree } from '../sessions/makeSession.ts';
import { cli } from './run.ts';

const place = mkdtempSync(join(tmpdir(), 'stillcatch-cli-'));
const zip = join(place, 'left.zip');
const truthFile = join(place, 'truth.json');

beforeAll(async () => {
  const made = await cli(
    ...['simulate', '--seed', '5', '--hand', 'left', '--out', zip, '--truth', truthFile],
    ...['--script', 'r b r:short-hold'],
  );
  expect(made).toEqual({ code: 0, out: '', err: '' });
});
afterAll(() => rmSync(place, { recursive: true, force: true }));

describe('stillcatch analyse', () => {
  it('prints a readable report with targets, verdicts, how sure it is, and the caution', async () => {
    const { code, out, err } = await cli('analyse', zip);
    expect(err).toBe('');
    expect(code).toBe(0);
    expect(out).toMatch(/^Session sub-simulated5_ses-1: left-handed, 1 min \d\d s\n/);
    expect(out).toMatch(/SIMULATED data/);
    expect(out).toMatch(/Calibration: accepted/);
    expect(out).toMatch(/≥ 1 s +≥ 20 ms .*≤ 450 ms/);
    expect(out).toMatch(/1 +rehearsal .* passed: /);
    expect(out).toMatch(/3 +rehearsal .* s x .*not passed: Hold longer/);
    expect(out).toMatch(/Ledger: rbr\n {2}2 rehearsals, 1 ball/);
    expect(out).toMatch(/not a published norm/);
    expect(out).toMatch(/25 to 50 % too little/);
    expect(out).toMatch(/compare a person only with themselves/);
    expect(out).toMatch(/Training aid, not a medical device/);
    expect(out).not.toMatch(/NaN|undefined|null/);
  });

  it('prints the result as JSON that its schema takes', async () => {
    const { code, out } = await cli('analyse', zip, '--json');
    expect(code).toBe(0);
    const result = JSON.parse(out) as AnalysisResult;
    expect(analysisProblem(result)).toBeNull();
    expect(result.session.hand).toBe('left');
    expect(result.repetitions.map((r) => r.kind)).toEqual(['rehearsal', 'ball', 'rehearsal']);
  });

  it('fits the session times anew over the whole recording where that is asked for', async () => {
    const { code, out } = await cli('analyse', zip, '--clock', 'final');
    expect(code).toBe(0);
    expect(out).toMatch(/chest: times fitted anew over the whole recording, within \d+\.\d ms;/);
    expect(out).toMatch(/Ledger: rbr\n/);
    expect(await cli('analyse', zip, '--clock', 'best')).toMatchObject({
      code: 2,
      err: expect.stringContaining('--clock must be one of recorded, final, not "best"') as string,
    });
  });

  it('judges by a given plan', async () => {
    const plan = join(scratch(), 'plan.json');
    writeFileSync(plan, '{"targets":{"holdS":{"min":0.2}}}');
    const { out } = await cli('analyse', zip, '--json', '--plan', plan);
    const last = (JSON.parse(out) as AnalysisResult).repetitions[2];
    expect(last?.kind === 'rehearsal' && last.verdict.checks[0]?.target).toEqual({ min: 0.2 });
  });

  it.each([
    ['{"targets":{"holdS":{"min":"long"}}}', /targets\.holdS\.min/],
    ['{"tempo":3}', /tempo is unknown/],
    ['{', /is not JSON/],
  ])('refuses the plan %s naming the path', async (text, message) => {
    const plan = join(scratch(), 'plan.json');
    writeFileSync(plan, text);
    const { code, out, err } = await cli('analyse', zip, '--plan', plan);
    expect([code, out]).toEqual([3, '']);
    expect(err).toMatch(message);
    expect(err.trim().split('\n')).toHaveLength(1);
  });
});

describe('stillcatch convert', () => {
  it('prints the repetitions as CSV', async () => {
    const { code, out } = await cli('convert', zip);
    expect(code).toBe(0);
    const [head, ...rows] = out.trim().split('\n');
    expect(head?.split(',')).toEqual(expect.arrayContaining(['hold_s', 'kept_rotation_deg']));
    expect(rows).toHaveLength(3);
    expect(out).not.toMatch(/NaN|null|undefined/);
  });

  it('prints the angle curves with exactly these columns', async () => {
    const { code, out } = await cli('convert', zip, '--angles');
    expect(code).toBe(0);
    const [head, ...rows] = out.trim().split('\n');
    expect(head).toBe(
      'time_s,flexion_deg,lateral_deg,lean_deg,turn_deg,elevation_deg,plane_deg,external_rotation_deg,valid',
    );
    expect(rows.length).toBeGreaterThan(2000);
    for (const row of rows.slice(0, 500))
      expect(row).toMatch(/^\d+\.\d{4}(,-?\d+\.\d{3}){5}(,(-?\d+\.\d{3})?){2},[01]$/);
    const times = rows.map((row) => Number(row.split(',')[0]));
    expect(times.every((t, k) => k === 0 || t > (times[k - 1] as number))).toBe(true);
  });

  it('prints unit quaternions for OpenSense, a left arm as a left one', async () => {
    const { code, out } = await cli('convert', zip, '--sto');
    expect(code).toBe(0);
    const [rate, type, version, program, end, head, ...rows] = out.trim().split('\n');
    expect([type, version, end]).toEqual(['DataType=Quaternion', 'version=3', 'endheader']);
    expect(rate).toMatch(/^DataRate=(99|100)\.\d{6}$/);
    expect(program).toMatch(/^OpenSimVersion=/);
    expect(head).toBe('time\ttorso_imu\thumerus_l_imu');
    for (const row of rows.slice(0, 200)) {
      const [, torso, humerus] = row.split('\t');
      for (const cell of [torso, humerus])
        expect(Math.hypot(...(cell ?? '').split(',').map(Number))).toBeCloseTo(1, 6);
    }
  });

  it('writes a file only when it is whole', async () => {
    const folder = scratch();
    const out = join(folder, 'angles.csv');
    expect(await cli('convert', zip, '--angles', '--out', out)).toEqual({
      code: 0,
      out: '',
      err: '',
    });
    expect(readFileSync(out, 'utf8')).toBe((await cli('convert', zip, '--angles')).out);
    const files = soundFiles();
    const chest = `${STEM}_tracksys-chest_motion.tsv`;
    files[chest] = `${String(files[chest])}3.0\toops\n`;
    // long enough for the fault to come after the first rows have been handed on
    const broken = writeTree(files);
    const other = join(folder, 'other.csv');
    const { code, err } = await cli('convert', broken, '--sto', '--out', other);
    expect(code).toBe(3);
    expect(err).toMatch(/line 301/);
    expect(readdirSync(folder)).toEqual(['angles.csv']);
  });

  it('says which of two formats it cannot do at once', async () => {
    const { code, err } = await cli('convert', zip, '--sto', '--angles');
    expect(code).toBe(2);
    expect(err).toMatch(/--angles and --sto/);
  });

  it('says so where the file cannot be written', async () => {
    const out = join(place, 'no', 'such', 'folder.csv');
    const { code, err } = await cli('convert', zip, '--out', out);
    expect(code).toBe(1);
    expect(err).toMatch(/folder\.csv cannot be written: folder not found\.$/m);
  });
});

describe('stillcatch replay', () => {
  it('prints phases, repetitions and cues as they come', async () => {
    const { code, out } = await cli('replay', zip, '--speed', 'max');
    expect(code).toBe(0);
    expect(out).toMatch(/calibration accepted/);
    expect(out).toMatch(/address\n[^]*going to the top\n[^]*at the top: hold\n[^]*let go\n/);
    expect(out).toMatch(/repetition 1: rehearsal passed\. "/);
    expect(out).toMatch(/repetition 2: a ball/);
    expect(out).toMatch(/repetition 3: rehearsal not passed\. "Hold longer/);
    expect(out).toMatch(/3 repetitions, ledger rbr\./);
  });

  it.each(['0', 'fast', '-1', '1e9'])('refuses the speed %s', async (speed) => {
    const { code, err } = await cli('replay', zip, `--speed=${speed}`);
    expect(code).toBe(2);
    expect(err).toMatch(/--speed must be/);
  });
});

describe('stillcatch simulate', () => {
  it('gives the same recording for the same options, and the truth beside it', async () => {
    const again = join(scratch(), 'again.zip');
    await cli('simulate', '--seed=5', '--hand=left', '--script=r b r:short-hold', '--out', again);
    expect(readFileSync(again).equals(readFileSync(zip))).toBe(true);
    const truth = JSON.parse(readFileSync(truthFile, 'utf8')) as {
      repetitions: { kind: string; fault?: string }[];
    };
    expect(truth.repetitions.map((r) => r.kind)).toEqual(['rehearsal', 'ball', 'rehearsal']);
    expect(truth.repetitions[2]?.fault).toBe('short-hold');
  });

  it.each([
    [['--script', 'r jump'], /character 3 \(word 2\): unknown word "jump"/],
    [['--seed=-1'], /--seed must be a number from 0/],
    [['--seed=1.5'], /--seed must be a whole number/],
    [['--hand', 'both'], /--hand must be one of left, right/],
    [['--rate', '10'], /--rate must be a number from 50 to 200/],
    [['extra'], /"extra" is one word too many/],
  ])('refuses %j and writes nothing', async (args, message) => {
    const out = join(scratch(), 'x');
    const outcome = await cli('simulate', '--out', out, ...args);
    expect(outcome.code).toBe(2);
    expect(outcome.err).toMatch(message);
    expect(existsSync(out)).toBe(false);
    expect(existsSync(`${out}.making`)).toBe(false);
  });

  it('writes over nothing', async () => {
    expect((await cli('simulate', '--out', zip)).code).toBe(2);
    expect((await cli('simulate', '--out', place)).err).toMatch(/nothing is written over/);
  });
});

describe('The command line', () => {
  it.each([
    [[], /Name a command/],
    [['measure'], /Unknown command "measure"; known are analyse/],
    [['analyse'], /Name the session/],
    [['analyse', 'a', 'b'], /One session at a time/],
    [['analyse', ''], /Name the session/],
    [['analyse', 'a', '--fast'], /Unknown option "--fast"/],
    [['analyse', 'a', '--plan'], /--plan needs a value: see/],
    [['replay', 'a', '--speed', '-1'], /--speed needs a value; one that begins with a dash/],
    [['analyse', 'a', '--json=1'], /--json takes no value/],
  ])('is refused with 2: %j', async (args, message) => {
    const { code, out, err } = await cli(...args);
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(message);
    expect(err).toMatch(/^stillcatch: .*\.\n$/);
  });

  it.each([
    ['nothing there', () => join(place, 'nothing'), /no file or folder named/],
    ['an empty file', () => saved('empty.zip', ''), /the file is empty/],
    ['binary rubbish', () => saved('rubbish.zip', Buffer.alloc(999, 7)), /not a zip file/],
    ['half a zip', () => saved('half.zip', readFileSync(zip).subarray(0, 200_000)), /cut short/],
    ['another folder', () => scratch(), /no session in it/],
    ['no calibration', () => without('_events.tsv'), /lacks? the calibration steps/],
    ['one sensor', () => without('tracksys-chest'), /both sensors are needed/],
  ])('refuses bad input with 3: %s', async (_, path, message) => {
    for (const command of ['analyse', 'replay', 'convert']) {
      const where = path();
      const { code, out, err } = await cli(command, where);
      expect(err).toContain(where);
      expect([code, out]).toEqual([3, '']);
      expect(err).toMatch(message);
      expect(err).toMatch(/^stillcatch: .*\.\n$/);
    }
  });

  it('helps', async () => {
    expect((await cli('--help')).out).toMatch(/analyse .*\n.*simulate .*\n.*replay .*\n.*convert /);
    for (const command of ['analyse', 'simulate', 'replay', 'convert'])
      expect((await cli(command, '--help')).out).toMatch(`stillcatch ${command} `);
    expect((await cli('--version')).out).toMatch(/^\d+\.\d+\.\d+\n$/);
  });
});

function saved(name: string, content: string | Buffer): string {
  const path = join(place, name);
  writeFileSync(path, content);
  return path;
}

function without(part: string): string {
  const files = soundFiles();
  for (const name of Object.keys(files)) if (name.includes(part)) delete files[name];
  return writeTree(files);
}
