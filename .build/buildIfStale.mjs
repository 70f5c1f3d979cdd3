// Before `npm start`: builds only where dist is missing or older than what it is made from.
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { join } from 'node:path';

const root = fileURLToPath(new URL('..', import.meta.url));
const OUTPUTS = ['dist/main/student.js', 'dist/dashboard/index.html'];
const INPUTS = ['src', 'package.json', 'tsconfig.json', 'tsconfig.base.json', 'vite.config.ts'];

const modified = (path) => statSync(path).mtimeMs;

function newest(path) {
  if (!statSync(path).isDirectory()) return modified(path);
  const entries = readdirSync(path).map((name) => newest(join(path, name)));
  return Math.max(modified(path), ...entries);
}

const outputs = OUTPUTS.map((path) => join(root, path));
const built = outputs.every(existsSync) ? Math.min(...outputs.map(modified)) : 0;
const source = Math.max(...INPUTS.map((path) => newest(join(root, path))));

if (source > built) {
  console.log(built === 0 ? 'Building once; this takes a few seconds.' : 'Building anew.');
  const { status } = spawnSync('npm', ['run', '--silent', 'build'], {
    cwd: root,
    stdio: 'inherit',
    shell: process.platform === 'win32',
  });
  process.exitCode = status ?? 1;
}
