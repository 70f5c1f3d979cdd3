/** The service as `npm start` runs it, as a process of its own, and a page that looks. */
import { type SpawnOptions, spawn } from 'node:child_process';
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';
import { io } from 'socket.io-client';
import { onTestFinished, vi } from 'vitest';
import type { Batch, PracticeView, Snapshot } from '../../src/streaming/contract.ts';

const MAIN = fileURLToPath(new URL('../../src/main/student.ts', import.meta.url));

/**
 * Resolves once it listens and a page has begun the demonstration, since nothing runs by itself.
 * @param demonstration whether one is begun
 */
export async function realService(
  root: string,
  speed: number,
  options: SpawnOptions = {},
  demonstration = true,
) {
  const args = ['--import', 'tsx', MAIN, '--data', root, '--port', '0', '--speed', `${speed}`];
  const child = spawn(process.execPath, args, { ...options, stdio: ['ignore', 'pipe', 'pipe'] });
  onTestFinished(() => void child.kill('SIGKILL'));
  let said = '';
  for (const stream of [child.stdout, child.stderr])
    stream?.on('data', (text: Buffer) => (said += text.toString()));
  const url = await vi.waitFor(
    () => {
      const found = /http:\S+/.exec(said)?.[0];
      if (found === undefined) throw new Error(`it does not listen: ${said}`);
      return found;
    },
    { timeout: 240_000, interval: 50 },
  );
  const page = io(url, { transports: ['websocket'] });
  onTestFinished(() => void page.close());
  let view: PracticeView | null = null;
  page.on('snapshot', (snapshot: Snapshot) => {
    view = snapshot.view;
    page.emit('seen', snapshot.sequence);
  });
  page.on('batch', ({ sequence, sections }: Batch) => {
    if (view !== null) view = { ...view, ...sections };
    page.emit('seen', sequence);
  });
  const current = (): PracticeView => {
    if (view === null) throw new Error('no view yet');
    return view;
  };
  await vi.waitFor(current, { timeout: 240_000, interval: 50 });
  if (demonstration) {
    page.emit('command', { type: 'begin', kind: 'demo', hand: 'right', sensors: 'demo' });
    await vi.waitFor(
      () => {
        if (current().stage !== 'practice') throw new Error('the demonstration has not begun');
      },
      { timeout: 240_000, interval: 50 },
    );
  }
  const end = async (signal: 'SIGKILL' | 'SIGTERM'): Promise<void> => {
    child.kill(signal);
    if (child.exitCode === null && child.signalCode === null) await once(child, 'exit');
  };
  return { pid: child.pid ?? 0, url, view: current, said: () => said, end };
}
