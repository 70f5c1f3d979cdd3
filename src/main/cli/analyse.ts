import { analyseSession } from '../../sessions/analyseSession.ts';
import { readAnalysis } from '../../sessions/derivatives.ts';
import { whyDiffers } from '../../sessions/whyDiffers.ts';
import type { Command, Invocation } from './command.ts';
import { createProgress, minutes } from './progress.ts';
import { report } from './report.ts';
import { withSession } from './withSession.ts';

export const analyse: Command = {
  name: 'analyse',
  summary: 'measure and judge the repetitions of a recorded session',
  help: `stillcatch analyse <session> [--json] [--plan <file>] [--clock final]

Measures every repetition of a recorded session and judges it by a plan.

  <session>       folder or .zip in the recording format
  --json          the result as JSON (times in s of the session, angles in degrees)
  --plan <file>   a plan as JSON; default: the plan kept with the session, else the default plan
  --clock final   session times fitted anew over the whole recording, from the raw times that it keeps;
                  default: as recorded, by which the practice was judged

Where the result kept with the recording is another one, a sentence on standard error says why, and
"differsFromKept" in the JSON.
`,
  options: { json: { type: 'boolean' }, plan: { type: 'string' }, clock: { type: 'string' } },
  run: runAnalyse,
};

async function runAnalyse(invocation: Invocation): Promise<void> {
  const { io, values } = invocation;
  const progress = createProgress(io, 'Analysing');
  await withSession(invocation, async (session, plan) => {
    const analysis = await analyseSession(session, plan, {
      progress: (timeS) => progress.show(`${minutes(timeS)} done`),
    });
    progress.end();
    const kept = await readAnalysis(session.files);
    const asked = { plan: values['plan'] !== undefined, finalClock: values['clock'] === 'final' };
    const differs = kept && whyDiffers(analysis, kept, asked);
    if (differs !== null) io.err(`${differs}\n`);
    const told = { ...analysis, ...(differs !== null && { differsFromKept: differs }) };
    const text =
      values['json'] === true
        ? `${JSON.stringify(told, null, 2)}\n`
        : report({ header: session.header, plan, analysis, notes: session.notes() });
    await io.out(text);
  }).finally(() => progress.end());
}
