import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { radians } from '../../src/math/angle.ts';
import { IDENTITY, aboutX, aboutY, multiply, rotate } from '../../src/math/quat.ts';
import { UNIT_Y } from '../../src/math/vec3.ts';
import { type Trial, TrialError, readTrial, trialFiles } from '../bench/broad.ts';
import { orientationError } from '../bench/orientationError.ts';
import { UP, sample } from './imu.ts';

const folder = mkdtempSync(join(tmpdir(), 'trials-'));
afterAll(() => rmSync(folder, { recursive: true }));

const write = (name: string, text: string): string => {
  const file = join(folder, name);
  writeFileSync(file, text);
  return file;
};

const HEADER = 'moving,t,az,ay,ax,gx,gy,gz,note,qw,qx,qy,qz';

describe('a trial file', () => {
  it('is read by its column names, in any order, with empty references and foreign line ends', () => {
    const s = Math.SQRT1_2;
    const rows = [`0,0,9.8,0,0,1,2,3,hello,${s},${s},0,0`, '1,0.01,9.8,0.1,0.2,1,2,3,,,,,', ''];
    const trial = readTrial(write('a.csv', [HEADER, ...rows].join('\r\n')));
    expect(trial.samples[1]).toMatchObject({
      timeS: 0.01,
      acc: { x: 0.2, y: 0.1, z: 9.8 },
      gyro: { x: 1, y: 2, z: 3 },
    });
    expect(trial.moving).toEqual([false, true]);
    expect(trial.reference[1]).toBeNull();
    // the file's reference turns the sensor's y up (its z); ours is Y up
    const up = trial.reference[0] && rotate(trial.reference[0], UNIT_Y);
    expect(up).toEqual({
      x: 0,
      y: expect.closeTo(1, 12) as number,
      z: expect.closeTo(0, 12) as number,
    });
  });

  it.each([
    ['no column', 't,gx\n0,0', /has no column gy/],
    ['no rows', HEADER, /No rows/],
    [
      'words for numbers',
      `${HEADER}\n1,0,x,0,0,1,2,3,,1,0,0,0`,
      /line 2, column az: "x" is not a number/,
    ],
  ])('with %s is refused in words that say where', (_, text, message) => {
    const file = write('bad.csv', text);
    expect(() => readTrial(file)).toThrow(TrialError);
    expect(() => readTrial(file)).toThrow(message);
    rmSync(file);
  });

  it('is looked for in a folder that must exist and hold some', () => {
    expect(() => trialFiles(join(folder, 'nowhere'))).toThrow(/No such folder/);
    const file = write('b.csv', HEADER);
    expect(trialFiles(folder)).toContain(file);
  });
});

describe('the error definition', () => {
  const count = 300;
  const trial = (reference = IDENTITY): Trial => ({
    name: 'made up',
    samples: Array.from({ length: count }, (_, i) => sample(i / 100, UP)),
    reference: Array.from({ length: count }, () => reference),
    moving: Array.from({ length: count }, (_, i) => i >= 200),
  });

  it('parts a known error into heading and inclination, and leaves a constant heading out', () => {
    const reference = aboutX(0.7);
    const estimates = Array.from({ length: count }, (_, i) => {
      const error = i >= 200 ? multiply(aboutY(radians(4)), aboutX(radians(3))) : IDENTITY;
      return multiply(multiply(aboutY(1), error), reference);
    });
    const e = orientationError(trial(reference), estimates);
    expect(e.headingDeg).toBeCloseTo(4, 9);
    expect(e.inclinationDeg).toBeCloseTo(3, 9);
    const total = 2 * Math.acos(Math.cos(radians(2)) * Math.cos(radians(1.5)));
    expect(e.totalDeg).toBeCloseTo(total / radians(1), 9);
  });

  it('needs a moving row with a reference', () => {
    const still = { ...trial(), moving: Array.from({ length: count }, () => false) };
    expect(() => orientationError(still, [])).toThrow(/made up: no row/);
  });
});
