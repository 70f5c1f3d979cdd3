import { type Range, shareOf } from './scale.ts';

export interface Box {
  readonly width: number;
  readonly height: number;
}

/** One decimal of a drawing unit: less is not seen. */
const digits = (value: number): string => String(Math.round(value * 10) / 10);

/**
 * An SVG path through (x, y); a `null` lifts the pen. Points outside `x` are left out; y grows upward.
 * @param xs as many as `ys`
 */
export function pathOf(
  xs: readonly number[],
  ys: readonly (number | null)[],
  ranges: { readonly x: Range; readonly y: Range },
  box: Box,
): string {
  let path = '';
  let drawing = false;
  xs.forEach((x, i) => {
    const y = ys[i] ?? null;
    if (y === null || x < ranges.x.low || x > ranges.x.high) {
      drawing = false;
      return;
    }
    const px = digits(shareOf(ranges.x, x) * box.width);
    const py = digits((1 - shareOf(ranges.y, y)) * box.height);
    path += `${drawing ? 'L' : 'M'}${px} ${py}`;
    drawing = true;
  });
  return path;
}
