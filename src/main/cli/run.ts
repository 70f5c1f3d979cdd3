import { SessionError } from '../../sessions/sessionError.ts';
import { VERSION } from '../../sessions/version.ts';
import { analyse } from './analyse.ts';
import { type CliIo, type Command, UsageError, parse } from './command.ts';
import { convert } from './convert.ts';
import { doctor } from './doctor.ts';
import { replay } from './replay.ts';
import { simulate } from './simulate.ts';
import { table } from './table.ts';

const COMMANDS: readonly Command[] = [analyse, simulate, replay, convert, doctor];

const EXIT = { fine: 0, unexpected: 1, usage: 2, badInput: 3 } as const;

const overview = (): string => `stillcatch <command> ...

Measures the hold, release, catch rehearsal from two inertial sensors.

${table(COMMANDS.map((c) => [`  ${c.name}`, c.summary])).join('\n')}

stillcatch <command> --help says more; stillcatch --version prints the version.
Exit code: 0 fine, 2 wrong use, 3 bad input, 1 any other fault.
`;

/** Runs one command line; resolves with its exit code. Errors are one sentence on `io.err`. */
export async function runCli(args: readonly string[], io: CliIo): Promise<number> {
  try {
    await dispatch(args, io);
    return EXIT.fine;
  } catch (error) {
    io.err(`stillcatch: ${sentence(error)}\n`);
    return exitCode(error);
  }
}

async function dispatch([name, ...rest]: readonly string[], io: CliIo): Promise<void> {
  if (name === '--version' || name === '-v') return io.out(`${VERSION}\n`);
  if (name === '--help' || name === '-h' || name === 'help') return io.out(overview());
  const command = COMMANDS.find((c) => c.name === name);
  if (command === undefined) {
    const known = COMMANDS.map((c) => c.name).join(', ');
    const what = name === undefined ? 'Name a command' : `Unknown command "${name}"`;
    throw new UsageError(`${what}; known are ${known} (see --help)`);
  }
  const { values, positionals } = parse(command, rest);
  if (values['help'] === true) return io.out(command.help);
  await command.run({ values, positionals, io });
}

function exitCode(error: unknown): number {
  if (error instanceof UsageError) return EXIT.usage;
  if (!(error instanceof SessionError)) return EXIT.unexpected;
  if (error.code === 'exists') return EXIT.usage;
  return error.code === 'write-failed' ? EXIT.unexpected : EXIT.badInput;
}

/** One line that ends with a full stop. */
function sentence(error: unknown): string {
  const known = error instanceof UsageError || error instanceof SessionError;
  const text = error instanceof Error ? error.message : String(error);
  const line = (known ? text : `unexpected fault: ${text}`).replaceAll(/\s+/g, ' ').trim();
  return /[.!?]$/.test(line) ? line : `${line}.`;
}
