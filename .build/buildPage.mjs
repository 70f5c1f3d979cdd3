// Builds the page. Its compiler's native parts come as optional packages, one for each platform: after
// `npm install --omit=optional` (meant to leave Bluetooth out) they are missing, so those of this machine are fetched first.
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';

const COMPILERS = ['rolldown', 'lightningcss'];

const folder = (name) => new URL(`../node_modules/${name}/`, import.meta.url);

function nativeParts(compiler) {
  const manifest = new URL('package.json', folder(compiler));
  if (!existsSync(manifest)) return [];
  const parts = JSON.parse(readFileSync(manifest, 'utf8')).optionalDependencies ?? {};
  const here = `${process.platform}-${process.arch}`;
  const glibc = process.report.getReport().header.glibcVersionRuntime !== undefined;
  const other = glibc ? 'musl' : 'gnu';
  return Object.keys(parts)
    .filter((name) => name.includes(here) && !name.endsWith(`-${other}`))
    .map((name) => ({ name, version: parts[name] }));
}

function run(command, args) {
  const { status } = spawnSync(command, args, {
    stdio: 'inherit',
    shell: process.platform === 'win32',
  });
  if (status !== 0) process.exit(status ?? 1);
}

const missing = COMPILERS.flatMap(nativeParts).filter(({ name }) => !existsSync(folder(name)));
if (missing.length > 0) {
  const wanted = missing.map(({ name, version }) => `${name}@${version}`);
  const quiet = ['--no-save', '--no-package-lock', '--ignore-scripts', '--omit=optional'];
  run('npm', ['install', ...quiet, ...wanted]);
}
run('npx', ['--no', 'vite', 'build']);
