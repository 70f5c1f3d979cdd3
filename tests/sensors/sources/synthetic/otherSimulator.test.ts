import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { degrees } from '../../../../src/math/angle.ts';
import { median } from '../../../../src/math/stats.ts';
import { norm, subtract } from '../../../../src/math/vec3.ts';
import type { ImuSample } from '../../../../src/sensors/sample.ts';
import { simulateSession } from '../../../../src/sensors/sources/synthetic/index.ts';
import { openSession } from '../../../../src/sessions/openSession.ts';

// Another simulator's idea of the same sessions, with exact truth. A sanity check: what a sensor
// feels in a ball or a rehearsal is of the same size in both. Skipped where the shared data is absent.
const folder = fileURLToPath(
  new URL('../../../../../shared/datasets/simulated-sessions/', import.meta.url),
);
const present = existsSync(folder);
if (!present) console.log(`skipped: no other simulator's sessions at ../shared/datasets`);

interface Swing {
  readonly kind: string;
  readonly topS: number;
  readonly endS: number;
}

interface Recorded {
  readonly samples: Record<'chest' | 'trailArm', ImuSample[]>;
  readonly events: readonly string[];
  readonly swings: readonly Swing[];
}

async function theirs(name: string): Promise<Recorded> {
  const session = await openSession(`${folder}${name}.zip`);
  const samples: Recorded['samples'] = { chest: [], trailArm: [] };
  for await (const batch of session.inputs()) {
    for (const input of batch) {
      if (input.kind === 'sample' && input.sample.sensor !== 'club') {
        samples[input.sample.sensor].push(input.sample);
      }
    }
  }
  await session.close();
  const truth = JSON.parse(readFileSync(`${folder}truth/${name}.json`, 'utf8'));
  const swings = truth.repetitions
    .filter((r: { quality?: string }) => r.quality !== 'fault')
    .map((r: { kind: string; top: number; catch?: number; impact?: number }) => ({
      kind: r.kind,
      topS: r.top,
      endS: r.catch ?? r.impact ?? r.top,
    }));
  return { samples, events: session.events.map((e) => e.type), swings };
}

function ours(seed: number): Recorded {
  const s = simulateSession({ seed, script: 'r r b r b' });
  const swings = s.truth.repetitions.map((r) => ({
    kind: r.kind,
    topS: r.topS,
    endS: r.kind === 'ball' ? r.impactS : r.kind === 'rehearsal' ? (r.catchS ?? r.endS) : r.endS,
  }));
  return {
    samples: { chest: [...s.samples.chest], trailArm: [...s.samples.trailArm] },
    events: s.events.map((e) => e.type),
    swings,
  };
}

const during = (samples: readonly ImuSample[], fromS: number, toS: number): ImuSample[] =>
  samples.filter((s) => s.timeS >= fromS && s.timeS <= toS);

const peakRate = (r: Recorded, sensor: 'chest' | 'trailArm', s: Swing): number =>
  Math.max(...during(r.samples[sensor], s.topS, s.endS + 0.3).map((x) => degrees(norm(x.gyro))));

/** Largest second difference of the arm's acceleration near the end: the blow. */
function blow(r: Recorded, s: Swing): number {
  const near = during(r.samples.trailArm, s.endS - 0.02, s.endS + 0.05);
  return Math.max(
    ...near.slice(2).map((x, i) => {
      const [a, b] = [near[i] ?? x, near[i + 1] ?? x];
      return norm(subtract(subtract(x.acc, b.acc), subtract(b.acc, a.acc))) / 2;
    }),
  );
}

const over = (
  list: readonly Recorded[],
  kind: string,
  of: (r: Recorded, s: Swing) => number,
): number =>
  median(list.flatMap((r) => r.swings.filter((s) => s.kind === kind).map((s) => of(r, s)))) ?? NaN;

describe.skipIf(!present)('beside another simulator', async () => {
  const other = present ? await Promise.all(['s11', 's12', 's13'].map(theirs)) : [];
  const own = [1, 2, 3, 4].map(ours);

  it('the calibration has the same steps in the same order', () => {
    for (const r of [...own, ...other]) expect(r.events).toEqual(own[0]?.events);
  });

  it.each([
    ['rehearsal', 'chest'],
    ['rehearsal', 'trailArm'],
    ['ball', 'chest'],
    ['ball', 'trailArm'],
  ] as const)('the fastest rate in a %s is of the same size at the %s', (kind, sensor) => {
    const [a, b] = [own, other].map((l) => over(l, kind, (r, s) => peakRate(r, sensor, s)));
    expect((a ?? NaN) / (b ?? NaN)).toBeGreaterThan(0.6);
    expect((a ?? NaN) / (b ?? NaN)).toBeLessThan(1.7);
  });

  it.each(['rehearsal', 'ball'])(
    'the blow that ends a %s is of the same size at the arm',
    (kind) => {
      const [a, b] = [own, other].map((l) => over(l, kind, blow));
      // theirs are at the large end of the range that we draw from (1.2 to 6 m/s^2)
      expect((a ?? NaN) / (b ?? NaN)).toBeGreaterThan(0.3);
      expect((a ?? NaN) / (b ?? NaN)).toBeLessThan(2.8);
    },
  );

  it.each(['rehearsal', 'ball'])('a %s takes about as long from its top to its end', (kind) => {
    const [a, b] = [own, other].map((l) => over(l, kind, (_, s) => s.endS - s.topS));
    expect((a ?? NaN) / (b ?? NaN)).toBeGreaterThan(0.6);
    expect((a ?? NaN) / (b ?? NaN)).toBeLessThan(1.7);
  });
});
