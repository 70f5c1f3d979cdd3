import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { posix, win32 } from 'node:path';

/** What of a machine says where its browser is. */
export interface Machine {
  readonly platform: NodeJS.Platform;
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly exists: (path: string) => boolean;
}

const HERE: Machine = { platform: process.platform, env: process.env, exists: existsSync };

export const NO_BROWSER =
  'The tests of the page need a browser and none was found: install Chromium, Chrome or Edge, or set CHROMIUM to the path of one. The other tests run without: npx vitest run --project unit --project alone';

const LINUX = [
  'chromium',
  'chromium-browser',
  'google-chrome-stable',
  'google-chrome',
  'microsoft-edge',
];
const MAC = ['Chromium', 'Google Chrome', 'Microsoft Edge'];
const WINDOWS = [
  String.raw`Chromium\Application\chrome.exe`,
  String.raw`Google\Chrome\Application\chrome.exe`,
  String.raw`Microsoft\Edge\Application\msedge.exe`,
];

function usualPlaces({ platform, env }: Machine): string[] {
  if (platform === 'darwin') {
    const folders = ['/Applications', posix.join(env['HOME'] ?? '/', 'Applications')];
    return MAC.flatMap((name) => folders.map((at) => `${at}/${name}.app/Contents/MacOS/${name}`));
  }
  if (platform === 'win32') {
    const folders = [env['ProgramFiles'], env['ProgramFiles(x86)'], env['LocalAppData']];
    return WINDOWS.flatMap((name) =>
      folders.flatMap((folder) => (folder === undefined ? [] : win32.join(folder, name))),
    );
  }
  const folders = [...(env['PATH'] ?? '').split(':'), '/usr/bin', '/usr/local/bin', '/snap/bin'];
  return LINUX.flatMap((name) => folders.filter(Boolean).map((at) => posix.join(at, name)));
}

/** The browser that `CHROMIUM` names, else the first where one usually is; `null` where there is none. */
export function findBrowser(machine: Machine = HERE): string | null {
  const named = machine.env['CHROMIUM'];
  if (named !== undefined && named !== '') return machine.exists(named) ? named : null;
  return usualPlaces(machine).find(machine.exists) ?? null;
}

/** On Debian, as root, what is missing is installed. */
function install(): void {
  if (process.getuid?.() !== 0 || !existsSync('/etc/debian_version')) return;
  console.log('Installing Chromium for the tests of the page …');
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  const quiet = { env, stdio: 'ignore' } as const;
  spawnSync('apt-get', ['update', '-qq'], quiet);
  spawnSync('apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'chromium'], quiet);
}

/** The browser for the tests, installed where that is possible. @throws a sentence that says how to get one */
export function browserPath(): string {
  const found = findBrowser();
  if (found !== null) return found;
  if (!process.env['CHROMIUM']) install();
  const installed = findBrowser();
  if (installed === null) throw new Error(NO_BROWSER);
  return installed;
}
