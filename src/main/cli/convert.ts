import { analyseSession } from '../../sessions/analyseSession.ts';
import { anglesCsv } from '../../sessions/export/anglesCsv.ts';
import { openSenseTable } from '../../sessions/export/openSense.ts';
import { repetitionsCsv } from '../../sessions/export/repetitionsCsv.ts';
import { type Command, type Invocation, UsageError, textOption } from './command.ts';
import { writeTo } from './target.ts';
import { withSession } from './withSession.ts';

const FORMATS = ['csv', 'angles', 'sto'] as const;

export const convert: Command = {
  name: 'convert',
  summary: 'write repetitions, angle curves or orientations for other programs',
  help: `stillcatch convert <session> [--csv | --angles | --sto] [--plan <file>] [--clock final] [--out <file>]

  --csv           the repetitions, one a row (default); empty cells where a value was not taken
  --angles        the angle curves: time_s, flexion_deg, lateral_deg, lean_deg, turn_deg,
                  elevation_deg, plane_deg, external_rotation_deg, valid
  --sto           orientations of thorax and humerus for OpenSim's OpenSense
  --plan <file>   for --csv: judge by this plan
  --clock final   session times fitted anew over the whole recording, from the raw times that it keeps;
                  default: as recorded, by which the practice was judged
  --out <file>    default: standard output

Angles of a left-handed golfer are given as a right-handed one's: toward the target and toward the
trail side are positive.
`,
  options: {
    csv: { type: 'boolean' },
    angles: { type: 'boolean' },
    sto: { type: 'boolean' },
    plan: { type: 'string' },
    clock: { type: 'string' },
    out: { type: 'string' },
  },
  run: runConvert,
};

async function runConvert(invocation: Invocation): Promise<void> {
  const { io, values } = invocation;
  const asked = FORMATS.filter((format) => values[format] === true);
  if (asked.length > 1)
    throw new UsageError(`One of ${asked.map((f) => `--${f}`).join(' and ')}, not both`);
  const out = textOption(invocation, 'out');
  await withSession(invocation, async (session, plan) => {
    if (asked[0] === 'angles') return writeTo(out, io, anglesCsv(session));
    if (asked[0] === 'sto') return writeTo(out, io, openSenseTable(session));
    return writeTo(out, io, repetitionsCsv(await analyseSession(session, plan)));
  });
}
