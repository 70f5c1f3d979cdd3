import { describe, expect, it } from 'vitest';
import { STOP_IDS, stopAmong, stopToday, withStop } from '../../src/practice/stops.ts';

const at = (day: number, hour: number): number => new Date(2026, 4, day, hour).getTime();

describe('a stop', () => {
  it('is the gravest warning of a practice that asks for no more today, if any does', () => {
    const ids = (...all: string[]) => all.map((id) => ({ id })) as { id: 'missed' }[];
    expect(stopAmong(ids('missed', 'volume', 'pain-next-day', 'own-range'))).toBeNull();
    expect(stopAmong(ids('pain-now', 'missed'))).toBe('pain-now');
    expect(stopAmong(ids('pain-now', 'pain-high', 'red-flag'))).toBe('red-flag');
  });

  it('holds until the end of its day', () => {
    for (const id of STOP_IDS) {
      const stop = withStop(null, id, at(3, 9));
      expect(stop).toEqual({ id, atMs: at(3, 9), read: false });
      expect(stopToday(stop, at(3, 23))).toBe(stop);
      expect(stopToday(stop, at(4, 0))).toBeNull();
    }
    expect(stopToday(undefined, at(3, 9))).toBeNull();
  });

  it('is not made milder by a later one of the same day, and is to be read again', () => {
    const flag = { ...withStop(null, 'red-flag', at(3, 9)), read: true };
    expect(withStop(flag, 'pain-now', at(3, 18))).toEqual({
      id: 'red-flag',
      atMs: at(3, 18),
      read: false,
    });
    expect(withStop(flag, 'pain-now', at(4, 9)).id).toBe('pain-now');
    expect(withStop(withStop(null, 'pain-now', at(3, 9)), 'red-flag', at(3, 10)).id).toBe(
      'red-flag',
    );
  });
});
