import { describe, expect, it } from 'vitest';
import { CHANNELS } from '../../../../src/sensors/sources/synthetic/coordinates.ts';
import { createScene } from '../../../../src/sensors/sources/synthetic/scene.ts';
import { parseScript } from '../../../../src/sensors/sources/synthetic/script.ts';
import { streamScene } from '../../../../src/sensors/sources/synthetic/simulation.ts';

describe('a long session as a stream', () => {
  it('holds only what is still to come, and its truths leave with it', () => {
    const scene = createScene(2);
    const script = 'r*20 b*10 walk*3 tee*3 p*5 r:missed-catch*10';
    let repetitions = 0;
    let most = 0;
    for (const item of streamScene(scene, { seed: 2, rateHz: 20 }, parseScript(script))) {
      if (item.kind === 'repetition') repetitions++;
      const knots = CHANNELS.reduce((n, name) => n + scene.score.channels[name].length, 0);
      most = Math.max(most, knots + scene.score.shocks.length + scene.repetitions.length);
    }
    expect(repetitions).toBe(45);
    expect(most).toBeLessThan(600);
  });

  it('gives items in order of time', () => {
    let last = 0;
    for (const item of streamScene(createScene(3), { seed: 3 }, parseScript('r b'))) {
      expect(item.timeS).toBeGreaterThanOrEqual(last);
      last = item.timeS;
    }
  });
});
