import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { formatDoctor, runDoctor } from '../../src/main/doctor.ts';
import { problemOf, radioProblem, stepText } from '../../src/sensors/sources/ble/problem.ts';
import { nobleIsInstalled } from '../virtual-radio/install.ts';
import { inRoom } from '../virtual-radio/room.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'stillcatch-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

function sysfs(adapters: readonly string[], soft: '0' | '1'): string {
  for (const a of adapters) mkdirSync(join(folder, 'class/bluetooth', a), { recursive: true });
  const kill = join(folder, 'class/rfkill/rfkill0');
  mkdirSync(kill, { recursive: true });
  writeFileSync(join(kill, 'type'), 'bluetooth\n');
  writeFileSync(join(kill, 'soft'), `${soft}\n`);
  writeFileSync(join(kill, 'hard'), '0\n');
  return folder;
}

const state = (report: Awaited<ReturnType<typeof runDoctor>>, title: string): string | undefined =>
  report.checks.find((c) => c.title === title)?.state;

describe.skipIf(!nobleIsInstalled())('the doctor', () => {
  const sensors = [
    { kind: 'openProfile' as const, address: 'c0:00:00:00:00:01', name: 'Left one' },
  ];
  const lock = (): string => join(folder, 'lock');

  it('finds adapter and sensors, and says so in words', async () => {
    const radio = inRoom({ sensors }, lock());
    const options = {
      radio,
      searchMs: 4000,
      sysfs: sysfs(['hci0'], '0'),
      platform: 'linux',
    } as const;
    const report = await runDoctor(options);
    expect(state(report, 'Bluetooth adapter')).toBe('fine');
    expect(formatDoctor(report)).toMatch(/Left one \(Open-profile sensor, -60 dBm\)/);
  });

  it('says what is missing and how to mend it', async () => {
    const radio = inRoom(null, lock());
    const report = await runDoctor({ radio, sysfs: folder, platform: 'linux' });
    expect(report.ok).toBe(false);
    expect(state(report, 'Bluetooth hardware')).toBe('missing');
    expect(formatDoctor(report)).toMatch(/No Bluetooth adapter was found.*\n +- Plug in/);
  });

  it('sees a radio that is switched off', async () => {
    const radio = inRoom({ sensors }, lock());
    const options = {
      radio,
      searchMs: 100,
      sysfs: sysfs(['hci0'], '1'),
      platform: 'linux',
    } as const;
    expect(formatDoctor(await runDoctor(options))).toMatch(/blocked by software.*\n +- .*rfkill/);
  });
});

describe('what a Bluetooth error means', () => {
  const error = (code: string, message = code): Error =>
    Object.assign(new Error(message), { code });

  it.each([
    [error('MODULE_NOT_FOUND', "Cannot find module '@abandonware/noble'"), 'noble-missing'],
    [
      error('MODULE_NOT_FOUND', "Cannot find module '../build/Release/bluetooth_hci_socket.node'"),
      'native-missing',
    ],
    [error('', 'Could not locate the bindings file. Tried: ...'), 'native-missing'],
    [error('EAFNOSUPPORT'), 'no-bluetooth'],
    [error('ENODEV', 'ENODEV, No such device'), 'no-adapter'],
    [error('EPERM', 'EPERM, Operation not permitted'), 'no-permission'],
    [new Error('something else'), 'no-answer'],
  ])('%s is %s', (thrown, code) => {
    expect(problemOf(thrown)).toBe(code);
  });

  it.each(['linux', 'darwin', 'win32'] as const)('has steps to mend it on %s', (platform) => {
    const codes = ['noble-missing', 'native-missing', 'no-adapter', 'no-permission', 'adapter-off'];
    for (const code of codes) {
      const problem = radioProblem(code as 'no-adapter', '', platform);
      expect(problem.mend.length).toBeGreaterThan(0);
      expect(problem.message).toMatch(/\.$/);
    }
  });

  it('names setcap on Linux and the privacy settings on macOS', () => {
    const steps = (platform: 'linux' | 'darwin'): string =>
      radioProblem('no-permission', '', platform).mend.map(stepText).join();
    expect(steps('linux')).toMatch(/without root: sudo setcap cap_net_raw\+eip/);
    expect(steps('darwin')).toMatch(/Privacy & Security/);
  });
});
