import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  clockResidualMs,
  createClock,
  observeAnswer,
  observePacket,
  restartClock,
  sessionTime,
} from '../../../src/sensors/clock/clock.ts';
import { fitWhole } from './fitWhole.ts';
import { betweenSensors } from './linkErrors.ts';
import { packets } from './links.ts';

describe('session time of one sensor', () => {
  it('is the arrival itself for the very first packet', () => {
    const clock = createClock();
    observePacket(clock, 812.5, 3.25);
    expect(sessionTime(clock, 812.5)).toBe(3.25);
  });

  it('gives the earlier samples of a packet their own, earlier times', () => {
    const clock = createClock();
    observePacket(clock, 10.02, 1);
    expect([10, 10.01, 10.02].map((d) => sessionTime(clock, d))).toEqual(
      [0.98, 0.99, 1].map((s) => expect.closeTo(s, 9) as number),
    );
  });

  it('never falls, whatever the arrivals do, and is never NaN', () => {
    const seconds = (low: number, high: number) =>
      fc.oneof(
        { weight: 20, arbitrary: fc.integer({ min: low * 1e6, max: high * 1e6 }) },
        fc.constantFrom(NaN, Infinity, -Infinity),
      );
    const step = fc.record({ device: seconds(-5, 5), host: seconds(0, 2) });
    fc.assert(
      fc.property(fc.array(step, { maxLength: 200 }), (steps) => {
        const clock = createClock();
        observePacket(clock, 0, 0);
        let [deviceUs, hostUs, before] = [0, 0, sessionTime(clock, 0)];
        for (const s of steps) {
          observePacket(clock, (deviceUs + s.device) / 1e6, (hostUs + s.host) / 1e6);
          if (!Number.isFinite(s.device + s.host)) continue;
          deviceUs += s.device;
          hostUs += s.host;
          const now = sessionTime(clock, deviceUs / 1e6);
          expect(now).toSatisfy(Number.isFinite);
          if (s.device !== 0) expect(now).toBeGreaterThan(before);
          before = now;
        }
      }),
    );
  });

  it('moves by less than 1 % of the step between two samples once warm, so that no speed is invented', () => {
    const clock = createClock();
    let worst = 0;
    let before: { deviceS: number; s: number } | null = null;
    for (const p of packets({ rateHz: 104, intervalMs: 30, ppm: 60, seconds: 120, seed: 5 })) {
      observePacket(clock, p.deviceS, p.arrivalS);
      const s = sessionTime(clock, p.deviceS);
      if (before && p.trueS > 12)
        worst = Math.max(worst, Math.abs((s - before.s) / (p.deviceS - before.deviceS) - 1));
      before = { deviceS: p.deviceS, s };
    }
    expect(worst).toBeLessThan(0.01);
  });

  it('goes on after JSON and back as if nothing had happened', () => {
    let cut = createClock();
    const whole = createClock();
    for (const p of packets({ rateHz: 104, intervalMs: 15, ppm: 30, seconds: 30, seed: 9 })) {
      cut = JSON.parse(JSON.stringify(cut)) as typeof cut;
      for (const clock of [cut, whole]) observePacket(clock, p.deviceS, p.arrivalS);
      expect(sessionTime(cut, p.deviceS)).toBe(sessionTime(whole, p.deviceS));
    }
  });

  it('keeps its state small over an hour', () => {
    const clock = createClock();
    for (const p of packets({ rateHz: 104, intervalMs: 15, ppm: 30, seconds: 3600, seed: 2 }))
      observePacket(clock, p.deviceS, p.arrivalS);
    expect(JSON.stringify(clock).length).toBeLessThan(60_000);
  });
});

describe('a device that restarts', () => {
  it('is noticed by its clock falling back; times go on from the host clock', () => {
    const clock = createClock();
    for (let k = 0; k < 3000; k++) observePacket(clock, 500 + k * 0.01, k * 0.01 + 0.005);
    expect(sessionTime(clock, 529.99)).toBeCloseTo(29.995, 3);
    observePacket(clock, 0.2, 34);
    expect(sessionTime(clock, 0.2)).toBe(34);
    expect(clock.restarts).toBe(1);
  });

  it('may be told by who unwrapped the counter', () => {
    const clock = createClock();
    observePacket(clock, 3, 1);
    expect(sessionTime(clock, 3)).toBe(1);
    restartClock(clock);
    observePacket(clock, 5, 30);
    expect(sessionTime(clock, 5)).toBe(30);
  });

  it('whose clock stood still is taken up anew after 3 s of late packets', () => {
    const clock = createClock();
    const at = (k: number): void => observePacket(clock, k * 0.01, k * 0.01 + (k < 6000 ? 0 : 20));
    for (let k = 0; k < 6500; k++) at(k);
    expect(sessionTime(clock, 64.99)).toBeCloseTo(84.99, 2);
  });
});

describe('a device without any clock', () => {
  it('that runs 7000 ppm off is followed to 2 ms after 30 s', () => {
    const clock = createClock('counted');
    const link = { rateHz: 100, intervalMs: 11.25, ppm: 7000, seconds: 60, seed: 3 };
    for (const p of packets(link)) {
      observePacket(clock, p.deviceS, p.arrivalS);
      const s = sessionTime(clock, p.deviceS);
      if (p.trueS > 30) expect(Math.abs(s - p.trueS - 0.0005)).toBeLessThan(0.002);
    }
  });

  it('that dropped 200 samples is back in time within 4 s', () => {
    const clock = createClock('counted');
    const period = 0.01;
    let counted = 0;
    for (let k = 0; k < 6000; k++) {
      if (k > 3000 && k <= 3200) continue;
      observePacket(clock, counted * period, k * period + 0.004);
      const s = sessionTime(clock, counted * period);
      if (k > 3700) expect(Math.abs(s - k * period - 0.004)).toBeLessThan(0.001);
      counted += 1;
    }
  });
});

describe('against what neighbours do, over simulated links with 10 % failed connection events', () => {
  const link = { rateHz: 104, intervalMs: 15, ppm: 40, seconds: 90 };
  it('two sensors at 104 Hz and 15 ms agree to 1 ms (95th percentile), where arrival times do not', () => {
    expect(betweenSensors('live', link, 4).p95Ms).toBeLessThan(1);
    expect(betweenSensors('final', link, 4).p95Ms).toBeLessThan(0.5);
    expect(betweenSensors('naive', link, 4).p95Ms).toBeGreaterThan(10);
  });

  it('stay within 5 ms even where packet period and connection interval beat (100 Hz, 15 ms)', () => {
    const beat = { ...link, rateHz: 100 };
    expect(betweenSensors('live', beat, 6).p95Ms).toBeLessThan(5);
  });

  it('that are asked for their time stay within 5 ms even where all packets wait alike (100 Hz, 30 ms)', () => {
    const locked = { ...link, rateHz: 100, intervalMs: 30 };
    expect(betweenSensors('live', locked, 6).p95Ms).toBeGreaterThan(5);
    expect(betweenSensors('live', { ...locked, asked: true }, 6).p95Ms).toBeLessThan(5);
    expect(betweenSensors('final', { ...locked, asked: true }, 6).p95Ms).toBeLessThan(2);
  });

  it('say that they may be off by milliseconds where packets in step hide it', () => {
    const residual = (rateHz: number): number => {
      const clock = createClock();
      for (const p of packets({ ...link, rateHz, intervalMs: 30, seed: 4 }))
        observePacket(clock, p.deviceS, p.arrivalS);
      return clockResidualMs(clock) ?? NaN;
    };
    expect(residual(104)).toBeLessThan(1);
    expect(residual(100)).toBeGreaterThan(4);
  });

  it('are not led astray by answers of an earlier run of the device, or by none at all', () => {
    const clock = createClock();
    observeAnswer(clock, 3, 0);
    for (const p of packets({ ...link, seconds: 20, seed: 3 })) {
      observePacket(clock, p.deviceS, p.arrivalS);
      observeAnswer(clock, p.deviceS - 5000, p.arrivalS);
      observeAnswer(clock, NaN, p.arrivalS);
      if (p.trueS > 12)
        expect(Math.abs(sessionTime(clock, p.deviceS) - p.trueS)).toBeLessThan(0.002);
    }
    expect(clock.asked.count).toBe(0);
  });

  it('tells the residual of a drifting fit', () => {
    const clean = fitWhole([...packets({ ...link, seed: 1 })]);
    const bent = fitWhole(
      [...packets({ ...link, seed: 1 })].map((p, i) => ({
        ...p,
        arrivalS: p.arrivalS + 1e-9 * (i - 4680) ** 2,
      })),
    );
    expect(clean.residualMs).toBeLessThan(1);
    expect(bent.residualMs).toBeGreaterThan(5);
    expect(clockResidualMs(createClock())).toBeNull();
  });
});
