import { statSync } from 'node:fs';
import { SessionError } from '../sessions/sessionError.ts';

/** What `parseArgs` refused, in one sentence that names the option. */
export function optionWords(error: unknown): string {
  const text = error instanceof Error ? error.message : String(error);
  const name = /'([^' ]*)/.exec(text)?.[1]?.replace(/,$/, '') ?? '';
  if (/^Unknown option/.test(text)) return `Unknown option "${name}". See --help.`;
  if (/^Unexpected argument/.test(text)) return `"${name}" is one word too many: see --help.`;
  if (/ambiguous/.test(text))
    return `${name} needs a value; one that begins with a dash is given as ${name}=-1.`;
  if (/argument missing/.test(text)) return `${name} needs a value: see --help.`;
  if (/does not take/.test(text)) return `${name} takes no value: see --help.`;
  return text;
}

/** A fault of a session, with the path by which the person knows it. */
export function naming(path: string, error: unknown): unknown {
  if (!(error instanceof SessionError) || OWN_PATH.includes(error.code)) return error;
  return error.message.includes(path)
    ? error
    : new SessionError(error.code, `${path}: ${error.message}`);
}

/** These name the file that was to be written. */
const OWN_PATH: readonly string[] = ['exists', 'write-failed'];

/** Whether a file stands where a folder is wanted. */
export function isFile(path: string): boolean {
  try {
    return statSync(path, { throwIfNoEntry: false })?.isDirectory() === false;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'ENOTDIR';
  }
}

/** Why an address cannot be listened at, in one sentence. */
export function listenWords(error: unknown, host: string, port: number): string {
  const { code, message } = error as NodeJS.ErrnoException;
  if (code === 'EADDRINUSE')
    return `Port ${port} is used by another program. Choose another one with --port N.`;
  if (code === 'EACCES')
    return `Port ${port} may not be used by this user. Give one from 1024 up with --port N.`;
  if (code === 'ENOTFOUND' || code === 'EADDRNOTAVAIL' || code === 'EAI_AGAIN')
    return `${host} is not an address of this computer.`;
  return message;
}
