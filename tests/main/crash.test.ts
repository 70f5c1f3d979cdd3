import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/math/random.ts';
import { scratch } from '../sessions/makeSession.ts';
import { crashRound } from './crashRounds.ts';

describe('The whole service, killed in the middle of a practice', () => {
  it('opens its session as interrupted, with every repetition that was seen', async () => {
    const root = scratch();
    const random = seededRandom(11);
    for (let round = 0; round < 3; round++) {
      const { state, repaired, integrity, seen, found, lostS } = await crashRound(root, random());
      expect({ state, repaired, integrity }).toEqual({
        state: 'interrupted',
        repaired: 0,
        integrity: 'ok',
      });
      expect(found).toBeGreaterThanOrEqual(seen);
      console.log(`lost ${lostS.toFixed(2)} s (bound 1 s, see bench:crash)`);
    }
  });
});
