import { type ChildProcess, fork } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import type { FromRadio, ToRadio } from './messages.ts';

export interface RadioProcessOptions {
  /** For tests: extra arguments for Node, such as a preloaded module. */
  readonly execArgv?: readonly string[];
  readonly env?: Readonly<Record<string, string>>;
}

export interface RadioProcessListener {
  started(): void;
  message(message: FromRadio): void;
  /** It ended without being asked to; it is started again after `againInMs`. */
  crashed(detail: string, againInMs: number): void;
}

const BACK_OFF_MS = [200, 1000, 2000, 5000, 10_000];
/** A process that lived this long has earned a fast restart. */
const SETTLED_MS = 30_000;
const STOP_MS = 4000;
const TAIL = 2000;

const source = import.meta.url.endsWith('.ts');
const worker = fileURLToPath(
  new URL(source ? './bleWorker.ts' : './bleWorker.js', import.meta.url),
);

/** Keeps the radio's process alive: whatever happens to it, the service goes on. */
export class RadioProcess {
  readonly #listener: RadioProcessListener;
  readonly #options: RadioProcessOptions;
  #child: ChildProcess | null = null;
  #wanted = false;
  #crashes = 0;
  #startedMs = 0;
  #timer: NodeJS.Timeout | null = null;
  #tail = '';

  constructor(listener: RadioProcessListener, options: RadioProcessOptions = {}) {
    this.#listener = listener;
    this.#options = options;
  }

  /** Of the running process; `null` while there is none. */
  get pid(): number | null {
    return this.#child?.pid ?? null;
  }

  start(): void {
    if (this.#wanted) return;
    this.#wanted = true;
    this.#fork();
  }

  /** To a process that died without being noticed yet the error is no news: its end is told by an event. */
  send(message: ToRadio): void {
    if (this.#child?.connected) this.#child.send(message, () => undefined);
  }

  /** A new process in place of this one. */
  restart(): void {
    const child = this.#child;
    if (!child) return;
    this.#forget();
    child.kill('SIGKILL');
    if (this.#wanted) this.#fork();
  }

  /** Settles when the process is gone, hung links or not. */
  async stop(): Promise<void> {
    this.#wanted = false;
    if (this.#timer) clearTimeout(this.#timer);
    const child = this.#child;
    if (!child) return;
    this.#forget();
    if (child.exitCode !== null || child.signalCode !== null) return;
    const gone = new Promise<void>((resolve) => {
      child.once('exit', () => resolve());
    });
    if (child.connected) child.disconnect();
    const force = setTimeout(() => child.kill('SIGKILL'), STOP_MS);
    await gone;
    clearTimeout(force);
  }

  #forget(): void {
    this.#child?.removeAllListeners();
    this.#child?.on('error', () => undefined);
    this.#child = null;
  }

  #fork(): void {
    const child = fork(worker, {
      serialization: 'advanced',
      stdio: ['ignore', 'pipe', 'pipe', 'ipc'],
      execArgv: [...(this.#options.execArgv ?? (source ? ['--import', 'tsx'] : []))],
      env: { ...process.env, ...this.#options.env },
    });
    this.#child = child;
    this.#startedMs = performance.now();
    this.#tail = '';
    const keep = (text: Buffer): void => {
      this.#tail = (this.#tail + text.toString()).slice(-TAIL);
    };
    child.stdout?.on('data', keep);
    child.stderr?.on('data', keep);
    child.on('message', (message: FromRadio) => this.#listener.message(message));
    child.on('error', (error) => this.#onEnd(error.message));
    child.on('exit', (code, signal) => this.#onEnd(signal ?? `exit code ${code}`));
    this.#listener.started();
  }

  #onEnd(how: string): void {
    // After an error it may live on, with the adapter in its hands.
    this.#child?.kill('SIGKILL');
    this.#forget();
    if (!this.#wanted) return;
    if (performance.now() - this.#startedMs > SETTLED_MS) this.#crashes = 0;
    const waitMs = BACK_OFF_MS[Math.min(this.#crashes, BACK_OFF_MS.length - 1)] ?? 0;
    this.#crashes += 1;
    this.#listener.crashed([how, this.#tail.trim()].filter(Boolean).join(': '), waitMs);
    this.#timer = setTimeout(() => this.#fork(), waitMs);
  }
}
