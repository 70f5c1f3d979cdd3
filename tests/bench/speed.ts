// Time to analyse an hour of two sensors again, its reading included, beside its bounds and beside the bare
// orientation filter over the same samples: npm run bench:speed [-- --json] [-- --minutes 60].
// The compiled program is measured, as it ships: tsx would add a call for every closure that is made.
import { existsSync, renameSync, rmSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import type { AnalysisInput } from '../../src/analysis/contract.ts';
import type * as PlanModule from '../../src/coaching/plan.ts';
import type * as FilterModule from '../../src/orientation/defaultFilter.ts';
import type * as SyntheticModule from '../../src/sensors/sources/synthetic/index.ts';
import type * as AnalyseModule from '../../src/sessions/analyseSession.ts';
import type * as OpenModule from '../../src/sessions/openSession.ts';
import type * as WriterModule from '../../src/sessions/write/sessionWriter.ts';

const built = async <Module>(path: string): Promise<Module> =>
  (await import(new URL(`../../dist/${path}.js`, import.meta.url).href)) as Module;
const { DEFAULT_PLAN } = await built<typeof PlanModule>('coaching/plan');
const { defaultFilter } = await built<typeof FilterModule>('orientation/defaultFilter');
const { streamSession } = await built<typeof SyntheticModule>('sensors/sources/synthetic/index');
const { analyseSession } = await built<typeof AnalyseModule>('sessions/analyseSession');
const { openSession } = await built<typeof OpenModule>('sessions/openSession');
const { writeSession } = await built<typeof WriterModule>('sessions/write/sessionWriter');

const BOUNDS = { wholeS: 4, ratio: 6 };
const RUNS = 3;
const SEED = 2026;
/** The practice that a coach asks for: a rehearsal each fifteen seconds, balls, walking and waiting. */
const ROUND =
  'r r:short-hold b r r:losing-lean b:0.5 walk r r b p r:arms-first r b:0.8 tee idle:20 ';

const { values } = parseArgs({
  options: { json: { type: 'boolean' }, minutes: { type: 'string', default: '60' } },
});
const minutes = Number(values.minutes);

function* sessionOf(seconds: number): Generator<AnalysisInput[]> {
  for (const item of streamSession({ seed: SEED, script: ROUND.repeat(100) })) {
    if (item.timeS > seconds) return;
    if (item.kind === 'event') yield [{ kind: 'event', event: item.event }];
    if (item.kind === 'packet')
      yield item.packet.samples.map((sample) => ({ kind: 'sample', sample }));
  }
}

/** Made once and kept in the system's folder for such things. */
async function recording(): Promise<string> {
  const folder = join(tmpdir(), `stillcatch-bench-${SEED}-${minutes}min`);
  if (existsSync(folder)) return folder;
  process.stderr.write(`making ${minutes} simulated minutes (kept in ${folder}) ...\n`);
  const part = `${folder}.part`;
  rmSync(part, { recursive: true, force: true });
  await writeSession(
    part,
    { subject: 'bench', session: '1', hand: 'right', startedAt: null, simulated: true },
    sessionOf(minutes * 60),
  );
  renameSync(part, folder);
  return folder;
}

const seconds = (sinceMs: number): number => (performance.now() - sinceMs) / 1000;

async function parse(path: string): Promise<{ parseS: number; rows: number }> {
  const since = performance.now();
  const session = await openSession(path);
  let rows = 0;
  for await (const batch of session.inputs())
    for (const input of batch) if (input.kind === 'sample') rows++;
  await session.close();
  return { parseS: seconds(since), rows };
}

/** Only the filter's own updates are timed; samples come in batches as the reader gives them. */
async function filter(path: string): Promise<number> {
  const session = await openSession(path);
  const tracks = {
    chest: { state: defaultFilter.create(), lastS: NaN },
    trailArm: { state: defaultFilter.create(), lastS: NaN },
    club: { state: defaultFilter.create(), lastS: NaN },
  };
  let ms = 0;
  for await (const batch of session.inputs()) {
    const since = performance.now();
    for (const input of batch) {
      if (input.kind === 'event') continue;
      const { sample } = input;
      const track = tracks[sample.sensor];
      defaultFilter.update(track.state, sample, sample.timeS - track.lastS);
      track.lastS = sample.timeS;
    }
    ms += performance.now() - since;
  }
  await session.close();
  return ms / 1000;
}

async function whole(
  path: string,
): Promise<{ wholeS: number; wholeCpuS: number; repetitions: number }> {
  const since = performance.now();
  const cpu = process.cpuUsage();
  const session = await openSession(path);
  const analysis = await analyseSession(session, DEFAULT_PLAN);
  await session.close();
  const { user, system } = process.cpuUsage(cpu);
  return {
    wholeS: seconds(since),
    wholeCpuS: (user + system) / 1e6,
    repetitions: analysis.repetitions.length,
  };
}

const path = await recording();
const runs = {
  parseS: [] as number[],
  filterS: [] as number[],
  wholeS: [] as number[],
  wholeCpuS: [] as number[],
};
let rows = 0;
let repetitions = 0;
// the first round warms up and is not counted
for (let run = 0; run <= RUNS; run++) {
  const parsed = await parse(path);
  const filterS = await filter(path);
  const analysed = await whole(path);
  rows = parsed.rows;
  repetitions = analysed.repetitions;
  if (run === 0) continue;
  runs.parseS.push(parsed.parseS);
  runs.filterS.push(filterS);
  runs.wholeS.push(analysed.wholeS);
  runs.wholeCpuS.push(analysed.wholeCpuS);
}
// the best of the runs: whatever else the machine does can only add
const parseS = Math.min(...runs.parseS);
const filterS = Math.min(...runs.filterS);
const wholeS = Math.min(...runs.wholeS);
const wholeCpuS = Math.min(...runs.wholeCpuS);
const found = {
  minutes,
  rows,
  repetitions,
  parseS,
  filterS,
  wholeS,
  wholeCpuS,
  ratio: wholeS / filterS,
  rowsPerS: rows / wholeS,
  peakMiB: process.resourceUsage().maxRSS / 1024,
  loadAverage: loadavg()[0],
  bounds: BOUNDS,
  runs,
};

const verdict = (ok: boolean): string => (ok ? 'within' : 'OVER');
const line = (what: string, value: string, bound = ''): string =>
  `${what.padEnd(34)}${value.padStart(12)}  ${bound}`.trimEnd();

const text = [
  `${minutes} min of two sensors (simulated), ${rows} rows, ${repetitions} repetitions found; best of ${RUNS} runs`,
  line('reading alone', `${parseS.toFixed(2)} s`, `${Math.round(rows / parseS)} rows/s`),
  line('bare filter over the same samples', `${filterS.toFixed(2)} s`, 'the peer'),
  line(
    'whole analysis, reading included',
    `${wholeS.toFixed(2)} s`,
    `bound ${BOUNDS.wholeS} s an hour: ${verdict(wholeS <= (BOUNDS.wholeS * minutes) / 60)}`,
  ),
  line(
    'whole analysis over bare filter',
    found.ratio.toFixed(1),
    `bound ${BOUNDS.ratio}: ${verdict(found.ratio <= BOUNDS.ratio)}`,
  ),
  line('  of it processor time', `${wholeCpuS.toFixed(2)} s`, 'all threads'),
  line('rows analysed a second', String(Math.round(found.rowsPerS))),
  line('most memory (all runs)', `${Math.round(found.peakMiB)} MiB`),
  line(
    'load average meanwhile',
    (found.loadAverage ?? 0).toFixed(1),
    'over 2: others were at work',
  ),
];
process.stdout.write(
  values.json === true ? `${JSON.stringify(found, null, 2)}\n` : `${text.join('\n')}\n`,
);
