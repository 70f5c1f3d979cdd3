import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { io } from 'socket.io-client';
import { describe, expect, it, onTestFinished, vi } from 'vitest';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));
const PATIENCE = { timeout: 240_000, interval: 250 };

/** A command of ours where neither noble nor the database's native half can be found. */
function run(main: string, args: readonly string[]) {
  const folder = mkdtempSync(join(tmpdir(), 'stillcatch-'));
  const child = spawn(
    process.execPath,
    [
      ...['--import', 'tsx', '--import', here('../virtual-radio/withoutOptional.ts')],
      here(`../../src/main/${main}`),
      ...args,
    ],
    { env: { ...process.env, STILLCATCH_HOME: folder } },
  );
  onTestFinished(() => {
    child.kill('SIGKILL');
    rmSync(folder, { recursive: true, force: true });
  });
  const said = { text: '' };
  for (const stream of [child.stdout, child.stderr])
    stream.on('data', (text: Buffer) => (said.text += text.toString()));
  return said;
}

/** What a page is told when it connects. */
async function snapshot(url: string): Promise<string> {
  const socket = io(url, { transports: ['websocket'], forceNew: true });
  const told = await new Promise<unknown>((resolve) => socket.once('snapshot', resolve));
  socket.disconnect();
  return JSON.stringify(told);
}

/** Begins the demonstration, as its button on Today does. */
async function begin(url: string): Promise<void> {
  const socket = io(url, { transports: ['websocket'], forceNew: true });
  const command = { type: 'begin', kind: 'demo', hand: 'right', sensors: 'demo' };
  await socket.timeout(PATIENCE.timeout).emitWithAck('command', command);
  socket.disconnect();
}

/** Waits for the address, then for a repetition. */
async function counts(
  said: { readonly text: string },
  opened: (url: string) => Promise<void> = () => Promise.resolve(),
): Promise<string> {
  await vi.waitFor(() => expect(said.text).toMatch(/http:\S+/), PATIENCE);
  const url = /http:\S+/.exec(said.text)?.[0] ?? '';
  await opened(url);
  await vi.waitFor(
    async () => expect((await snapshot(url)).includes('"kind":"rehearsal"')).toBe(true),
    PATIENCE,
  );
  return url;
}

describe('installed with --omit=optional', () => {
  it('the simulated student practises, and the practice is kept and listed', async () => {
    const said = run('student.ts', ['--port', '0', '--speed', '30']);
    const url = await counts(said, begin);
    expect(said.text).not.toMatch(/not being kept/);
    await vi.waitFor(async () => {
      const reply = await fetch(`${url}api/sessions`);
      expect(await reply.text()).toMatch(/"simulated":true/);
    }, PATIENCE);
  });

  it('a recording is played', async () => {
    const recording = here('../../recordings/left-mixed.zip');
    const args = ['--port', '0', '--speed', '10', '--replay', recording];
    await counts(run('student.ts', args));
  });

  it('a hub, whose passwords need a native half, says so', async () => {
    const said = run('hub.ts', ['--port', '0']);
    await vi.waitFor(
      () => expect(said.text).toMatch(/password part.*npm install --include=optional/),
      PATIENCE,
    );
  });

  it('the doctor names both parts: one is needed for sensors, the other only slower', async () => {
    const said = run('cli.ts', ['doctor']);
    await vi.waitFor(() => expect(said.text).toMatch(/live sensors need what is marked/), PATIENCE);
    expect(said.text).toMatch(/note {5}Database part: .*The plain part is used, which is slower/);
    expect(said.text).toMatch(/MISSING {2}Bluetooth part/);
  });
});
