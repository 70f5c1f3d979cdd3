import type { Knot } from './channel.ts';

/** A value to be passed at a time; rate and acceleration are to be found. */
export interface ViaPoint {
  readonly timeS: number;
  readonly x: number;
}

/** Third and fourth derivative of the quintic between two knots, at its start and its end. */
function higherDerivatives(p: Knot, q: Knot) {
  const T = q.timeS - p.timeS;
  const d = q.x - p.x;
  const [v0, v1] = [p.v * T, q.v * T];
  const [a0, a1] = [(p.a * T * T) / 2, (q.a * T * T) / 2];
  const c3 = 10 * d - 6 * v0 - 4 * v1 - 3 * a0 + a1;
  const c4 = -15 * d + 8 * v0 + 7 * v1 + 3 * a0 - 2 * a1;
  const c5 = 6 * d - 3 * v0 - 3 * v1 - a0 + a1;
  return {
    third: [(6 * c3) / T ** 3, (6 * c3 + 24 * c4 + 60 * c5) / T ** 3],
    fourth: [(24 * c4) / T ** 4, (24 * c4 + 120 * c5) / T ** 4],
  } as const;
}

/** Solves a small dense system by Gaussian elimination with pivoting; `rows` hold the right side last. */
function solve(rows: number[][]): number[] {
  const n = rows.length;
  const at = (i: number, j: number): number => rows[i]?.[j] ?? 0;
  for (let k = 0; k < n; k++) {
    let pivot = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(at(i, k)) > Math.abs(at(pivot, k))) pivot = i;
    [rows[k], rows[pivot]] = [rows[pivot] ?? [], rows[k] ?? []];
    for (let i = 0; i < n; i++) {
      if (i === k) continue;
      const f = at(i, k) / at(k, k);
      rows[i] = (rows[i] ?? []).map((v, j) => v - f * at(k, j));
    }
  }
  return rows.map((_, i) => at(i, n) / at(i, i));
}

const withUnknowns = (points: readonly ViaPoint[], u: readonly number[]): Knot[] =>
  points.map((p, i) => ({ ...p, v: u[2 * i] ?? 0, a: u[2 * i + 1] ?? 0 }));

/** Steps of the third and fourth derivative at each inner knot. */
function steps(knots: readonly Knot[]): number[] {
  const pieces = knots.slice(1).map((q, i) => higherDerivatives(knots[i] ?? q, q));
  return pieces.slice(1).flatMap((after, i) => {
    const before = pieces[i] ?? after;
    return [after.third[0] - before.third[1], after.fourth[0] - before.fourth[1]];
  });
}

/**
 * The minimum-jerk movement through given points: quintics whose derivatives up to the fourth are
 * continuous (Flash T, Hogan N 1985 J Neurosci 5:1688, movements through via points).
 * @returns knots for `via` alone
 */
export function smoothThrough(from: Knot, via: readonly ViaPoint[], to: Knot): Knot[] {
  const n = 2 * via.length;
  const stepsFor = (u: readonly number[]): number[] => steps([from, ...withUnknowns(via, u), to]);
  const base = stepsFor([]);
  // The steps are linear in the unknown rates and accelerations, so unit vectors give the matrix.
  const columns = Array.from({ length: n }, (_, j) =>
    stepsFor(Array.from({ length: n }, (_, i) => (i === j ? 1 : 0))).map(
      (v, i) => v - (base[i] ?? 0),
    ),
  );
  const rows = base.map((b, i) => [...columns.map((c) => c[i] ?? 0), -b]);
  return withUnknowns(via, solve(rows));
}
