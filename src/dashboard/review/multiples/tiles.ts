import type { OverviewEntry } from '../../../streaming/sessionsContract.ts';
import { pathOf } from '../plot/path.ts';
import { type Range, rangeOf } from '../plot/scale.ts';

/** Drawing units of one strip of a tile. */
export const TILE = { width: 100, height: 36 } as const;

export interface Tile {
  readonly index: number;
  readonly flexion: string;
  readonly turn: string;
}

export interface Tiles {
  readonly tiles: ReadonlyMap<number, Tile>;
  /** s around the alignment, the same in all tiles. */
  readonly time: Range;
  readonly flexion: Range;
  readonly turn: Range;
}

/** All small multiples on common axes, so that they compare. */
export function tilesOf(entries: readonly OverviewEntry[]): Tiles {
  const time = { low: -1.5, high: 1 };
  const columns = (name: 'flexionDeg' | 'turnDeg'): Range =>
    rangeOf(
      entries.map((e) => e[name]),
      10,
      40,
    );
  const [flexion, turn] = [columns('flexionDeg'), columns('turnDeg')];
  const tiles = entries.map((e): [number, Tile] => [
    e.index,
    {
      index: e.index,
      flexion: pathOf(e.offsetS, e.flexionDeg, { x: time, y: flexion }, TILE),
      turn: pathOf(e.offsetS, e.turnDeg, { x: time, y: turn }, TILE),
    },
  ]);
  return { tiles: new Map(tiles), time, flexion, turn };
}
