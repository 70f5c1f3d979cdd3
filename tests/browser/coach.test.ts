import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { codeHash } from '../../src/hub/access/secrets.ts';
import { type CoachService, coachService } from '../../src/sending/coachLink.ts';
import { type SessionStore, openStore } from '../../src/sessions/store/store.ts';
import { type TestHub, testHub } from '../hub/testHub.ts';
import { listen, sessionsOf } from '../hub/uploads/sending.ts';
import {
  seriousFindings,
  openBrowser,
  openPage,
  type RunningService,
  startService,
} from './pageHarness.ts';
import { simulated } from './simulated.ts';

const RECORDING = fileURLToPath(new URL('../../recordings/right-mixed.zip', import.meta.url));
const CODE = 'ABCDE-FGHJK';

describe('the student’s coach page, with a real hub', () => {
  const data = mkdtempSync(join(tmpdir(), 'stillcatch-coach-'));
  let hub: TestHub;
  let hubUrl: string;
  let store: SessionStore;
  let coach: CoachService;
  let service: RunningService;
  let browser: Browser;
  let page: Page;
  let complaints: string[];
  beforeAll(async () => {
    hub = await testHub();
    hubUrl = `http://127.0.0.1:${await listen(hub)}`;
    await hub.context.db
      .insertInto('pairing')
      .values({ codeHash: codeHash(CODE), studentId: 'sam', expiresMs: 1e15, usedMs: null })
      .execute();
    store = await openStore(data);
    await store.importSession(RECORDING);
    coach = coachService({
      store,
      now: Date.now,
      say: () => undefined,
      practising: () => false,
    });
    const sessions = { store, problem: null, folder: data };
    service = await startService(simulated('r r'), { sessions, coach });
    browser = await openBrowser();
    ({ page, complaints } = await openPage(browser, `${service.url}#/coach`));
  });
  afterAll(async () => {
    await browser.close();
    await service.end();
    await coach.close();
    await store.close();
    await hub.close();
    rmSync(data, { recursive: true, force: true });
  });

  it('connects, asks, sends, and shows how far it is', async () => {
    await page.getByLabel('Hub address').fill(hubUrl);
    await page.getByLabel('Pairing code').fill(CODE);
    await page.getByRole('button', { name: 'Connect' }).click();
    await page.getByText('Connected to Carl').waitFor();
    await page.getByText('You have not agreed. Nothing is sent.').waitFor();
    await page.getByLabel('Also send sessions from before today').check();
    await page.getByRole('button', { name: 'I agree' }).click();
    await page.getByText('1 of 1 sent to your coach.').waitFor();
    expect(await sessionsOf(hub, 'sam')).toHaveLength(1);
  });

  it('says on the first page that the coach wrote, and brings an answer back', async () => {
    const [session] = await sessionsOf(hub, 'sam');
    await hub.ask('carl', {
      url: `/api/sessions/${session!.id}/comments`,
      method: 'POST',
      payload: { text: 'Wait <b>longer</b> at the top.', index: 2 },
    });
    await page.goto(`${service.url}#/today`);
    coach.wake();
    await vi.waitFor(async () => expect((await coach.view()).unread).toBe(1), 240_000);
    await page.reload();
    await page.getByRole('link', { name: 'New message from your coach.' }).click();
    await page.getByText('Wait <b>longer</b> at the top.').waitFor();
    await page.getByLabel('Your reply').fill('I will.');
    await page.getByRole('button', { name: 'Reply' }).click();
    await vi.waitFor(async () => {
      const said = await hub.context.db
        .selectFrom('comment')
        .select('text')
        .where('authorId', '=', 'sam')
        .execute();
      expect(said).toEqual([{ text: 'I will.' }]);
    }, 240_000);
    expect(await seriousFindings(page)).toEqual([]);
    expect(complaints).toEqual([]);
  });
});
