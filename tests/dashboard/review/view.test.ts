import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { walk } from '../../../src/dashboard/review/strip/walk.ts';
import {
  SHOWN_MARKS,
  WHOLE_SESSION,
  neighbour,
  readView,
  shownOf,
  writeView,
} from '../../../src/dashboard/review/view.ts';
import { ball, rehearsal } from '../../practice/scripted.ts';

const session = [
  rehearsal(1),
  rehearsal(2, { holdS: 0.4 }),
  ball(3),
  rehearsal(4, { flags: ['gap'] }),
  rehearsal(5),
];
const indices = (marks: readonly (typeof SHOWN_MARKS)[number][], corrected = new Map()): number[] =>
  shownOf(session, { marks }, corrected).map((r) => r.index);

describe('the view in the address', () => {
  it('comes back as it was written', () => {
    const index = fc.integer({ min: 1, max: 999_999 });
    fc.assert(
      fc.property(
        fc.subarray([...SHOWN_MARKS]),
        fc.option(index),
        fc.option(index),
        (marks, open, beside) => {
          const view = { marks, open, beside: open === null ? null : beside };
          expect(readView(writeView(view))).toEqual(view);
        },
      ),
    );
  });

  it('is the whole session where the query says nothing that is known', () => {
    for (const query of ['', 'show=', 'show=pink', 'repetition=0', 'repetition=x', 'beside=3', '%'])
      expect(readView(query)).toEqual(WHOLE_SESSION);
    fc.assert(fc.property(fc.string(), (query) => void readView(query)));
  });
});

describe('the filter', () => {
  it('lets kinds and verdicts through, and all where none is chosen', () => {
    expect(indices([])).toEqual([1, 2, 3, 4, 5]);
    expect(indices(['passed'])).toEqual([1, 5]);
    expect(indices(['notPassed', 'ball'])).toEqual([2, 3]);
    expect(indices(['notScored'])).toEqual([4]);
  });

  it('goes by the kind that was set by hand', () => {
    const corrected = new Map([[1, 'ball' as const]]);
    expect(indices(['ball'], corrected)).toEqual([1, 3]);
    expect(indices(['passed'], corrected)).toEqual([5]);
  });

  it('leads to the nearest neighbour that it shows, also from one that it hides', () => {
    const shown = shownOf(session, { marks: ['passed'] });
    expect(neighbour(shown, 1, 1)).toBe(5);
    expect(neighbour(shown, 3, -1)).toBe(1);
    expect(neighbour(shown, 5, 1)).toBeNull();
  });
});

describe('walking a list that wraps', () => {
  const spots = Array.from({ length: 7 }, (_, i) => ({
    x: (i % 3) * 30,
    y: Math.floor(i / 3) * 40,
  }));

  it('goes along, up and down, and stops at the ends', () => {
    expect(walk('ArrowRight', 0, spots)).toBe(1);
    expect(walk('ArrowLeft', 0, spots)).toBeNull();
    expect(walk('ArrowDown', 1, spots)).toBe(4);
    expect(walk('ArrowDown', 5, spots)).toBe(6);
    expect(walk('ArrowDown', 6, spots)).toBeNull();
    expect(walk('ArrowUp', 6, spots)).toBe(3);
    expect(walk('End', 0, spots)).toBe(6);
    expect(walk('Home', 5, spots)).toBe(0);
    expect(walk('x', 5, spots)).toBeNull();
  });
});
