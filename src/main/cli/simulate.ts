import { readdir, rename, rm } from 'node:fs/promises';
import type { AnalysisInput } from '../../analysis/contract.ts';
import { ScriptError, streamSession } from '../../sensors/sources/synthetic/index.ts';
import { SessionError } from '../../sessions/sessionError.ts';
import type { NewSession } from '../../sessions/write/descriptors.ts';
import { writeSession } from '../../sessions/write/sessionWriter.ts';
import { zipSession } from '../../sessions/write/zipSession.ts';
import {
  type Command,
  type Invocation,
  UsageError,
  choiceOption,
  numberOption,
  textOption,
  wholeOption,
} from './command.ts';
import { createProgress, minutes } from './progress.ts';
import { writeTo } from './target.ts';

const DEFAULT_SCRIPT = 'r r b r:short-hold r b:0.5 p r:arms-first r b';

export const simulate: Command = {
  name: 'simulate',
  summary: 'make a session of simulated sensors, with known truth',
  help: `stillcatch simulate --out <folder or .zip> [options]

Writes the recording of a simulated golfer with two simulated sensors: calibration, then the script.
The same options give the same recording.

  --out <path>          where to write it; a name that ends in .zip makes a zip
  --seed <number>       default 1
  --hand <left|right>   default right
  --script <words>      default "${DEFAULT_SCRIPT}"
      r                 a good rehearsal; with one fault: r:short-hold, r:arms-first,
                        r:losing-lean, r:losing-rotation, r:missed-catch
      b, b:0.6          a ball that shows that part of the rehearsals' move
      p                 a practice swing
      walk tee abort waggle idle:20 taps takeoff
                        what lies between repetitions
      r*4               the word four times
  --rate <Hz>           of both sensors, 50 to 200, default 100
  --lost <per cent>     of packets, default that of an ordinary radio
  --club                a third sensor, on the club
  --truth <file>        the exact repetitions as JSON
`,
  options: {
    out: { type: 'string' },
    seed: { type: 'string' },
    hand: { type: 'string' },
    script: { type: 'string' },
    rate: { type: 'string' },
    lost: { type: 'string' },
    club: { type: 'boolean' },
    truth: { type: 'string' },
  },
  run: runSimulate,
};

async function runSimulate(invocation: Invocation): Promise<void> {
  if (invocation.positionals.length > 0)
    throw new UsageError(`"${invocation.positionals[0]}" is one word too many: see --help`);
  const out = textOption(invocation, 'out');
  if (out === undefined) throw new UsageError('Say where to write it: --out <folder or .zip>');
  await refuseExisting(out);
  const part = `${out}.making`;
  await rm(part, { recursive: true, force: true });
  try {
    const truth = await write(part, invocation);
    if (out.endsWith('.zip')) await zipSession(part, out);
    else await rename(part, out);
    const truthFile = textOption(invocation, 'truth');
    const text = `${JSON.stringify(truth, null, 2)}\n`;
    if (truthFile !== undefined) await writeTo(truthFile, invocation.io, [text]);
  } finally {
    await rm(part, { recursive: true, force: true });
  }
}

async function refuseExisting(out: string): Promise<void> {
  const there = await readdir(out).catch((error: NodeJS.ErrnoException) =>
    error.code === 'ENOENT' ? [] : ['a file'],
  );
  if (there.length > 0)
    throw new SessionError('exists', `${out} exists already: nothing is written over`);
}

async function write(folder: string, invocation: Invocation): Promise<object> {
  const seed = wholeOption(invocation, 'seed', [0, 0xffffffff]) ?? 1;
  const hand = choiceOption(invocation, 'hand', ['left', 'right']) ?? 'right';
  const rateHz = numberOption(invocation, 'rate', [50, 200]) ?? 100;
  const lost = numberOption(invocation, 'lost', [0, 90]);
  const script = textOption(invocation, 'script') ?? DEFAULT_SCRIPT;
  const club = invocation.values['club'] === true;
  const options = {
    seed,
    club,
    hand,
    script,
    rateHz,
    ...(lost === undefined ? {} : { radio: { lostShare: lost / 100 } }),
  };
  const header: NewSession = {
    subject: `simulated${seed}`,
    session: '1',
    hand,
    startedAt: null,
    name: `Simulated session, seed ${seed}: ${script}`,
    simulated: true,
    tracks: {
      chest: { samplingHz: rateHz },
      trailArm: { samplingHz: rateHz },
      ...(club ? { club: { samplingHz: rateHz } } : {}),
    },
  };
  const truth = { hand, seed, script, repetitions: [], distractors: [] };
  const items = inWords(() => streamSession(options));
  const progress = createProgress(invocation.io, 'Simulating');
  await writeSession(
    folder,
    header,
    inputsOf(items, truth, (s) => progress.show(minutes(s))),
  );
  progress.end();
  return truth;
}

/** Options that cannot be played are the caller's mistake. */
function inWords<T>(make: () => T): T {
  try {
    return make();
  } catch (error) {
    if (error instanceof ScriptError || error instanceof RangeError)
      throw new UsageError(error.message);
    throw error;
  }
}

interface Truth {
  readonly repetitions: object[];
  readonly distractors: object[];
}

/** The recording in `items`, batch by batch; its truth is set apart. */
function* inputsOf(
  items: ReturnType<typeof streamSession>,
  truth: Truth,
  tell: (timeS: number) => void,
): Generator<AnalysisInput[]> {
  for (const item of items) {
    if (item.kind === 'repetition') truth.repetitions.push(item.repetition);
    else if (item.kind === 'distractor') truth.distractors.push(item.distractor);
    else if (item.kind === 'event') yield [{ kind: 'event', event: item.event }];
    else {
      tell(item.timeS);
      yield item.packet.samples.map((sample) => ({ kind: 'sample', sample }));
    }
  }
}
