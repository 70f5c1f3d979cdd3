import { describe, expect, it } from 'vitest';
import { simulateSession } from '../../src/sensors/sources/synthetic/index.ts';
import { clubFall } from '../../src/swings/clubFall.ts';
import { analyse, inputsOf } from '../analysis/simulated.ts';

const forces = (of: (t: number) => number) =>
  Array.from({ length: 200 }, (_, i) => ({ timeS: i / 100, force: of(i / 100) }));

describe('free fall of the club', () => {
  it('lasts from where the force falls off to where it comes back', () => {
    const fall = clubFall(forces((t) => (t > 0.5 && t < 0.85 ? 0.3 : 9.8)));
    expect(fall?.releaseS).toBeCloseTo(0.5, 1);
    expect(fall?.endS).toBeCloseTo(0.85, 1);
  });
  it('is none where the club only swings', () => {
    expect(clubFall(forces((t) => 9.8 + 9 * Math.sin(40 * t)))).toBeNull();
    expect(clubFall(forces(() => 9.8))).toBeNull();
    expect(clubFall([])).toBeNull();
  });
  it('has no end where it still falls', () => {
    expect(clubFall(forces((t) => (t > 1 ? 0 : 9.8)))?.endS).toBeNull();
  });
});

describe('a third sensor on the club', () => {
  const script = 'r b r:losing-rotation r:missed-catch walk r';
  const options = { seed: 61, script, club: true };
  const { truth } = simulateSession(options);
  const inputs = inputsOf(options);
  const withClub = analyse(inputs).result;
  const without = analyse(
    inputs.filter((i) => i.kind === 'event' || i.sample.sensor !== 'club'),
  ).result;

  it('sees the release and the catch within a sample', () => {
    const rehearsals = truth.repetitions.flatMap((r) => (r.kind === 'rehearsal' ? [r] : []));
    const found = withClub.repetitions.flatMap((r) => (r.kind === 'rehearsal' ? [r] : []));
    expect(found).toHaveLength(rehearsals.length);
    rehearsals.forEach((t, i) => {
      const r = found[i];
      expect(r?.flags).toContain('release-measured');
      expect(Math.abs((r?.releaseS ?? NaN) - t.clubReleaseS)).toBeLessThan(0.015);
      if (t.catchS === null) expect(r?.catchS).toBeNull();
      else expect(Math.abs((r?.catchS ?? NaN) - t.catchS)).toBeLessThan(0.015);
    });
  });

  it('measures the fall in cm from that time (d = g t^2 / 2)', () => {
    const r = withClub.repetitions[0];
    const t = truth.repetitions[0];
    if (r?.kind !== 'rehearsal' || t?.kind !== 'rehearsal' || t.catchS === null) throw new Error();
    const fallen = 0.5 * 9.80665 * (t.catchS - t.clubReleaseS) ** 2 * 100;
    expect(Math.abs((r.measures.fallCm ?? NaN) - fallen)).toBeLessThan(6);
  });

  it('changes nothing of what is found where it is absent', () => {
    const kinds = withClub.repetitions.map((r) => r.kind);
    expect(without.repetitions.map((r) => r.kind)).toEqual(kinds);
    for (const r of without.repetitions) expect(r.flags).not.toContain('release-measured');
    const plain = analyse(inputsOf({ seed: 61, script })).result;
    expect(without).toEqual(plain);
  });

  it('is not waited for once it is silent', () => {
    const cut = inputs.filter(
      (i) => i.kind === 'event' || i.sample.sensor !== 'club' || i.sample.timeS < 20,
    );
    expect(analyse(cut).result.repetitions.map((r) => r.kind)).toEqual(
      withClub.repetitions.map((r) => r.kind),
    );
  });
});
