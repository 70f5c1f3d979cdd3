import type { ClockRun } from '../sensors/clock/wholeClock.ts';
import type { SensorRole } from '../sensors/sample.ts';
import { DERIVATIVES, writeDerivative } from './derivatives.ts';

/** The final clock fit of each track of a recording, by runs of its sensor's clock. */
export type ClockFits = Partial<Record<SensorRole, readonly ClockRun[]>>;

export const CLOCK_FITS_FILE = `${DERIVATIVES}/clockFit.json`;

const DESCRIPTION =
  "Final session time, s = slope x device time + offsetS, for each run of a sensor's clock (fromS to untilS, as recorded). Device time is the column device_time, s, or where a sensor sends none (kind counted) the row, from 0, / SamplingFrequency. residualMs: how far it may be off. recordedOffMs: 95th percentile of the distance of the recorded time from it; that one is of the fit while recording, by which the practice was judged.";

const METHOD = 'line under the earliest arrivals (delay only adds), over the whole run';
const METHOD_ASKED = `${METHOD}, and above the questions that the device answered`;

/** A cache: it may be deleted and is computed again. */
export function writeClockFits(session: string, fits: ClockFits): Promise<void> {
  const tracks = Object.entries(fits).map(([role, runs]) => [role, { runs: runs.map(runOf) }]);
  return writeDerivative(session, CLOCK_FITS_FILE, {
    schema: 1,
    description: DESCRIPTION,
    ...(Object.fromEntries(tracks) as object),
  });
}

const runOf = (run: ClockRun) => ({
  fromS: rounded(run.fromS, 6),
  untilS: rounded(run.untilS, 6),
  kind: run.kind,
  method: run.answers > 0 ? METHOD_ASKED : METHOD,
  slope: rounded(run.slope, 12),
  offsetS: rounded(run.offset, 6),
  residualMs: rounded(run.residualMs, 3),
  recordedOffMs: rounded(run.movedMs, 3),
  packets: run.packets,
  answers: run.answers,
});

const rounded = (value: number, decimals: number): number => Number(value.toFixed(decimals));
