import type { AddressInfo } from 'node:net';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import { buildStudentApp } from '../../src/main/studentApp.ts';
import { practiceHost } from '../../src/practice/host.ts';
import { livePractice } from '../../src/practice/livePractice.ts';
import type { DeskCommand } from '../../src/sensors/sources/deskView.ts';
import { NOBODY_AROUND as VIEW } from './deskFixtures.ts';
import { HandSource, scriptedChain } from '../practice/scripted.ts';
import { next, openPage, type Page, wait } from './pages.ts';

describe('the stream of the sensors page', () => {
  const commands: DeskCommand[] = [];
  const pages: Page[] = [];
  let url: string;
  let end: () => Promise<void>;

  beforeEach(async () => {
    commands.length = 0;
    const now = (): number => performance.now();
    const practice = livePractice({
      practiceId: 'p',
      source: new HandSource(),
      chain: scriptedChain([]),
      settings: { hand: 'right', plan: DEFAULT_PLAN, emitFrames: true },
      now,
    });
    const obey = (command: DeskCommand): string | null => {
      commands.push(command);
      return command.type === 'forget' ? 'No such sensor.' : null;
    };
    const app = await buildStudentApp({
      host: practiceHost({ first: practice }),
      now,
      desk: { view: VIEW, obey },
    });
    await app.listen({ host: '127.0.0.1', port: 0 });
    url = `http://127.0.0.1:${(app.server.address() as AddressInfo).port}`;
    end = async () => {
      pages.splice(0).forEach((p) => p.disconnect());
      await practice.stop();
      await app.close();
    };
  });
  afterEach(() => end());

  const page = (): Page => {
    const opened = openPage(url);
    pages.push(opened);
    return opened;
  };
  const types = (): string[] => commands.map((c) => c.type);

  it('goes to pages that opened it, and to no other', async () => {
    const [open, shut] = [page(), page()];
    let overheard = 0;
    shut.on('desk', () => (overheard += 1));
    await open.emitWithAck('desk', { type: 'open' });
    expect(await next(open, 'desk')).toEqual(VIEW);
    await wait(500);
    expect(overheard).toBe(0);
  });

  it('opens and closes once for each page, however often it asks, and closes when the page is gone', async () => {
    const [a, b] = [page(), page()];
    for (const p of [a, a, b]) await p.emitWithAck('desk', { type: 'open' });
    expect(types()).toEqual(['open', 'open']);
    await b.emitWithAck('desk', { type: 'close' });
    await b.emitWithAck('desk', { type: 'close' });
    a.disconnect();
    await wait(100);
    expect(types()).toEqual(['open', 'open', 'close', 'close']);
  });

  it('says in words what could not be done', async () => {
    const reply = await page().emitWithAck('desk', { type: 'forget', id: 'x' });
    expect(reply).toEqual({ ok: false, error: 'No such sensor.' });
  });

  it.each([
    undefined,
    'open',
    { type: 'explode' },
    { type: 'assign', id: 'x', role: 'head' },
    { type: 'assign', id: '', role: 'chest' },
    { type: 'forget', id: 'x'.repeat(201) },
    { type: 'open', more: 1 },
  ])('refuses %j and goes on', async (value) => {
    const p = page();
    const reply = await p.emitWithAck('desk', value as DeskCommand);
    expect(reply.ok).toBe(false);
    expect(commands).toEqual([]);
    expect(await p.emitWithAck('desk', { type: 'swap' })).toEqual({ ok: true });
  });
});
