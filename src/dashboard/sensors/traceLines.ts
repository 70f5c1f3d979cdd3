export const WIDTH = 200;
export const HEIGHT = 44;
/** A quick turn of the arm fills the height; slower movement still shows. */
const FULL_DEG_PER_S = 400;

/** Angular speed, deg/s, oldest first; `null` where nothing came. */
export type Values = readonly (number | null)[];

const height = (degPerS: number): number =>
  HEIGHT - 2 - (HEIGHT - 4) * Math.sqrt(Math.min(1, degPerS / FULL_DEG_PER_S));

/** One stretch of line for each run of readings; where none came there is no line. */
export function traceLines(values: Values): string[] {
  const step = WIDTH / Math.max(1, values.length - 1);
  const runs: string[][] = [[]];
  values.forEach((v, i) => {
    if (v === null) runs.push([]);
    else runs.at(-1)?.push(`${(i * step).toFixed(1)},${height(v).toFixed(1)}`);
  });
  return runs.filter((run) => run.length > 1).map((run) => run.join(' '));
}
