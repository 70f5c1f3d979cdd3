import type { AddressInfo } from 'node:net';
import { type Socket, io } from 'socket.io-client';
import type { AnalysisOutput } from '../../src/analysis/contract.ts';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import { buildStudentApp } from '../../src/main/studentApp.ts';
import { practiceHost } from '../../src/practice/host.ts';
import { livePractice } from '../../src/practice/livePractice.ts';
import type { ClientEvents, ServerEvents } from '../../src/streaming/contract.ts';
import { HandSource, scriptedChain } from '../practice/scripted.ts';

export type Page = Socket<ServerEvents, ClientEvents>;

/** A whole service on a free port, its source driven by hand. */
export async function service(script: readonly (readonly [number, AnalysisOutput])[], port = 0) {
  const source = new HandSource();
  const now = (): number => performance.now();
  const practice = livePractice({
    practiceId: `p${Math.random()}`,
    source,
    chain: scriptedChain(script.map(([atS, output]) => ({ atS, output }))),
    settings: { hand: 'right', plan: DEFAULT_PLAN, emitFrames: true },
    now,
  });
  const app = await buildStudentApp({ host: practiceHost({ first: practice }), now });
  await app.listen({ host: '127.0.0.1', port });
  practice.start();
  const { port: used } = app.server.address() as AddressInfo;
  const end = async (): Promise<void> => {
    await practice.stop();
    await app.close();
  };
  return { source, practice, app, port: used, url: `http://127.0.0.1:${used}`, end };
}

export const openPage = (url: string): Page =>
  io(url, {
    transports: ['websocket'],
    forceNew: true,
    reconnectionDelay: 20,
    reconnectionDelayMax: 40,
  });

/** The next message of that name. */
export const next = <E extends keyof ServerEvents>(
  page: Page,
  event: E,
): Promise<Parameters<ServerEvents[E]>[0]> =>
  new Promise((resolve) => {
    const once = page.once.bind(page) as (name: E, listener: (message: never) => void) => void;
    once(event, (message) => resolve(message));
  });

export const wait = (ms: number): Promise<void> =>
  new Promise((resolve) => setTimeout(resolve, ms));
