import { describe, expect, it } from 'vitest';
import { degrees, radians } from '../../../src/math/angle.ts';
import { aboutY, quatAngle } from '../../../src/math/quat.ts';
import { TILE, tilesOf } from '../../../src/dashboard/review/multiples/tiles.ts';
import {
  timeRange,
  valueAt,
  valueRange,
} from '../../../src/dashboard/review/repetition/curveLines.ts';
import { alignOf, eventAfter, eventsOf } from '../../../src/dashboard/review/repetition/events.ts';
import { poseAt } from '../../../src/dashboard/review/repetition/poseAt.ts';
import type { OverviewEntry, RepetitionCurves } from '../../../src/streaming/sessionsContract.ts';
import { ball, rehearsal } from '../../practice/scripted.ts';

/** Flexion and turn grow by a degree each hundredth of a second from `fromS`. */
function ramp(alignS: number, fromS: number, count: number): RepetitionCurves {
  const timeS = Array.from({ length: count }, (_, i) => fromS + i / 100);
  const column = timeS.map((_, i) => i);
  return {
    index: 1,
    kind: 'rehearsal',
    alignS,
    timeS,
    flexionDeg: column,
    turnDeg: column,
    leanDeg: column,
    elevationDeg: column,
    keptRotationDeg: column.map((v) => (v < 50 ? null : v)),
    poses: [],
    address: null,
  };
}

describe('the events of a repetition', () => {
  it('stand in the order of time; what was not seen is left out', () => {
    const names = (r: Parameters<typeof eventsOf>[0]) => eventsOf(r).map((e) => e.name);
    expect(names(rehearsal(1))).toEqual(['start', 'top', 'release', 'armStart', 'catch']);
    expect(names(rehearsal(1, { armStartS: 11.9, catchS: null }))).toEqual([
      'start',
      'top',
      'armStart',
      'release',
    ]);
    expect(names(ball(1))).toEqual(['start', 'top', 'delivery', 'impact']);
  });

  it('are gone through one after the other, and from the end to the first', () => {
    const events = eventsOf(rehearsal(1));
    expect(eventAfter(events, 12)?.name).toBe('armStart');
    expect(eventAfter(events, 99)?.name).toBe('start');
    expect(eventAfter([], 0)).toBeUndefined();
  });
});

describe('curves laid over each other', () => {
  it('share a time axis with zero at the release, whenever each was', () => {
    const [a, b] = [ramp(12, 10, 301), ramp(100, 99, 151)];
    const time = timeRange([
      { curves: a, alignS: 12 },
      { curves: b, alignS: 100 },
    ]);
    expect(time.low).toBeCloseTo(-2, 6);
    expect(time.high).toBeCloseTo(1, 6);
    expect(alignOf(rehearsal(1))).toBe(12);
  });

  it('have one range of values for both', () => {
    const all = [
      { curves: ramp(0, 0, 11), alignS: 0 },
      { curves: ramp(0, 0, 81), alignS: 0 },
    ];
    expect(valueRange(all, 'flexionDeg')).toEqual({ low: 0, high: 80 });
  });

  it('give the value of the nearest instant, none in a gap or outside', () => {
    const curves = ramp(12, 10, 101);
    expect(valueAt(curves, 'flexionDeg', 10.204)).toBe(20);
    expect(valueAt(curves, 'flexionDeg', 10.206)).toBe(21);
    expect(valueAt(curves, 'flexionDeg', 11)).toBe(100);
    expect(valueAt(curves, 'keptRotationDeg', 10.2)).toBeNull();
    expect(valueAt(curves, 'flexionDeg', 9)).toBeNull();
    expect(valueAt(curves, 'flexionDeg', 12)).toBeNull();
  });
});

describe('the body at the cursor', () => {
  const pose = (timeS: number, deg: number) => ({
    timeS,
    thorax: aboutY(radians(deg)),
    humerus: aboutY(radians(2 * deg)),
  });
  const poses = [pose(1, 0), pose(1.1, 30), pose(2, 60)];

  it('is turned as far as the time between two poses has gone', () => {
    const at = poseAt(poses, 1.05)!;
    expect(degrees(quatAngle(at.thorax, aboutY(radians(15))))).toBeCloseTo(0, 4);
    expect(degrees(quatAngle(at.humerus, aboutY(radians(30))))).toBeCloseTo(0, 4);
    expect(poseAt(poses, 2)!.thorax).toEqual(poses[2]!.thorax);
  });

  it('is not invented where samples were lost, nor after the last', () => {
    expect(poseAt(poses, 1.5)).toBeNull();
    expect(poseAt(poses, 2.01)).toBeNull();
    expect(poseAt([], 1)).toBeNull();
  });
});

describe('small multiples', () => {
  const entry = (index: number, lift: number): OverviewEntry => ({
    index,
    kind: 'rehearsal',
    passed: true,
    alignS: 100 * index,
    offsetS: [-1.5, 0, 1],
    flexionDeg: [lift, lift, lift + 40],
    turnDeg: [-90, -90, null],
  });

  it('stand on common axes with the release at one place', () => {
    const { tiles, flexion } = tilesOf([entry(1, 0), entry(2, 20)]);
    expect(flexion).toEqual({ low: 0, high: 60 });
    const release = (TILE.width * 1.5) / 2.5;
    expect(tiles.get(1)!.flexion).toBe(`M0 36L${release} 36L100 12`);
    expect(tiles.get(2)!.flexion).toBe(`M0 24L${release} 24L100 0`);
    expect(tiles.get(1)!.turn).toMatch(/^M0 [\d.]+L60 [\d.]+$/);
  });
});
