import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ImuSample } from '../../../../src/sensors/sample.ts';
import { Reception } from '../../../../src/sensors/sources/ble/reception.ts';
import { concat, hex, imu6, openPacket, witFrame } from '../../decode/bytes.ts';

const wish = (driver: 'openProfile' | 'witMotion' | 'movesense') =>
  new Reception('chest', { id: 'a', driver, name: 'A' });
/** Info of the open profile at so many Hz. */
const setup = (rateHz: number) => {
  const info = hex('01 00 0000 803e0000 80841e00');
  new DataView(info.buffer).setUint16(2, rateHz * 100, true);
  return { rateHz, info };
};
const STILL = [0, 0, 2048, 0, 0, 0];
const U16 = 2 ** 16;
const U32 = 2 ** 32;

/** An open-profile device: reading k of a run that began at host s `bootS`. */
const packet = (k: number, rateHz: number, first = { sequence: 0, us: 0 }): Uint8Array =>
  openPacket({
    sequence: (first.sequence + k) % U16,
    us: (first.us + Math.round((k * 1e6) / rateHz)) % U32,
    counts: [STILL],
  });

const steps = (samples: readonly ImuSample[]): number[] =>
  samples.slice(1).map((s, i) => s.timeS - (samples[i]?.timeS ?? 0));
const range = (n: number): number[] => Array.from({ length: n }, (_, k) => k);

describe('bytes of one sensor over several connections', () => {
  it('sequence and clock wrap, in the middle of a stream too', () => {
    const r = wish('openProfile');
    r.connect(setup(104));
    const first = { sequence: U16 - 300, us: U32 - 2_000_000 };
    const samples = range(1000).flatMap((k) => r.take(packet(k, 104, first), k / 104 + 0.004));
    expect(samples).toHaveLength(1000);
    for (const step of steps(samples)) expect(step).toBeCloseTo(1 / 104, 4);
    expect(r.stream).toMatchObject({ lost: 0, clock: { restarts: 0 } });
  });

  it('a silence longer than the clock takes to wrap is a gap of its length, and no restart', () => {
    const r = wish('openProfile');
    r.connect(setup(104));
    const gap = Math.round(104 * 5000);
    const at = (k: number): ImuSample[] => r.take(packet(k, 104), k / 104 + 0.004);
    const before = range(500).flatMap(at);
    r.connect(setup(104));
    const after = range(500).flatMap((k) => at(gap + k));
    const silence = (after[0]?.timeS ?? 0) - (before.at(-1)?.timeS ?? 0);
    expect(Math.abs(silence - (gap - 499) / 104)).toBeLessThan(0.005);
    expect(r.stream).toMatchObject({ lost: gap - 500, clock: { restarts: 0 } });
  });

  it('a device that began anew goes on in session time, at the present, and has lost nothing by its counter', () => {
    const r = wish('openProfile');
    r.connect(setup(104));
    const before = range(2000).flatMap((k) => r.take(packet(k, 104), k / 104 + 0.004));
    r.connect(setup(104));
    const after = range(2000).flatMap((k) => r.take(packet(k, 104), 25 + k / 104 + 0.004));
    expect(after[0]?.timeS).toBeGreaterThan(before.at(-1)?.timeS ?? Infinity);
    for (const [k, s] of after.entries())
      expect(Math.abs(s.timeS - 25 - k / 104)).toBeLessThan(0.005);
    expect(r.stream).toMatchObject({ lost: 0, clock: { restarts: 1 } });
  });

  it('another rate at the next connection is taken over; time goes on', () => {
    const r = wish('openProfile');
    r.connect(setup(104));
    const before = range(500).flatMap((k) => r.take(packet(k, 104), k / 104 + 0.004));
    r.connect(setup(208));
    const after = range(500).flatMap((k) => r.take(packet(k, 208), 6 + k / 208 + 0.004));
    expect(r.stream?.format.rateHz).toBe(208);
    expect(after[0]?.timeS).toBeGreaterThan(before.at(-1)?.timeS ?? Infinity);
    for (const step of steps(after)) expect(step).toBeCloseTo(1 / 208, 4);
    expect(r.stream?.lost).toBe(0);
  });

  it('the half of a packet that the old connection left is not joined to one of the new', () => {
    const payload = imu6(
      3000,
      [
        [0, 0, 9.8],
        [0, 0, 9.8],
      ],
      [
        [0, 0, 0],
        [0, 0, 0],
      ],
    );
    const movesense = wish('movesense');
    movesense.connect({ rateHz: 104, info: null });
    movesense.take(concat([2, 7], payload.subarray(0, 30)), 1);
    movesense.connect({ rateHz: 104, info: null });
    expect(movesense.take(concat([3, 7], payload.subarray(30)), 2)).toEqual([]);
    expect(movesense.stream?.malformed).toBe(1);
    const wit = wish('witMotion');
    wit.connect({ rateHz: 100, info: null });
    wit.take(witFrame([1, 2, 3, 4, 5, 6]).subarray(0, 12), 1);
    wit.connect({ rateHz: 100, info: null });
    expect(wit.take(witFrame([1, 2, 3, 4, 5, 6]).subarray(12), 2)).toEqual([]);
    expect(wit.stream?.malformed).toBe(1);
  });

  it('a sensor without a clock is at the present after each connection', () => {
    const r = wish('witMotion');
    r.connect({ rateHz: 100, info: null });
    const frame = witFrame([0, 0, 2048, 0, 0, 0]);
    const before = range(1000).flatMap((k) => r.take(frame, k / 100 + 0.01));
    r.connect({ rateHz: 100, info: null });
    const [sample] = r.take(frame, 14);
    expect(before.at(-1)?.timeS).toBeLessThan(10.1);
    expect(sample?.timeS).toBeCloseTo(14, 3);
  });
});

describe('whatever comes, from whichever connection', () => {
  const count = fc.integer({ min: -32_768, max: 32_767 });
  const six = fc.array(count, { minLength: 6, maxLength: 6 });
  const ahead = fc.oneof(fc.double({ min: 0, max: 0.1, noNaN: true }), fc.nat(20_000));
  const open = fc
    .record({
      sequence: fc.nat(U16 - 1),
      us: fc.nat(U32 - 1),
      counts: fc.array(six, { minLength: 1, maxLength: 19 }),
    })
    .map(openPacket);
  const step = fc.oneof(
    {
      weight: 8,
      arbitrary: fc.record({ ahead, bytes: fc.oneof(open, fc.uint8Array({ maxLength: 60 })) }),
    },
    { weight: 1, arbitrary: fc.record({ rateHz: fc.constantFrom(52, 104, 208) }) },
    { weight: 1, arbitrary: fc.record({ ahead, ticks: fc.nat(U32 - 1) }) },
  );

  it('time is finite and never falls within a rate, and nothing is thrown', () => {
    fc.assert(
      fc.property(fc.array(step, { maxLength: 60 }), (all) => {
        const r = wish('openProfile');
        r.connect(setup(104));
        let [nowS, lastS, rateHz] = [1, -Infinity, 104];
        for (const s of all) {
          if ('rateHz' in s) {
            r.connect(setup(s.rateHz));
            if (s.rateHz !== rateHz) lastS = -Infinity;
            rateHz = s.rateHz;
            continue;
          }
          nowS += s.ahead;
          if ('ticks' in s) r.answered(s.ticks, nowS);
          else
            for (const { timeS } of r.take(s.bytes, nowS)) {
              expect(Number.isFinite(timeS) && timeS > lastS).toBe(true);
              lastS = timeS;
            }
        }
      }),
      { numRuns: Number(process.env.FUZZ_RUNS ?? 200) },
    );
  });
});
