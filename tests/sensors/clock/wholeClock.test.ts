import { describe, expect, it } from 'vitest';
import { createClock, observePacket, sessionTime } from '../../../src/sensors/clock/clock.ts';
import {
  type ClockRun,
  type RecordedTimes,
  clockRuns,
  createFinalTimes,
  createWholeClock,
  finalTimeS,
  takeAnswered,
  takeTimes,
} from '../../../src/sensors/clock/wholeClock.ts';
import { answers, type Link, type Packet, packets } from './links.ts';

const link: Link = { rateHz: 104, intervalMs: 15, ppm: 40, seconds: 120, seed: 1 };

/** As a recording keeps them: with the times of the live clock. */
function recorded(run: readonly Packet[], kind: 'stamped' | 'counted' = 'stamped') {
  const clock = createClock(kind);
  return run.map((p): RecordedTimes & { trueS: number } => {
    observePacket(clock, p.deviceS, p.arrivalS);
    return {
      timeS: sessionTime(clock, p.deviceS),
      deviceTimeS: kind === 'stamped' ? p.deviceS : null,
      arrivalTimeS: p.arrivalS,
      trueS: p.trueS,
    };
  });
}

function fitted(rows: readonly RecordedTimes[], nominalHz: number | null = null) {
  const whole = createWholeClock(nominalHz);
  for (const row of rows) takeTimes(whole, row);
  const runs = clockRuns(whole);
  const final = createFinalTimes(runs, nominalHz);
  return { runs, times: rows.map((row) => finalTimeS(final, row)) };
}

/** The device starts anew after a pause: its clock from 0, the host's goes on. */
const later = (run: readonly Packet[], afterS: number): Packet[] =>
  run.map((p) => ({
    deviceS: p.deviceS - (run[0]?.deviceS ?? 0),
    arrivalS: p.arrivalS + afterS,
    trueS: p.trueS + afterS,
  }));

const worstMs = (times: readonly number[], truth: readonly { trueS: number }[]): number =>
  Math.max(...times.map((t, i) => Math.abs(t - (truth[i]?.trueS ?? NaN)))) * 1000;

const spansOf = (runs: readonly ClockRun[]) => runs.map((r) => [r.fromS, r.untilS]);

describe("a recording's final session times", () => {
  it('are within 1 ms of the truth, from the first sample on', () => {
    const rows = recorded([...packets(link)]);
    const { runs, times } = fitted(rows);
    expect(runs).toHaveLength(1);
    expect(runs[0]?.packets).toBe(new Set(rows.map((r) => r.arrivalTimeS)).size);
    expect(worstMs(times, rows)).toBeLessThan(1);
    expect(runs[0]?.residualMs).toBeLessThan(1);
  });

  it('tell how far the recorded times lay from them', () => {
    const { runs } = fitted(recorded([...packets(link)]));
    const shifted = fitted(
      recorded([...packets(link)]).map((row) => ({ ...row, timeS: row.timeS + 0.02 })),
    );
    expect(runs[0]?.movedMs).toBeLessThan(3);
    expect((shifted.runs[0]?.movedMs ?? 0) - (runs[0]?.movedMs ?? 0)).toBeCloseTo(20, -1);
  });

  it('are fitted for each run of the device where it started anew in mid-session', () => {
    const run = [...packets(link)];
    const rows = recorded([...run, ...later([...packets({ ...link, seed: 2 })], 130)]);
    const { runs, times } = fitted(rows);
    expect(runs).toHaveLength(2);
    expect(spansOf(runs)).toEqual([
      [rows[0]?.timeS, rows[run.length - 1]?.timeS],
      [rows[run.length]?.timeS, rows.at(-1)?.timeS],
    ]);
    expect(worstMs(times, rows)).toBeLessThan(1);
  });

  it('always rise, even where runs meet', () => {
    const first = [...packets({ ...link, seconds: 30 })];
    const rows = recorded([...first, ...later([...packets({ ...link, seconds: 30 })], 29.8)]);
    const { times } = fitted(rows);
    for (let i = 1; i < times.length; i++)
      expect(times[i]).toBeGreaterThan(times[i - 1] ?? Infinity);
  });

  it('use what the device answered, where packets in step with the connection hide the delay', () => {
    const locked = { ...link, rateHz: 100, intervalMs: 30, ppm: 0, asked: true };
    const rows = recorded([...packets(locked)]);
    const whole = createWholeClock(null);
    const said = [...answers(locked)];
    for (const row of rows) {
      while ((said[0]?.sentS ?? Infinity) < (row.arrivalTimeS ?? 0)) {
        const answer = said.shift();
        if (answer) takeAnswered(whole, answer);
      }
      takeTimes(whole, row);
    }
    const runs = clockRuns(whole);
    const asked = createFinalTimes(runs, null);
    const withAnswers = worstMs(
      rows.map((row) => finalTimeS(asked, row)),
      rows,
    );
    const { times, runs: deaf } = fitted(rows);
    expect(runs[0]?.answers).toBeGreaterThan(100);
    expect(deaf[0]?.answers).toBe(0);
    expect(withAnswers).toBeLessThan(2);
    expect(worstMs(times, rows)).toBeGreaterThan(2 * withAnswers);
  });

  it('count the samples of a device that sends no time of its own, 7000 ppm off', () => {
    const counted = [...packets({ ...link, rateHz: 100, intervalMs: 11.25, ppm: 7000 })];
    const rows = recorded(counted, 'counted');
    const { runs, times } = fitted(rows, 100);
    expect(runs.map((r) => r.kind)).toEqual(['counted']);
    expect(worstMs(times, rows)).toBeLessThan(2);
  });

  it('stay as they are where neither raw times nor a rate are known', () => {
    const rows = recorded([...packets(link)], 'counted');
    const { runs, times } = fitted(rows, null);
    expect(runs).toEqual([]);
    expect(times).toEqual(rows.map((r) => r.timeS));
  });

  it('come of plain data: a fit cut and resumed from JSON is the same', () => {
    const rows = recorded([...packets({ ...link, seconds: 40 })]);
    let whole = createWholeClock(null);
    rows.forEach((row, i) => {
      takeTimes(whole, row);
      if (i === 1500) whole = JSON.parse(JSON.stringify(whole)) as typeof whole;
    });
    expect(clockRuns(whole)).toEqual(fitted(rows).runs);
  });
});
