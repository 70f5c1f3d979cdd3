import { execFile } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, renameSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';

// The official validator of BIDS (npm bids-validator, MIT). Installing it brings 700 MB; its packed archive
// alone (20 MB) holds a bundle that runs offline. Unpacked once into the system's folder for such things.
const VERSION = '1.15.0';
const CACHE = join(tmpdir(), `stillcatch-bids-validator-${VERSION}`);
const PROGRAM = join(CACHE, 'package', 'bin', 'bids-validator');
const run = promisify(execFile);

/** Path of the validator; `null` where it is not in the cache and the registry cannot be reached. */
export async function bidsValidator(): Promise<string | null> {
  if (existsSync(PROGRAM)) return PROGRAM;
  const fresh = mkdtempSync(`${CACHE}-`);
  try {
    await run('npm', ['pack', `bids-validator@${VERSION}`, '--pack-destination', fresh], {
      cwd: fresh,
      timeout: 400_000,
    });
    const archive = readdirSync(fresh).find((name) => name.endsWith('.tgz'));
    if (archive === undefined) return null;
    await run('tar', ['xzf', archive], { cwd: fresh });
    rmSync(join(fresh, archive));
    if (!existsSync(PROGRAM)) renameSync(fresh, CACHE);
    return PROGRAM;
  } catch {
    return null;
  } finally {
    rmSync(fresh, { recursive: true, force: true });
  }
}

export interface Validation {
  readonly errors: readonly string[];
  readonly warnings: readonly string[];
}

interface Report {
  readonly issues: Record<'errors' | 'warnings', readonly { code: number; key: string }[]>;
}

/** What the official validator says of the dataset in `folder`. */
export async function validate(program: string, folder: string): Promise<Validation> {
  // it exits 1 where it finds errors
  const { stdout } = await run(process.execPath, [program, '--json', folder]).catch(
    (error: unknown) => error as { stdout: string },
  );
  const { issues } = JSON.parse(stdout) as Report;
  const words = (list: Report['issues']['errors']) => list.map((i) => `${i.code} ${i.key}`);
  return { errors: words(issues.errors), warnings: words(issues.warnings) };
}
