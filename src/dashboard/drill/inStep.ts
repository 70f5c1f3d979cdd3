import { DRILL, type Moments } from './model.ts';

/** After the catch (or where it would have been), s. */
const AFTER_S = 1;

/** The drill's knots beside those of a repetition: start, top, release, catch, end. */
function knots(of: Moments): readonly (readonly [number, number])[] {
  const { startS, topS, releaseS, catchS } = of;
  const endOfFallS = catchS ?? releaseS + (DRILL.catchS - DRILL.releaseS);
  return [
    [0, startS - DRILL.startS],
    [DRILL.startS, startS],
    [DRILL.topS, topS],
    [DRILL.releaseS, releaseS],
    [DRILL.catchS, endOfFallS],
    [DRILL.endS, endOfFallS + AFTER_S],
  ];
}

function along(pairs: readonly (readonly [number, number])[], x: number): number {
  const i = pairs.findIndex(([from]) => x < from);
  const after = Math.max(1, i < 0 ? pairs.length - 1 : i);
  const [[x0, y0], [x1, y1]] = [pairs[after - 1]!, pairs[after]!];
  return x1 === x0 ? y0 : y0 + ((x - x0) * (y1 - y0)) / (x1 - x0);
}

/** The moment of a repetition (its clock) that belongs to `drillS` of the drill, and the other way round. */
export const momentOf = (of: Moments, drillS: number): number => along(knots(of), drillS);

export const drillMoment = (of: Moments, timeS: number): number =>
  along(
    knots(of).map(([drillS, itsS]) => [itsS, drillS]),
    timeS,
  );
