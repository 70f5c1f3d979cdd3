import { describe, expect, it, vi } from 'vitest';
import { MonotonicStore } from '../../src/hub/people/limitStore.ts';

const MINUTE = 60_000;

function counting() {
  const clock = { ms: 1000 };
  const store = new MonotonicStore(undefined, () => clock.ms);
  const count = (key: string): { current: number; ttl: number } => {
    let counted = { current: 0, ttl: 0 };
    store.incr(key, (_error, result) => (counted = result ?? counted), MINUTE);
    return counted;
  };
  return { clock, store, count };
}

describe('the counts of a limit', () => {
  it('go by the monotonic clock: another time of day neither forgives nor locks out', () => {
    const { clock, count } = counting();
    expect(count('a')).toEqual({ current: 1, ttl: MINUTE });
    const now = vi.spyOn(Date, 'now').mockReturnValue(Date.now() + 10 * MINUTE);
    clock.ms += 1000;
    expect(count('a')).toEqual({ current: 2, ttl: MINUTE - 1000 });
    now.mockReturnValue(0);
    expect(count('a')).toEqual({ current: 3, ttl: MINUTE - 1000 });
    now.mockRestore();
    clock.ms += MINUTE;
    expect(count('a')).toEqual({ current: 1, ttl: MINUTE });
  });

  it('are each name’s own, of each limit, and the oldest go first', () => {
    const { store, count } = counting();
    count('a');
    expect(count('b').current).toBe(1);
    store.child().incr('a', (_error, result) => expect(result?.current).toBe(1), MINUTE);
    for (let n = 0; n < 4999; n++) count(`c${n}`);
    expect(count('b').current).toBe(2);
    expect(count('a').current).toBe(1);
  });
});
