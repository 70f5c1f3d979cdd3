import { describe, expect, it } from 'vitest';
import { simulateSession } from '../../../../src/sensors/sources/synthetic/index.ts';

// Bands: design page "Plausibility bands for simulation only"; Zheng et al. 2008 (external rotation
// at the top 66 +- 11), McTeigue et al. 1994 (backswing 0.8 s), the others from memory. Half a degree
// is allowed for sway.
const SWAY = 0.6;
const sessions = Array.from({ length: 40 }, (_, i) =>
  simulateSession({ seed: 100 + i, script: 'r b r:losing-lean b p', rateHz: 1 }),
);
const all = sessions.flatMap((s) => s.truth.repetitions.map((r) => ({ r, truth: s.truth })));

const inBand = (values: readonly number[], low: number, high: number): void => {
  expect(Math.min(...values)).toBeGreaterThanOrEqual(low - SWAY);
  expect(Math.max(...values)).toBeLessThanOrEqual(high + SWAY);
};

describe('over many golfers', () => {
  it('the address is bent 30-45 deg forward and 3-10 to the trail side', () => {
    const angles = all.map(({ r, truth }) => truth.angles(r.startS));
    inBand(
      angles.map((a) => a.flexionDeg),
      30,
      45,
    );
    inBand(
      angles.map((a) => a.lateralDeg),
      3,
      10,
    );
    inBand(
      angles.map((a) => a.turnDeg),
      -3,
      3,
    );
  });

  it('the top is turned 85-105 away, bent 25-40 to the lead side, with the arm out and up', () => {
    const angles = all.map(({ r, truth }) => truth.angles(r.topS));
    inBand(
      angles.map((a) => -a.turnDeg),
      85,
      105,
    );
    inBand(
      angles.map((a) => -a.lateralDeg),
      25,
      40,
    );
    inBand(
      angles.map((a) => a.flexionDeg),
      -5,
      15,
    );
    inBand(
      angles.map((a) => a.externalRotationDeg),
      55,
      77,
    );
    inBand(
      angles.map((a) => a.elevationDeg),
      60,
      85,
    );
  });

  it('the arm stays where its angles mean something until the catch', () => {
    for (const { r, truth } of all) {
      if (r.kind !== 'rehearsal') continue;
      inBand([truth.angles(r.catchS ?? r.endS).elevationDeg], 30, 90);
    }
  });

  const balls = all.filter(({ r }) => r.kind === 'ball');
  const impactOf = ({ r }: (typeof balls)[number]): number => (r.kind === 'ball' ? r.impactS : NaN);

  it('impact is 20-35 open, 20-35 to the trail side, 25-40 forward', () => {
    const angles = balls.map((b) => b.truth.angles(impactOf(b)));
    inBand(
      angles.map((a) => a.turnDeg),
      20 - 2,
      35 + 2,
    ); // the address itself varies
    inBand(
      angles.map((a) => a.lateralDeg),
      20,
      35,
    );
    inBand(
      angles.map((a) => a.flexionDeg),
      25,
      40,
    );
  });

  it('the chest turns at 450-750 deg/s at most, 0.23-0.30 s down, about 0.8 s back', () => {
    for (const ball of balls) {
      if (ball.r.kind !== 'ball') continue;
      const { truth, r } = ball;
      const h = 1e-3;
      let peak = 0;
      for (let t = r.topS; t < r.impactS; t += h) {
        peak = Math.max(peak, (truth.angles(t + h).turnDeg - truth.angles(t).turnDeg) / h);
      }
      inBand([peak], 450, 750);
      const after = truth.angles(r.deliveryS);
      const before = truth.angles(r.deliveryS - h);
      expect((after.turnDeg - before.turnDeg) / h).toBeGreaterThan(0.995 * peak);
      expect(r.impactS - r.topS).toBeGreaterThan(0.229);
      expect(r.impactS - r.topS).toBeLessThan(0.301);
      expect(r.topS - r.startS).toBeGreaterThan(0.65);
      expect(r.topS - r.startS).toBeLessThan(1.1);
    }
  });

  it('a ball shows the asked part of what the rehearsals centre on', () => {
    for (const seed of [1, 2, 3, 4, 5]) {
      const [full, half] = [1, 0.5].map((c) =>
        simulateSession({ seed, script: `b:${c}`, rateHz: 1 }).truth.repetitions.at(0),
      );
      if (!full || !half) throw new Error('no ball');
      expect(half.measures.addedFlexionDeg / full.measures.addedFlexionDeg).toBeCloseTo(0.5, 0);
      expect(
        Math.abs(half.measures.addedFlexionDeg * 2 - full.measures.addedFlexionDeg),
      ).toBeLessThan(1.5);
      expect(
        Math.abs(half.measures.keptRotationDeg * 2 - full.measures.keptRotationDeg),
      ).toBeLessThan(2.5);
    }
  });
});
