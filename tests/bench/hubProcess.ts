import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Me, NewInvite, PairingCode } from '../../src/streaming/hubContract/people.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const PASSWORD = 'nine slow tortoises';

/** A hub as `npm run hub` runs it, in a process of its own, with a coach, a student and the student's paired machine. */
export interface HubProcess {
  readonly url: string;
  /** Of the student's machine. */
  readonly headers: Readonly<Record<string, string>>;
  /** The coach asks. */
  ask<T>(path: string): Promise<T>;
  /** Resident memory, bytes: now, and the most since the last call. `null` where the system does not tell (Linux does). */
  memory(): { readonly now: number; readonly most: number } | null;
  end(): Promise<void>;
}

/** Signed in with the cookie that the answer brings. */
async function enter(url: string, path: string, body: unknown) {
  const response = await fetch(`${url}/api/${path}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  });
  if (!response.ok) throw new Error(`${path}: ${await response.text()}`);
  const { csrf } = (await response.json()) as Me;
  const cookie = (response.headers.getSetCookie()[0] ?? '').split(';')[0] ?? '';
  return async <T>(method: string, to: string, sent?: unknown): Promise<T> => {
    const answer = await fetch(`${url}/api/${to}`, {
      method,
      headers: {
        cookie,
        'x-csrf-token': csrf,
        ...(sent !== undefined && { 'content-type': 'application/json' }),
      },
      ...(sent !== undefined && { body: JSON.stringify(sent) }),
    });
    if (!answer.ok) throw new Error(`${to}: ${await answer.text()}`);
    return (await answer.json()) as T;
  };
}

function started(child: ChildProcess): Promise<{ url: string; code: string }> {
  return new Promise((resolve, reject) => {
    let said = '';
    child.once('exit', () => reject(new Error(`the hub ended: ${said}`)));
    child.stdout?.on('data', (bytes: Buffer) => {
      said += bytes.toString();
      const url = /at (http:\S+)\/ /.exec(said)?.[1];
      const code = /[A-Z0-9]{5}-[A-Z0-9]{5}/.exec(said)?.[0];
      if (url !== undefined && code !== undefined) resolve({ url, code });
    });
  });
}

const field = (status: string, name: string): number =>
  Number(new RegExp(`${name}:\\s+(\\d+) kB`).exec(status)?.[1] ?? NaN) * 1024;

/** From proc_pid_status(5): VmRSS, and VmHWM since `clear_refs` was last written 5. */
function memoryOf(pid: number): ReturnType<HubProcess['memory']> {
  const path = `/proc/${pid}/status`;
  if (!existsSync(path)) return null;
  const status = readFileSync(path, 'utf8');
  return { now: field(status, 'VmRSS'), most: field(status, 'VmHWM') };
}

/** @param data an empty folder; `npm run build` must have been run */
export async function hubProcess(data: string): Promise<HubProcess> {
  const child = spawn(process.execPath, ['dist/main/hub.js', '--port', '0', '--data', data], {
    cwd: root,
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const { url, code } = await started(child);
  const own = { name: 'Carla', login: 'carla', password: PASSWORD };
  const carla = await enter(url, 'setup', { code, clubName: 'Fernhill', ...own });
  const invite = await carla<NewInvite>('POST', 'invites', { role: 'student', name: 'Ines' });
  const ines = await enter(url, `invitation/${invite.url.split('/').at(-1)}`, {
    name: 'Ines',
    login: 'ines',
    password: PASSWORD,
  });
  const pairing = await ines<PairingCode>('POST', 'me/pairing');
  const paired = await fetch(`${url}/api/pair`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ code: pairing.code, machine: 'Bench' }),
  });
  const { token } = (await paired.json()) as { token: string };
  return {
    url,
    headers: { authorization: `Bearer ${token}` },
    ask: (path) => carla('GET', path),
    memory: () => memoryOf(child.pid ?? 0),
    end: async () => {
      const ended = new Promise((resolve) => child.once('exit', resolve));
      child.kill('SIGTERM');
      await ended;
    },
  };
}
