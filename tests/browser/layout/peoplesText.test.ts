import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { NOTHING_DONE } from '../../../src/coaching/notCounted.ts';
import { DEFAULT_PLAN, type Plan } from '../../../src/coaching/plan.ts';
import { planFile, planService } from '../../../src/main/planFile.ts';
import { type SessionStore, openStore } from '../../../src/sessions/store/store.ts';
import { NOBODY_AROUND, WELL } from '../../streaming/deskFixtures.ts';
import { type RunningHub, startHub } from '../hubHarness.ts';
import { type HubRows, hubRows } from '../hubRows.ts';
import { type RunningHost, SIZES, openBrowser, openPage, startHost } from '../pageHarness.ts';
import { longWord, peoplesText } from './peoplesText.ts';
import { practised, shownPractice } from './shownPractice.ts';

const PLAN: Plan = {
  ...DEFAULT_PLAN,
  name: longWord(80),
  note: longWord(300),
  checklist: [longWord(120)],
};

/** What is found on each page at both sizes; every page shows some of people's text. */
async function lookAt(page: Page, addresses: readonly string[], ready: string): Promise<string[]> {
  const all: string[] = [];
  for (const [size, viewport] of Object.entries(SIZES)) {
    await page.setViewportSize(viewport);
    for (const address of addresses) {
      await page.goto('about:blank');
      await page.goto(address);
      await page.locator(ready).first().waitFor();
      await page.waitForFunction(() =>
        /[\u0590-\u05ff]/.test(
          document.body.textContent +
            [...document.querySelectorAll('textarea, input')]
              .map((e) => (e as HTMLInputElement).value)
              .join(''),
        ),
      );
      for (const fold of await page.locator('main details > summary').all())
        await fold.evaluate((e) => ((e.parentElement as HTMLDetailsElement).open = true));
      await page.waitForLoadState('networkidle');
      const { found, texts } = await peoplesText(page);
      const where = `${size}, ${address.replace(/^.*#/, '#')}`;
      all.push(
        ...found.map((one) => `${where}: ${one}`),
        ...(texts === 0 ? [`${where}: no text`] : []),
      );
    }
  }
  return all;
}

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

describe('what people wrote, in one word of 300 letters and right to left', () => {
  let store: SessionStore;
  let running: RunningHost;
  let session: string;
  beforeAll(async () => {
    store = await openStore(mkdtempSync(join(tmpdir(), 'stillcatch-own-')));
    const recording = new URL('../../../recordings/right-mixed.zip', import.meta.url);
    session = await store.importSession(fileURLToPath(recording));
    await store.annotate(session, { note: longWord(300) });
    const file = planFile(join(store.places.root, 'plans.json'), Date.now);
    const plans = planService({
      file,
      week: () => Promise.resolve(NOTHING_DONE),
    });
    plans.write(PLAN);
    const person = {
      firstUse: false,
      about: { name: longWord(40) },
      painBefore: null,
      lastSession: { startedMs: Date.now() - 86_400_000, repetitions: 3, note: longWord(300) },
    };
    const sensors = [
      { ...WELL, name: longWord(60) },
      { ...WELL, id: 'b', role: null, name: longWord(60) },
    ];
    running = await startHost(shownPractice({ ...practised('r b'), person }).host, {
      sessions: { store, problem: null, folder: store.places.root },
      plans,
      desk: { view: { ...NOBODY_AROUND, sensors }, obey: () => null },
    });
  });
  afterAll(async () => {
    await running.end();
    await store.close();
  });

  it('neither widens a student’s page nor turns the words around it', async () => {
    const { page, context } = await openPage(browser, `${running.url}#/today`);
    const routes = ['today', 'sessions', `sessions/${session}`, 'plan', 'sensors'];
    const addresses = routes.map((route) => `${running.url}#/${route}`);
    expect(await lookAt(page, addresses, 'main h1')).toEqual([]);
    await context.close();
  });
});

describe('what people wrote at a hub, in one word of 300 letters and right to left', () => {
  let running: RunningHub;
  let rows: HubRows;
  beforeAll(async () => {
    running = await startHub();
    rows = await hubRows(running);
    const { db } = running.context;
    await db
      .updateTable('club')
      .set({ name: longWord(80) })
      .execute();
    await db
      .updateTable('person')
      .set({ name: longWord(80) })
      .execute();
    await rows.addStudent('sam', longWord(80));
    const own = { studentId: 'sam', note: `${longWord(300)}?`, plan: JSON.stringify(PLAN) };
    await rows.addSession({ ...own, id: 'x1', startedMs: rows.daysAgo(1), analysed: 0 });
    await rows.addSession({ ...own, id: 'x2', startedMs: rows.daysAgo(9), painAfter: 7 });
    await addTexts(running);
  });
  afterAll(() => running.end());

  it('neither widens a page nor turns the words around it', async () => {
    const { page, context } = await openPage(browser, 'about:blank');
    await context.addCookies([await rows.cookieOf('carla')]);
    const parts = ['', 'students/sam', 'students/sam/plan', 'students/sam/report', 'sessions/x1'];
    const addresses = [...parts, 'club', 'texts', 'account'].map((at) => `${running.url}/#/${at}`);
    expect(await lookAt(page, addresses, 'main :is(h1, h2)')).toEqual([]);
    await context.close();
  });

  it('leaves a sentence with a name in it in its order', async () => {
    const { page, context } = await openPage(browser, 'about:blank');
    await context.addCookies([await rows.cookieOf('carla')]);
    await page.goto(`${running.url}/#/sessions/x1`);
    const sentence = page
      .getByText(/^Under plan|plan/i)
      .filter({ hasText: longWord(20) })
      .first();
    await sentence.waitFor();
    const order = await sentence.evaluate((element) => {
      const text = element.firstChild as Text;
      const at = text.data.search(/[\u0590-\u05ff]/);
      const left = (from: number, to: number): DOMRect => {
        const range = document.createRange();
        range.setStart(text, from);
        range.setEnd(text, to);
        return range.getBoundingClientRect();
      };
      return { before: left(0, 1).left, name: left(at, at + 1).right };
    });
    expect(order.before).toBeLessThan(order.name);
    await context.close();
  });
});

async function addTexts({ context: { db } }: RunningHub): Promise<void> {
  const [text, name] = [longWord(300), longWord(80)];
  const comment = { sessionId: 'x1', repIndex: null, momentS: null };
  await db
    .insertInto('comment')
    .values([
      { ...comment, id: 'c1', authorId: 'sam', atMs: 1, text, replyTo: null },
      { ...comment, id: 'c2', authorId: 'carla', atMs: 2, text, replyTo: 'c1' },
    ])
    .execute();
  await db
    .insertInto('lesson')
    .values({ id: 'l', studentId: 'sam', atMs: Date.now(), text })
    .execute();
  await db.insertInto('block').values({ id: 'b', coachId: 'carla', title: name, text }).execute();
  const plan = JSON.stringify(PLAN);
  await db.insertInto('template').values({ id: 't', coachId: 'carla', name, plan }).execute();
  const version = { studentId: 'sam', validFromMs: 0, byId: 'carla', reachedMs: null };
  await db
    .insertInto('plan')
    .values([
      { ...version, id: 'p1', number: 1, plan: JSON.stringify(DEFAULT_PLAN), createdMs: 1 },
      { ...version, id: 'p2', number: 2, plan, createdMs: 2 },
    ])
    .execute();
  const machine = { studentId: 'sam', tokenHash: 'x', pairedMs: 1, lastSeenMs: null };
  await db
    .insertInto('machine')
    .values({ ...machine, id: 'm', name, revokedMs: null })
    .execute();
  const closing = { studentId: 'sam', sessionId: 'x2', throughMs: 1, byId: 'carla', atMs: 3 };
  await db
    .insertInto('painClosing')
    .values({ ...closing, id: 'pc', reason: text, reopenedMs: null })
    .execute();
}
