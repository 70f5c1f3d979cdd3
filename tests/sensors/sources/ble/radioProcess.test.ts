import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, describe, expect, it, onTestFinished, vi } from 'vitest';
import { RadioProcess } from '../../../../src/sensors/sources/ble/radioProcess.ts';
import { nobleIsInstalled } from '../../../virtual-radio/install.ts';
import { inRoom } from '../../../virtual-radio/room.ts';

const PATIENCE = { timeout: 240_000, interval: 20 };
const ROOM = { sensors: [] };

const isAlive = (pid: number): boolean => {
  try {
    return process.kill(pid, 0);
  } catch {
    return false;
  }
};

/** As a service that is busy with something else: nothing is heard meanwhile. */
const busyFor = (ms: number): void =>
  void Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, ms);

describe.skipIf(!nobleIsInstalled())("the radio's process", () => {
  let folder: string;
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'stillcatch-'));
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));
  const lock = (): string => join(folder, 'lock');

  it('that died unnoticed can be talked to: nothing is thrown, and it is started again', async () => {
    const loose: unknown[] = [];
    const listen = (error: unknown): void => void loose.push(error);
    process.on('uncaughtException', listen);
    onTestFinished(() => void process.off('uncaughtException', listen));
    const heard: string[] = [];
    const radio = new RadioProcess(
      {
        started: () => undefined,
        message: (m) => m.type === 'adapter' && heard.push('on'),
        crashed: () => heard.push('crashed'),
      },
      inRoom(ROOM, lock()),
    );
    radio.start();
    onTestFinished(() => radio.stop());
    await vi.waitFor(() => expect(heard).toEqual(['on']), PATIENCE);
    process.kill(radio.pid ?? 0, 'SIGKILL');
    busyFor(100);
    radio.send({ type: 'scan', on: true });
    radio.send({ type: 'scan', on: false });
    radio.send({ type: 'want', wishes: [] });
    await vi.waitFor(() => expect(heard).toEqual(['on', 'crashed', 'on']), PATIENCE);
    expect(loose).toEqual([]);
  });

  it.each(['SIGKILL', 'SIGHUP'] as const)(
    'ends by itself when the service goes by %s, and leaves no lock',
    async (signal) => {
      const options = inRoom(ROOM, lock());
      const service = spawn(
        process.execPath,
        ['--import', 'tsx', fileURLToPath(new URL('./service.ts', import.meta.url))],
        { env: { ...process.env, RADIO: JSON.stringify(options) }, stdio: 'ignore' },
      );
      onTestFinished(() => void service.kill('SIGKILL'));
      await vi.waitFor(() => expect(existsSync(lock())).toBe(true), PATIENCE);
      const pid = Number.parseInt(readFileSync(lock(), 'utf8'), 10);
      onTestFinished(() => void (isAlive(pid) && process.kill(pid, 'SIGKILL')));
      // a terminal that is closed ends both
      if (signal === 'SIGHUP') process.kill(pid, signal);
      service.kill(signal);
      await vi.waitFor(() => expect(isAlive(pid)).toBe(false), PATIENCE);
      expect(existsSync(lock())).toBe(false);
    },
  );
});
