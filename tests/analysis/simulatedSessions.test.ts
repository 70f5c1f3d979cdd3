import { describe, expect, it } from 'vitest';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import { simulateSession } from '../../src/sensors/sources/synthetic/index.ts';
import { analyse, inputsOf, withEvent } from './simulated.ts';

/** Bounds of the design's "Accuracy to reach" (95th percentiles); here every value of a few sessions is held to twice that. */
const BOUNDS = {
  flexionTopDeg: 2,
  flexionCatchDeg: 2,
  addedFlexionDeg: 2,
  leanChangeDeg: 2,
  lateralChangeDeg: 2,
  turnTowardTargetDeg: 4,
  keptRotationDeg: 6,
  elevationTopDeg: 4,
} as const;

const script = 'r r b r:short-hold r:arms-first p r:losing-lean r:losing-rotation r:missed-catch';

describe.each([
  { seed: 31, hand: 'right', rateHz: 100 },
  { seed: 32, hand: 'left', rateHz: 104 },
] as const)('a simulated session, $hand hand at $rateHz Hz', ({ seed, hand, rateHz }) => {
  const options = { seed, hand, rateHz, script };
  const { truth } = simulateSession(options);
  const { result } = analyse(inputsOf(options), { hand });

  it('has the repetitions that were done, in order', () => {
    expect(result.repetitions.map((r) => r.kind)).toEqual(truth.repetitions.map((r) => r.kind));
    expect(result.repetitions.map((r) => r.index)).toEqual(truth.repetitions.map((_, i) => i + 1));
  });

  it('fails each faulty rehearsal for its fault first, and passes the good ones', () => {
    const cues = result.repetitions.flatMap((r) =>
      r.kind === 'rehearsal' ? [r.verdict.cue.code] : [],
    );
    expect(cues).toEqual([
      'good',
      'good',
      'hold-longer',
      'chest-first',
      'keep-lean',
      'keep-arm-out',
      'missed-catch',
    ]);
  });

  it('measures each within the bounds', () => {
    result.repetitions.forEach((r, i) => {
      const t = truth.repetitions[i];
      if (r.kind !== 'rehearsal' || t?.kind !== 'rehearsal') return;
      for (const [key, bound] of Object.entries(BOUNDS)) {
        const name = key as keyof typeof BOUNDS;
        const off = Math.abs((r.measures[name] ?? NaN) - (t.measures[name] ?? NaN));
        expect(off, `${r.index} ${name}`).toBeLessThan(bound);
      }
      expect(Math.abs(r.releaseS - t.chestOnsetS)).toBeLessThan(0.025);
      if (t.catchS !== null) expect(Math.abs((r.catchS ?? NaN) - t.catchS)).toBeLessThan(0.03);
    });
  });

  it('keeps the ledger', () => {
    expect(result.ledger.entries).toBe('rrbrrrrr');
    expect(result.ledger.ballsInMix).toBe(1);
  });

  it('knows the rate and that nothing was lost', () => {
    expect(result.quality.chest.rateHz).toBeCloseTo(rateHz, 1);
    expect(result.quality.chest.lostPct).toBeLessThan(1);
  });
});

// A recording may have as few as 50 readings a second; a movement between few readings looks like a blow
describe('with few readings a second', () => {
  const catches = (seed: number, rateHz: number) =>
    analyse(
      inputsOf({ seed, rateHz, script: 'r:missed-catch r r:missed-catch r' }),
    ).result.repetitions.map((r) => r.kind === 'rehearsal' && r.catchS !== null);

  it.each([71, 72])(
    'no catch is invented at 50 Hz, where a soft one may go unseen (seed %i)',
    (seed) => {
      const [first, , third] = catches(seed, 50);
      expect([first, third]).toEqual([false, false]);
    },
  );
  it('at 70 Hz catches are seen and none is invented', () => {
    expect(catches(72, 70)).toEqual([false, true, false, true]);
  });
});

describe('distractors', () => {
  it.each([41, 42, 43])('are no repetitions (seed %i)', (seed) => {
    const options = { seed, script: 'walk tee abort waggle idle abort walk tee waggle takeoff' };
    expect(analyse(inputsOf(options)).result.repetitions).toEqual([]);
  });
  it('leave room for a practice swing, which is listed and not counted', () => {
    const { result } = analyse(inputsOf({ seed: 44, script: 'walk p tee abort p' }));
    expect(result.repetitions.map((r) => r.kind)).toEqual(['practiceSwing', 'practiceSwing']);
    expect(result.ledger.entries).toBe('');
  });
});

describe('what the user marks', () => {
  const inputs = inputsOf({ seed: 45, script: 'p r' });
  const swing = analyse(inputs).result.repetitions[0];
  it('turns a practice swing into a ball', () => {
    const at = (swing?.endS ?? 0) + 1;
    const { result } = analyse(withEvent(inputs, 'mark-ball', at));
    expect(result.ledger.entries).toBe('br');
  });
  it('and a rating of pain raises the warning that stops the day', () => {
    const { result } = analyse(withEvent(inputs, 'pain', 40, 6));
    expect(result.warnings.map((w) => w.id)).toEqual(['pain-high']);
  });
  it('a pause hides what is done until it is resumed', () => {
    const paused = withEvent(inputs, 'pause', (swing?.startS ?? 0) - 1);
    expect(analyse(paused).result.repetitions).toEqual([]);
    const resumed = withEvent(paused, 'resume', (swing?.endS ?? 0) + 1);
    expect(analyse(resumed).result.repetitions.map((r) => r.kind)).toEqual(['rehearsal']);
  });
});

describe('own range', () => {
  it('warns once for each excursion, only where the plan has a range', () => {
    const inputs = inputsOf({ seed: 46, script: 'r r' });
    const plan = { ...DEFAULT_PLAN, ownRange: { externalRotationDeg: 65 } };
    const warned = analyse(inputs, { plan }).result.warnings.map((w) => w.id);
    expect(warned.length).toBeGreaterThanOrEqual(1);
    expect(new Set(warned)).toEqual(new Set(['own-range']));
    expect(analyse(inputs).result.warnings).toEqual([]);
  });
});

describe('a sensor at the end of its range', () => {
  // cleanflight/cleanflight#1467: a clipped gyroscope was integrated as if it had read true
  it('flags the repetition that it touches and leaves it unscored', () => {
    const inputs = inputsOf({ seed: 47, script: 'r r' });
    const first = analyse(inputs).result.repetitions[0];
    if (first?.kind !== 'rehearsal') throw new Error('no rehearsal');
    const clipped = inputs.map((i) =>
      i.kind === 'sample' && Math.abs(i.sample.timeS - first.releaseS - 0.1) < 0.03
        ? { ...i, sample: { ...i.sample, saturated: true } }
        : i,
    );
    const [a, b] = analyse(clipped).result.repetitions;
    expect(a?.flags).toContain('saturated');
    expect(a?.kind === 'rehearsal' && a.verdict.passed).toBe(null);
    expect(b?.flags).not.toContain('saturated');
  });
});
