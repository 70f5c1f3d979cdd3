import { type AnalysisState, finish, start, step } from '../../analysis/analysis.ts';
import type { AnalysisOutput, Phase } from '../../analysis/contract.ts';
import type { CalibrationQuality } from '../../body/calibrationResult.ts';
import type { Plan } from '../../coaching/plan.ts';
import { NOT_A_MEDICAL_DEVICE } from '../../coaching/safetyTexts.ts';
import { ReplaySource } from '../../sensors/sources/replay/index.ts';
import type { RecordedSession } from '../../sessions/openSession.ts';
import { SessionError } from '../../sessions/sessionError.ts';
import { type Command, type Invocation, UsageError, textOption } from './command.ts';
import { withSession } from './withSession.ts';

export const replay: Command = {
  name: 'replay',
  summary: 'play a recorded session and say what is seen, as it comes',
  help: `stillcatch replay <session> [--speed <times>|max] [--plan <file>]

Plays a recording packet by packet, as if the sensors were worn now, and prints the golfer's phase,
each repetition with its cue, the ledger and warnings.

  --speed <times>   1 is the speed of life (default); max does not wait
  --plan <file>     a plan as JSON; default: the plan kept with the session, else the default plan
`,
  options: { speed: { type: 'string' }, plan: { type: 'string' } },
  run: runReplay,
};

function speedOf(invocation: Invocation): number {
  const text = textOption(invocation, 'speed') ?? '1';
  if (text === 'max') return Infinity;
  const speed = /^\d+(\.\d+)?$/.test(text) ? Number(text) : NaN;
  if (speed >= 0.1 && speed <= 1000) return speed;
  throw new UsageError(`--speed must be a number from 0.1 to 1000 or max, not "${text}"`);
}

async function runReplay(invocation: Invocation): Promise<void> {
  const speed = speedOf(invocation);
  await withSession(invocation, async (session, plan) => {
    const said = await play(session, plan, speed, (line) => void invocation.io.out(line));
    await invocation.io.out(`${said}\n${NOT_A_MEDICAL_DEVICE}\n`);
  });
}

/** Plays to the end; resolves with a closing line. */
function play(
  session: RecordedSession,
  plan: Plan,
  speed: number,
  say: (line: string) => void,
): Promise<string> {
  const state: AnalysisState = start({
    hand: session.header.hand,
    plan,
    ...(session.known !== null && { known: session.known }),
  });
  const lines = createLines(say);
  const source = sourceOf(session, speed);
  return new Promise((resolve, reject) => {
    source.start({
      samples: (batch) => {
        for (const sample of batch) step(state, { kind: 'sample', sample }, lines.take);
      },
      event: (event) => step(state, { kind: 'event', event }, lines.take),
      link: () => {},
      end: (error) => {
        if (error !== null) return reject(new SessionError('not-a-number', error));
        finish(state, lines.take);
        resolve(lines.closing());
      },
    });
  });
}

function sourceOf(session: RecordedSession, speed: number): ReplaySource {
  const { tracks, simulated } = session.header;
  const known = (role: 'chest' | 'trailArm') => ({
    name: tracks[role].device || role,
    nominalRateHz: tracks[role].samplingHz,
  });
  return new ReplaySource({
    inputs: session.inputs(),
    sensors: { chest: known('chest'), trailArm: known('trailArm') },
    speed,
    simulated,
  });
}

const PHASE_WORDS: Readonly<Record<Phase, string>> = {
  calibrating: 'calibrating',
  waiting: 'waiting for the address',
  address: 'address',
  backswing: 'going to the top',
  top: 'at the top: hold',
  released: 'let go',
  caught: 'caught',
  paused: 'paused',
};

/** Outputs in words, one line each; the same phase is said once. */
function createLines(say: (line: string) => void) {
  let phase: Phase | null = null;
  let calibration = '';
  let repetitions = 0;
  let entries = '';
  const line = (atS: number, words: string) => say(`${atS.toFixed(2).padStart(9)} s  ${words}\n`);
  return {
    take(output: AnalysisOutput): void {
      if (output.kind === 'calibration') {
        const words = calibrationWords(output.quality);
        if (words !== calibration) say(words);
        calibration = words;
      } else if (output.kind === 'phase' && output.phase !== phase) {
        phase = output.phase;
        line(output.atS, PHASE_WORDS[phase]);
      } else if (output.kind === 'repetition') {
        repetitions++;
        line(output.repetition.endS, repetitionWords(output.repetition));
      } else if (output.kind === 'ledger') {
        entries = output.ledger.entries;
      } else if (output.kind === 'warning') {
        line(output.warning.atS, `WARNING: ${output.warning.text}`);
      }
    },
    closing: () =>
      `The recording is over: ${repetitions} repetitions, ledger ${entries || 'empty'}.`,
  };
}

const calibrationWords = (quality: CalibrationQuality): string =>
  [
    `calibration ${quality.accepted ? 'accepted' : 'refused'}`,
    ...quality.problems.map((problem) => problem.message),
  ]
    .map((words) => `${' '.repeat(13)}${words}\n`)
    .join('');

type Said = Extract<AnalysisOutput, { readonly kind: 'repetition' }>['repetition'];

function repetitionWords(r: Said): string {
  if (r.kind === 'ball') return `repetition ${r.index}: a ball`;
  if (r.kind === 'practiceSwing') return `repetition ${r.index}: a practice swing, not counted`;
  const { passed, cue } = r.verdict;
  const verdict = passed === null ? 'not scored' : passed ? 'passed' : 'not passed';
  return `repetition ${r.index}: rehearsal ${verdict}. "${cue.text}"`;
}
