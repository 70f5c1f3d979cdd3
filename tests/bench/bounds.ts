/**
 * How what a recording costs grows with each thing of which it can have more: each count is doubled up to its bound, and
 * the exponent of the growth is printed: 1 is in step, 2 is quadratic. `npm run bench:bounds`.
 */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Zippable, unzipSync, zipSync } from 'fflate';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import { lookInto } from '../../src/hub/uploads/look.ts';
import { openSession } from '../../src/sessions/openSession.ts';
import { SESSION_EVENT_TYPES } from '../../src/sensors/sessionEvent.ts';
import { analyseWithCurves } from '../../src/streaming/curvesInOnePass.ts';
import {
  CHANNELS,
  type FileTree,
  MOTION,
  STEM,
  restRows,
  soundFiles,
  tsv,
} from '../sessions/makeSession.ts';

const MOST_EXPONENT = 1.2;
const DOUBLINGS = 3;
const scratch = mkdtempSync(join(tmpdir(), 'stillcatch-bench-'));
const path = join(scratch, 'session.zip');
const small = soundFiles();
const text = (name: string): string => String(small[name]);
const rows = (count: number, row: (n: number) => string): string =>
  Array.from({ length: count }, (_, n) => `${row(n)}\n`).join('');

function write(change: FileTree): void {
  const files = Object.entries({ ...small, ...change }).map(([n, c]) => [n, Buffer.from(c)]);
  writeFileSync(path, zipSync(Object.fromEntries(files) as Zippable, { level: 0 }));
}

/** Reads what is in the file, as the hub does with an upload; a refusal is as good as an answer. */
const look = (): Promise<unknown> => lookInto(path).catch(() => undefined);

interface Case {
  readonly what: string;
  readonly most: number;
  readonly write: (count: number) => void;
  readonly read: () => Promise<unknown>;
}

const EVENTS = `${STEM}_events.tsv`;
const extra = (count: number): string[] => Array.from({ length: count }, (_, n) => `extra${n}`);

const FOLDER = 'sub-01/ses-1/motion/';
/** As a track's name to its last letter but one. */
const named = (label: string, bytes: number): string =>
  `${`sub-${label}${'_tracksys-a'.repeat(20)}`.slice(0, bytes - 12)}_motion.tsvx`;

const LOOKED: readonly Omit<Case, 'read'>[] = [
  {
    what: 'channels',
    most: 991,
    write: (n) =>
      write({
        [CHANNELS]:
          text(CHANNELS) +
          extra(n)
            .map((name) => `${name}\tn/a\tMISC\tp\tV\tx\n`)
            .join(''),
        [MOTION]: tsv(restRows().map((cells) => [...cells, ...extra(n).map(() => '0')])),
      }),
  },
  {
    what: 'files',
    most: 1980,
    write: (n) => write(Object.fromEntries(extra(n).map((name) => [`sub-01/${name}`, 'x']))),
  },
  {
    what: 'bytes of a file name',
    most: 190,
    write: (n) => write(Object.fromEntries(extra(40).map((k) => [`${FOLDER}${named(k, n)}`, 'x']))),
  },
  {
    what: 'digits of a number',
    most: 1_600_000,
    write: (n) => write({ [EVENTS]: `${text(EVENTS)}${'1'.repeat(n)}x\t0\tpain\t5\n` }),
  },
  {
    what: 'clock answers',
    most: 120_000,
    write: (n) =>
      write({
        'sourcedata/clockAnswers.tsv': `sensor\tdevice_time\tsent_time\n${rows(n, (k) => `chest\t${k / 1e5}\t${k / 1e5}`)}`,
      }),
  },
  {
    what: 'people',
    most: 9_999,
    write: (n) =>
      write({
        'participants.tsv': `${text('participants.tsv')}${rows(n, (k) => `sub-x${k}\tleft`)}`,
      }),
  },
  {
    what: 'columns',
    most: 998,
    write: (n) =>
      write({
        'participants.tsv': `participant_id\thandedness\t${extra(n).join('\t')}\nsub-01\tright\t${extra(n).join('\t')}\n`,
      }),
  },
  {
    what: 'fields of the plan',
    most: 16_000,
    write: (n) =>
      write({
        'derivatives/stillcatch/plan.json': JSON.stringify(
          Object.fromEntries(extra(n).map((name) => [name, 1])),
        ),
      }),
  },
  {
    what: 'depth of JSON',
    most: 130_000,
    write: (n) =>
      write({ 'dataset_description.json': `{"Name":"a","x":${'['.repeat(n)}${']'.repeat(n)}}` }),
  },
  {
    what: 'samples',
    most: 200_000,
    write: (n) =>
      write({
        [MOTION]: tsv(restRows(n)),
        [MOTION.replace('chest', 'trailArm')]: tsv(restRows(n)),
      }),
  },
];

const RECORDING = fileURLToPath(new URL('../../recordings/right-mixed.zip', import.meta.url));
const recorded = unzipSync(readFileSync(RECORDING));
const recordedEvents = Object.keys(recorded).find((name) => name.endsWith('_events.tsv')) ?? '';

const isStep = (type: string): boolean => /^(calibration|recheck|address)-/.test(type);

function writeEvents(count: number, type: string): void {
  const columns = Buffer.from(recorded[recordedEvents] ?? [])
    .toString()
    .split('\n')[0]!
    .split('\t').length;
  const value = type === 'pain' ? '5' : 'n/a';
  // as much as a step can look back on
  const duration = isStep(type) ? '40' : '0';
  const more = rows(count, (n) =>
    [(60 + (n / count) * 250).toFixed(3), duration, type, value, 'n/a', 'n/a']
      .slice(0, columns)
      .join('\t'),
  );
  const all = Buffer.concat([recorded[recordedEvents] ?? new Uint8Array(), Buffer.from(more)]);
  writeFileSync(path, zipSync({ ...recorded, [recordedEvents]: all }, { level: 0 }));
}

async function analysed(): Promise<void> {
  const session = await openSession(path);
  const { curves } = await analyseWithCurves(session, DEFAULT_PLAN);
  for (const each of curves) void each;
  await session.close();
}

/** Beside those of the recording itself. */
const STEPS_LEFT = 180;
const ANALYSED: readonly Case[] = SESSION_EVENT_TYPES.map((type) => ({
  what: `${type} events`,
  most: isStep(type) ? STEPS_LEFT : 99_000,
  write: (n) => writeEvents(n, type),
  read: analysed,
}));

/** Processor time of this process, ms. */
async function cpuMsOf(work: () => Promise<unknown>): Promise<number> {
  const before = process.cpuUsage();
  await work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

/** The least of a few: what the machine does besides is not in it. */
async function costMs({ read }: Case, times: number): Promise<number> {
  let least = Infinity;
  for (let n = 0; n < times; n++) least = Math.min(least, await cpuMsOf(read));
  return least;
}

/** Over the last two doublings, where what does not grow weighs least. */
async function exponentOf(one: Case): Promise<{ costs: number[]; exponent: number }> {
  const costs: number[] = [];
  for (let k = DOUBLINGS; k >= 0; k--) {
    one.write(Math.floor(one.most / 2 ** k));
    costs.push(await costMs(one, one.read === analysed ? 1 : 3));
  }
  const [before = 1, last = 1] = [costs.at(-3), costs.at(-1)];
  return { costs, exponent: Math.max(0, Math.log2(last / before) / 2) };
}

await look(); // what is done once
let worst = 0;
for (const one of [...LOOKED.map((each) => ({ ...each, read: look })), ...ANALYSED]) {
  const { costs, exponent } = await exponentOf(one);
  worst = Math.max(worst, exponent);
  console.log(
    one.what.padEnd(28),
    String(one.most).padStart(9),
    costs.map((ms) => `${Math.round(ms)} ms`.padStart(9)).join(''),
    exponent.toFixed(2).padStart(7),
  );
}
console.log(`worst exponent ${worst.toFixed(2)}, at most ${MOST_EXPONENT}`);
rmSync(scratch, { recursive: true });
if (worst > MOST_EXPONENT) process.exitCode = 1;
