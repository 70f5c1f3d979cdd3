export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** Rows closer than this are one, px. */
const SAME_ROW = 4;

/** Where an arrow key leads in a list that wraps into rows; `null` for other keys and at the ends. */
export function walk(key: string, from: number, spots: readonly Spot[]): number | null {
  const here = spots[from];
  if (here === undefined) return null;
  const inList = (to: number): number | null => (to >= 0 && to < spots.length ? to : null);
  switch (key) {
    case 'ArrowLeft':
      return inList(from - 1);
    case 'ArrowRight':
      return inList(from + 1);
    case 'Home':
      return 0;
    case 'End':
      return spots.length - 1;
    case 'ArrowUp':
      return nearestInNextRow(spots, here, -1);
    case 'ArrowDown':
      return nearestInNextRow(spots, here, 1);
    default:
      return null;
  }
}

function nearestInNextRow(spots: readonly Spot[], here: Spot, way: 1 | -1): number | null {
  const ahead = spots
    .map((spot, index) => ({ index, dx: Math.abs(spot.x - here.x), dy: (spot.y - here.y) * way }))
    .filter(({ dy }) => dy > SAME_ROW);
  const row = Math.min(...ahead.map(({ dy }) => dy)) + SAME_ROW;
  const best = ahead.filter(({ dy }) => dy <= row).sort((a, b) => a.dx - b.dx)[0];
  return best?.index ?? null;
}
