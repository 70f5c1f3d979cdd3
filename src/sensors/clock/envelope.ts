/** When a device clock's instant reached the host: both s, each on its own clock. */
export interface Arrival {
  readonly deviceS: number;
  readonly arrivalS: number;
}

/** `hostS = slope * deviceS + offset`. */
export interface ClockLine {
  readonly slope: number;
  readonly offset: number;
}

export const onLine = (line: ClockLine, deviceS: number): number =>
  line.slope * deviceS + line.offset;

/** Does the path a, b, c bend upwards at b? */
const bendsUp = (a: Arrival, b: Arrival, c: Arrival): boolean =>
  (b.arrivalS - a.arrivalS) * (c.deviceS - b.deviceS) <
  (c.arrivalS - b.arrivalS) * (b.deviceS - a.deviceS);

/**
 * Takes a point into a lower convex hull, in place. Points must come in order of device time.
 * Source: the monotone chain of Andrew 1979.
 */
export function pushLowerHull(hull: Arrival[], p: Arrival): void {
  for (;;) {
    const b = hull.at(-1);
    if (b === undefined) break;
    if (b.deviceS === p.deviceS) {
      if (b.arrivalS <= p.arrivalS) return;
      hull.pop();
      continue;
    }
    const a = hull.at(-2);
    if (a === undefined || bendsUp(a, b, p)) break;
    hull.pop();
  }
  hull.push(p);
}

/** The highest line of the given slope that has no point under it. The hull must not be empty. */
export function lineUnder(hull: readonly Arrival[], slope: number): ClockLine {
  let offset = Infinity;
  for (const p of hull) offset = Math.min(offset, p.arrivalS - slope * p.deviceS);
  return { slope, offset };
}

/** Slope of the hull's edge over `atS`; `null` for a hull of fewer than two points. */
function edgeSlope(hull: readonly Arrival[], atS: number): number | null {
  for (let i = 1; i < hull.length; i++) {
    const a = hull[i - 1];
    const b = hull[i];
    if (!a || !b) continue;
    if (b.deviceS >= atS || i === hull.length - 1)
      return (b.arrivalS - a.arrivalS) / (b.deviceS - a.deviceS);
  }
  return null;
}

/**
 * The line under all arrivals with the least summed distance to them: the lower hull's edge over the
 * middle of the span. A delay only adds, so the fastest packets carry the clock.
 * Source: the convex-hull clock fit of Time::Skew (after Zhang, Liu, Xia 2002, INFOCOM).
 * @param slopeTolerance the slope is kept within 1 +- this
 */
export function lowerEnvelope(hull: readonly Arrival[], slopeTolerance: number): ClockLine {
  const first = hull[0];
  const last = hull.at(-1);
  const middle = first && last ? (first.deviceS + last.deviceS) / 2 : 0;
  const slope = edgeSlope(hull, middle) ?? 1;
  return lineUnder(hull, Math.min(1 + slopeTolerance, Math.max(1 - slopeTolerance, slope)));
}
