import { execFileSync } from 'node:child_process';
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import { scratch } from '../makeSession.ts';

/** A small disk of its own; `null` where this user may not mount one. */
export function smallDisk(options: string): string | null {
  const at = join(scratch(), 'disk');
  mkdirSync(at);
  try {
    execFileSync('mount', ['-t', 'tmpfs', '-o', options, 'tmpfs', at], { stdio: 'ignore' });
  } catch {
    return null;
  }
  onTestFinished(() => {
    execFileSync('umount', ['-l', at]);
  });
  return at;
}
