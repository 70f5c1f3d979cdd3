import { formatDoctor, runDoctor } from '../doctor.ts';
import { type Command, type Invocation, UsageError } from './command.ts';

export const doctor: Command = {
  name: 'doctor',
  summary: 'say what live sensors need on this computer and how to mend what is missing',
  help: `stillcatch doctor [--json]

Looks at Node.js, the page, the Bluetooth part, the adapter, and the sensors around (about 5 s).
Ends with 0 whatever it finds.

  --json   the report as JSON
`,
  options: { json: { type: 'boolean' } },
  run: examine,
};

async function examine({ io, values, positionals }: Invocation): Promise<void> {
  if (positionals.length > 0) throw new UsageError(`doctor takes no "${positionals[0]}"`);
  const report = await runDoctor();
  const json = values['json'] === true;
  await io.out(json ? `${JSON.stringify(report, null, 2)}\n` : formatDoctor(report));
}
