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

function measure(runner: Runner, trial: Trial): Row {
  const { filter, isDefault } = runner;
  return {
    trial: trial.name,
    filter,
    isDefault,
    ...orientationError(trial, runner.run(trial.samples)),
  };
}

const PASSES = 10;

/** Samples a second, warm: the best of a few passes over one trial. */
function speed(runner: Runner, { samples }: Trial): number {
  let best = Infinity;
  for (let i = 0; i < PASSES; i++) {
    const start = performance.now();
    runner.pass(samples);
    best = Math.min(best, performance.now() - start);
  }
  return (1000 * samples.length) / best;
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

function printTable({ filter, isDefault }: Runner, rows: readonly Row[], perS: number): void {
  const rate = Math.round(perS).toLocaleString('en');
  const us = (1e6 / perS).toFixed(2);
  console.log(`\n${filter}${isDefault ? ' (default)' : ''}: ${rate} samples/s, ${us} us each`);
  console.log(`${'RMSE, deg'.padEnd(46)}    total  heading inclination`);
  for (const row of rows) console.log(`${row.trial.padEnd(46)} ${cells(row)}`);
  console.log(`${'mean'.padEnd(46)} ${cells(meanOf(rows))}`);
}

function main(): void {
  const { folder, json } = argumentsOf();
  const trials = trialFiles(folder).map(readTrial);
  const all = RUNNERS.flatMap((runner) => {
    const rows = trials.map((trial) => measure(runner, trial));
    const [first] = trials;
    if (!json && first) printTable(runner, rows, speed(runner, first));
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
