import { type ClientRequestArgs, type IncomingMessage, request } from 'node:http';
import { mkdtempSync, mkdirSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { AddressInfo } from 'node:net';
import { io } from 'socket.io-client';
import { DEFAULT_PLAN } from '../../../src/coaching/plan.ts';
import { practiceHost } from '../../../src/practice/host.ts';
import { livePractice } from '../../../src/practice/livePractice.ts';
import { secondScreen } from '../../../src/streaming/secondScreen/service.ts';
import type { AnalysisOutput } from '../../../src/analysis/contract.ts';
import { HandSource, scriptedChain } from '../../practice/scripted.ts';
import type { Page } from '../pages.ts';

/** Stands in for an address of a network: a computer answers to all of 127.0.0.0/8 (RFC 1122, 3.2.1.3). */
export const ADDRESS = '127.0.0.2';

/** A built page of two entries, so that what belongs to the other one can be asked for. */
export function builtFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'stillcatch-built-'));
  for (const sub of ['.vite', 'assets']) mkdirSync(join(folder, sub));
  const files = ['watch.html', 'index.html', 'hub.html', 'assets/watch.js', 'assets/watch.css'];
  for (const file of [...files, 'assets/shared.js', 'assets/index.js'])
    writeFileSync(join(folder, file), file);
  writeFileSync(
    join(folder, '.vite/manifest.json'),
    JSON.stringify({
      'watch.html': {
        file: 'assets/watch.js',
        css: ['assets/watch.css'],
        imports: ['_shared.js'],
      },
      '_shared.js': { file: 'assets/shared.js', imports: ['watch.html'] },
      'index.html': { file: 'assets/index.js', imports: ['_shared.js'] },
    }),
  );
  return folder;
}

export const SECRETS = ['Plan of Ann', 'ask Ann', 'sore since Tuesday', 'A1', 'B2'];

/** A practice driven by hand, with much in it that is nobody else's business. */
export function practiceOf(script: readonly (readonly [number, AnalysisOutput])[]) {
  const source = new HandSource();
  const practice = livePractice({
    practiceId: `p${Math.random()}`,
    source,
    chain: scriptedChain(script.map(([atS, output]) => ({ atS, output }))),
    settings: {
      hand: 'right',
      plan: { ...DEFAULT_PLAN, name: SECRETS[0]!, note: SECRETS[1]! },
      emitFrames: true,
    },
    person: {
      firstUse: false,
      painBefore: 3,
      lastSession: { startedMs: 1, repetitions: 20, note: SECRETS[2]! },
    },
    now: () => performance.now(),
  });
  return { source, practice, host: practiceHost({ first: practice }) };
}

/** A second screen at a stand-in address, with a clock that a test can put forward. */
export function screenAt(address: string, host: ReturnType<typeof practiceOf>['host']) {
  const clock = { aheadMs: 0 };
  const screen = secondScreen({
    host,
    now: () => performance.now() + clock.aheadMs,
    date: Date.now,
    addresses: () => [{ address, family: 4, card: 'test' }],
    listen: async (app, at) => {
      await app.listen({ host: at, port: 0 });
      const { port } = app.server.address() as AddressInfo;
      return { url: `http://${at.includes(':') ? `[${at}]` : at}:${port}/` };
    },
    folder: builtFolder(),
  });
  return { screen, clock };
}

export interface Answer {
  readonly status: number;
  readonly headers: IncomingMessage['headers'];
  readonly body: string;
}

/** One request with exactly these headers. */
export function ask(
  url: string,
  { method = 'GET', headers = {}, body }: ClientRequestArgs & { readonly body?: string } = {},
): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const sent = request(url, { method, headers, agent: false }, (response) => {
      let text = '';
      response.on('data', (chunk) => (text += chunk));
      response.on('end', () =>
        resolve({ status: response.statusCode ?? 0, headers: response.headers, body: text }),
      );
    });
    sent.on('error', reject);
    sent.end(body);
  });
}

export const originOf = (url: string): string => new URL(url).origin;

export const typeCode = (url: string, code: string, headers = {}): Promise<Answer> =>
  ask(`${url}pair`, {
    method: 'POST',
    headers: { origin: originOf(url), 'content-type': 'application/json', ...headers },
    body: JSON.stringify({ code }),
  });

/** The cookie that an answer sets, as a browser would send it back. */
export const cookieOf = ({ headers }: Answer): string =>
  (headers['set-cookie']?.[0] ?? '').split(';')[0] ?? '';

export function watch(url: string, headers: Record<string, string>): Page {
  return io(url, {
    transports: ['websocket'],
    forceNew: true,
    reconnection: false,
    extraHeaders: headers,
  });
}

/** `true` where a socket is let in. */
export const letIn = (page: Page): Promise<boolean> =>
  new Promise((resolve) => {
    page.on('connect', () => resolve(true));
    page.on('connect_error', () => resolve(false));
  });

export const closed = (page: Page): Promise<string> =>
  new Promise((resolve) => page.on('disconnect', resolve));
