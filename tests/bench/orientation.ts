import { parseArgs } from 'node:util';
import { mean } from '../../src/math/stats.ts';
import { type Trial, TrialError, readTrial, trialFiles } from './broad.ts';
import { type OrientationError, orientationError } from './orientationError.ts';
import { RUNNERS, type Runner } from './runFilter.ts';

// npm run bench:orientation -- <folder of CSVs> [--json]
// Every filter against optical truth: RMSE in degrees by the error definition of the BROAD publication.

const USAGE = 'Usage: npm run bench:orientation -- <folder of CSVs> [--json]';

interface Row extends OrientationError {
  readonly trial: string;
  readonly filter: string;
  readonly isDefault: boolean;
}

interface Timing {
  samples: number;
  ms: number;
}

function measure(runner: Runner, trial: Trial, timing: Timing): Row {
  const start = performance.now();
  const estimates = runner.run(trial.samples);
  timing.ms += performance.now() - start;
  timing.samples += trial.samples.length;
  const { filter, isDefault } = runner;
  return { trial: trial.name, filter, isDefault, ...orientationError(trial, estimates) };
}

const cells = (e: OrientationError): string =>
  [e.totalDeg, e.headingDeg, e.inclinationDeg].map((v) => v.toFixed(2).padStart(8)).join(' ');

function meanOf(rows: readonly Row[]): OrientationError {
  const of = (key: keyof OrientationError): number => mean(rows.map((r) => r[key])) ?? NaN;
  return {
    totalDeg: of('totalDeg'),
    headingDeg: of('headingDeg'),
    inclinationDeg: of('inclinationDeg'),
  };
}

function printTable({ filter, isDefault }: Runner, rows: readonly Row[], timing: Timing): void {
  const rate = Math.round((1000 * timing.samples) / timing.ms).toLocaleString('en');
  const us = ((1000 * timing.ms) / timing.samples).toFixed(2);
  console.log(`\n${filter}${isDefault ? ' (default)' : ''}: ${rate} samples/s, ${us} us each`);
  console.log(`${'RMSE, deg'.padEnd(46)}    total  heading inclination`);
  for (const row of rows) console.log(`${row.trial.padEnd(46)} ${cells(row)}`);
  console.log(`${'mean'.padEnd(46)} ${cells(meanOf(rows))}`);
}

function main(): void {
  const { folder, json } = argumentsOf();
  const trials = trialFiles(folder).map(readTrial);
  const all = RUNNERS.flatMap((runner) => {
    const timing = { samples: 0, ms: 0 };
    const rows = trials.map((trial) => measure(runner, trial, timing));
    if (!json) printTable(runner, rows, timing);
    return rows;
  });
  if (json) console.log(JSON.stringify(all));
}

function argumentsOf(): { folder: string; json: boolean } {
  try {
    const options = { json: { type: 'boolean', default: false } } as const;
    const { values, positionals } = parseArgs({ options, allowPositionals: true });
    const [folder, ...more] = positionals;
    if (folder === undefined || more.length > 0) throw new Error('one folder is needed');
    return { folder, json: values.json };
  } catch (error) {
    return stop(`${error instanceof Error ? error.message : String(error)}\n${USAGE}`, 2);
  }
}

function stop(message: string, code: number): never {
  console.error(message);
  process.exit(code);
}

try {
  main();
} catch (error) {
  if (!(error instanceof TrialError)) throw error;
  stop(error.message, 3);
}
