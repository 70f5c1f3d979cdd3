// xioTechnologies/Fusion#33: m/s^2 given where g is expected, degrees where radians.
import { describe, expect, it } from 'vitest';
import {
  CHANNELS,
  MOTION,
  readAll,
  refusalOf,
  restRows,
  soundFiles,
  tsv,
  writeTree,
} from '../sessions/makeSession.ts';

/** Standard gravity (3rd CGPM 1901), m/s^2. */
const G = 9.80665;

const scaled = (columns: readonly number[], factor: number, offset = 0): string =>
  tsv(
    restRows().map((cells) =>
      cells.map((c, k) => (columns.includes(k) ? String(Number(c) * factor + offset) : c)),
    ),
  );
const ACC = [1, 2, 3];
const GYRO = [4, 5, 6];

const refused = async (motion: string, change: Record<string, string> = {}): Promise<string> => {
  const error = await refusalOf(writeTree({ ...soundFiles(), [MOTION]: motion, ...change }));
  expect(error.code).toBe('implausible-units');
  expect(error.message).toContain(MOTION);
  return error.message;
};

describe('Units are checked at the border, at rest', () => {
  it.each([
    [1 / G, /reads 1 m\/s\^2 where 9.81 is expected; this looks like g instead of m\/s\^2/],
    [1000 / G, /this looks like mg instead of m\/s\^2/],
    [100, /this looks like cm\/s\^2/],
    [3.28084, /this looks like ft\/s\^2/],
    [0.5, /wrong full-scale setting/],
    [1.07, /check its units and its calibration/],
  ])('the accelerometer times %d is refused with the likely mistake', async (factor, message) => {
    expect(await refused(scaled(ACC, factor))).toMatch(message);
  });

  it.each([0.96, 1, 1.04])('the accelerometer times %d is let in', async (factor) => {
    const folder = writeTree({ ...soundFiles(), [MOTION]: scaled(ACC, factor) });
    expect((await readAll(folder)).inputs).toHaveLength(604);
  });

  it('m/s^2 labelled as g is refused', async () => {
    const channels = String(soundFiles()[CHANNELS]).replaceAll('m/s^2', 'g');
    expect(await refused(scaled(ACC, 1), { [CHANNELS]: channels })).toMatch(
      /m\/s\^2 labelled as g/,
    );
  });

  it('a gyroscope that reads 30 at rest is refused: degrees instead of radians', async () => {
    expect(await refused(scaled([4], 0, 30))).toMatch(/degrees instead of radians/);
  });

  it('a gyroscope that reads 12 deg/s at rest is refused', async () => {
    expect(await refused(scaled(GYRO, 0, ((12 / Math.sqrt(3)) * Math.PI) / 180))).toMatch(
      /at rest the gyroscope reads 0.209 rad\/s/,
    );
  });

  it('a turn of 300 degrees a second written into a column of radians is refused', async () => {
    const rows = restRows().map((cells, k) =>
      k > 150 ? [...cells.slice(0, 4), '300', ...cells.slice(5)] : cells,
    );
    expect(await refused(tsv(rows))).toMatch(
      /past the end of its range.*degrees instead of radians/,
    );
  });
});

describe('Units are checked at the border, in movement', () => {
  /** Lies still, turns by 60 degrees about x within a second, lies still. */
  const turned = (gyroFactor: number): string =>
    tsv(
      Array.from({ length: 400 }, (_, k) => {
        const t = k / 100;
        const part = Math.min(1, Math.max(0, t - 1.5));
        const angle = (part * Math.PI) / 3;
        const rate = part > 0 && part < 1 ? (Math.PI / 3) * gyroFactor : 0;
        const cells = [t, 0, G * Math.sin(angle), G * Math.cos(angle), rate, 0, 0, t, t];
        return cells.map((c) => c.toFixed(6));
      }),
    );

  it('a gyroscope in rad/s under the label deg/s is refused', async () => {
    const channels = String(soundFiles()[CHANNELS]).replaceAll('rad/s', 'deg/s');
    expect(await refused(turned(1), { [CHANNELS]: channels })).toMatch(
      /tilted by 60 degrees while the gyroscope turned by 1; this looks like radians labelled as degrees/,
    );
  });

  it('a gyroscope in rad/s under its own label is let in', async () => {
    const folder = writeTree({ ...soundFiles(), [MOTION]: turned(1) });
    expect((await readAll(folder)).inputs.length).toBeGreaterThan(600);
  });
});
