import { describe, expect, it } from 'vitest';
import { type Machine, findBrowser } from './browser/chromium.ts';

const machine = (
  platform: NodeJS.Platform,
  there: readonly string[],
  env: Machine['env'] = {},
): Machine => ({ platform, env, exists: (path) => there.includes(path) });

const MAC = '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome';
const WINDOWS = String.raw`C:\Program Files (x86)\Microsoft\Edge\Application\msedge.exe`;

describe('The browser for the tests', () => {
  it.each([
    ['Debian', machine('linux', ['/usr/bin/chromium']), '/usr/bin/chromium'],
    ['Ubuntu', machine('linux', ['/snap/bin/chromium']), '/snap/bin/chromium'],
    [
      'a folder of PATH',
      machine('linux', ['/opt/b/google-chrome'], { PATH: '/bin:/opt/b' }),
      '/opt/b/google-chrome',
    ],
    ['macOS', machine('darwin', [MAC], { HOME: '/Users/a' }), MAC],
    [
      'macOS, of one person',
      machine('darwin', [`/Users/a${MAC}`], { HOME: '/Users/a' }),
      `/Users/a${MAC}`,
    ],
    [
      'Windows',
      machine('win32', [WINDOWS], { 'ProgramFiles(x86)': String.raw`C:\Program Files (x86)` }),
      WINDOWS,
    ],
  ])('is found on %s', (_name, there, path) => {
    expect(findBrowser(there)).toBe(path);
  });

  it('is the one that CHROMIUM names, and no other', () => {
    const there = ['/usr/bin/chromium', '/opt/own'];
    expect(findBrowser(machine('linux', there, { CHROMIUM: '/opt/own' }))).toBe('/opt/own');
    expect(findBrowser(machine('linux', there, { CHROMIUM: '/opt/none' }))).toBeNull();
  });

  it('is none where there is none', () => {
    for (const platform of ['linux', 'darwin', 'win32'] as const)
      expect(findBrowser(machine(platform, []))).toBeNull();
  });
});
