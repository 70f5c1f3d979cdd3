import type { Browser, BrowserContext, Page } from 'playwright-core';
import { extractText, getDocumentProxy } from 'unpdf';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type RunningHub, sendRecording, startHub } from './hubHarness.ts';
import { filmed } from './filmed.ts';
import { SIZES, openBrowser, openPage, seriousFindings } from './pageHarness.ts';

/** Text that must never become markup. */
const HOSTILE = '<img src=x onerror="document.title=\'broken\'"><b>bold</b>';

let browser: Browser;
let running: RunningHub;
let coach: Page;
let student: Page;
let token: string;
const contexts: BrowserContext[] = [];
const complaints: string[][] = [];

/** A browser of its own for each person. */
async function visit(hash: string, size: keyof typeof SIZES = 'laptop'): Promise<Page> {
  const opened = await openPage(browser, `${running.url}/#/${hash}`, { viewport: SIZES[size] });
  contexts.push(opened.context);
  complaints.push(opened.complaints);
  return opened.page;
}

const fill = async (page: Page, fields: Readonly<Record<string, string>>): Promise<void> => {
  for (const [label, value] of Object.entries(fields)) await page.getByLabel(label).fill(value);
};

/** The page is looked at again, and looks for what is new itself: nobody loads it anew. */
const lookAgain = (page: Page): Promise<unknown> =>
  page.evaluate(() => document.dispatchEvent(new Event('visibilitychange')));

let session = '';

/** Somebody does something about the session in another window than the one that is open. */
const elsewhere = (page: Page, method: string, path: string, body: object): Promise<unknown> =>
  page.evaluate(
    async (about) => {
      const { csrf } = (await (await fetch('/api/me')).json()) as { csrf: string };
      await fetch(`/api/sessions/${about.session}/${about.path}`, {
        method: about.method,
        headers: { 'content-type': 'application/json', 'x-csrf-token': csrf },
        body: JSON.stringify(about.body),
      });
    },
    { session, method, path, body },
  );

/** Letters alone: paper breaks lines elsewhere, and sets some letters as one. */
const bare = (text: string): string => text.normalize('NFKC').replace(/\s/g, '');

/** What stands on each page of a PDF, read by another program than the one that wrote it. */
async function pagesOf(pdf: Uint8Array): Promise<string[]> {
  const { text } = await extractText(await getDocumentProxy(Uint8Array.from(pdf)));
  return text.map(bare);
}

/** What is wide, hostile or hard to reach on a page. */
async function expectSound(page: Page): Promise<void> {
  expect(await seriousFindings(page)).toEqual([]);
  const over = await page.evaluate(
    () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
  );
  expect(over).toBeLessThanOrEqual(0);
  expect(await page.locator('main b:text-is("bold"), main img').count()).toBe(0);
  expect(await page.title()).not.toBe('broken');
}

beforeAll(async () => {
  browser = await openBrowser();
  running = await startHub();
});
afterAll(async () => {
  for (const context of contexts) await context.close();
  await running.end();
  await browser.close();
});

describe('the hub in the browser', () => {
  it('is set up by the first coach with the code from the terminal', async () => {
    const code = running.said.join(' ').match(/[A-Z0-9]{5}-[A-Z0-9]{5}/)?.[0] ?? '';
    coach = await visit('');
    await coach.getByRole('heading', { name: 'Set up this hub' }).waitFor();
    await fill(coach, {
      'One-time code': code,
      'Club or coaching name': 'Fernhill Practice Club',
      'Your name': 'Carla Wend',
      'Sign-in name': 'carla',
    });
    await coach.getByLabel('Password').fill('five calm herons');
    await expectSound(coach);
    await coach.keyboard.press('Enter');
    await coach.getByRole('heading', { name: 'No students yet' }).waitFor();
    // The recordings that are shipped are simulated: they count in a demonstration only.
    await running.context.db.updateTable('club').set({ demo: 1 }).execute();
    await expectSound(coach);
  });

  it('takes in an invited student who reads first what is sent', async () => {
    await coach.locator('main').getByRole('button', { name: 'Invite a student' }).click();
    await fill(coach, { "Student's name": `Ines ${HOSTILE}` });
    await coach.keyboard.press('Enter');
    const link = await coach.locator('.invite-made code').innerText();
    expect(await coach.getByRole('img', { name: /QR code of the invitation/ }).count()).toBe(1);
    await coach.getByRole('button', { name: 'Done' }).click();

    student = await visit(link.split('#/')[1] ?? '', 'phone');
    await student.getByText('What your coach sees').waitFor();
    await student.getByText('Training aid, not a medical device').first().waitFor();
    await fill(student, { 'Sign-in name': 'ines' });
    await student.getByLabel('Password').fill('seven quiet otters');
    await expectSound(student);
    await student.getByLabel(/I have read what is sent/).check();
    await student.getByRole('button', { name: 'Join' }).click();
    await student.getByRole('button', { name: 'Create code' }).click();
    await student.locator('.pairing-code').waitFor();
    await expectSound(student);
    const code = await student.locator('.pairing-code code').first().innerText();
    token = await sendRecording(running.url, code, 'right-mixed');
    await student.goto(`${running.url}/#/`);
    await expect
      .poll(
        async () => {
          await lookAgain(student);
          return student.locator('.session-row').allInnerTexts();
        },
        { timeout: 240_000, interval: 500 },
      )
      .toEqual([expect.stringContaining('rehearsals passed')]);
  });

  it('shows the coach who needs a look, and why, and is walked by keyboard', async () => {
    await lookAgain(coach);
    await coach.getByText('None of 1 student needs you now.').waitFor();
    await coach.locator('.student-line .reason').waitFor();
    await expectSound(coach);
    await coach.keyboard.press('/');
    await coach.keyboard.type('nobody like that');
    await coach.getByText('No matches.').waitFor();
    await coach.keyboard.press('Escape');
    await coach.locator('.student-line').waitFor();
    await coach.keyboard.press('j');
    await coach.keyboard.press('Enter');
    await coach.getByRole('heading', { name: 'Months at a glance' }).waitFor();
    await expectSound(coach);
  });

  it('lets a session be reviewed by keyboard alone', async () => {
    await coach.locator('a.primary kbd').waitFor();
    await coach.keyboard.press('n');
    await coach.locator('.review-strip button').first().waitFor();
    await expectSound(coach);
    for (const key of ['ArrowRight', 'ArrowRight', 'ArrowRight', 'ArrowRight', 'Enter'])
      await coach.keyboard.press(key);
    await coach.getByRole('heading', { name: /Repetition 4/ }).waitFor();
    await coach.keyboard.press('c');
    await coach.keyboard.type(`Hold until the tick. ${HOSTILE}`);
    await coach.keyboard.press('Control+Enter');
    await coach.locator('.moment-talk .thread').waitFor();
    await coach.keyboard.press('Escape');
    await coach.keyboard.press('l');
    await coach.keyboard.press('ArrowDown');
    await coach.getByText('Detected as a rehearsal, corrected by hand to a ball').waitFor();
    await coach.getByRole('status').getByText('Analysis finished').waitFor();
    await coach.keyboard.press('End');
    await coach.getByText('Detected as a rehearsal, corrected by hand to nothing').waitFor();
    await coach.getByText(/Set by Carla Wend/).waitFor();
    await expectSound(coach);
    await coach.keyboard.press('Shift+Tab');
    await coach.keyboard.press('Escape');
    await coach.getByText(/Repetition 4: nothing to count, detected as a rehearsal/).waitFor();
    await coach.getByRole('button', { name: /^4: ignored.*note: 1 comment/ }).waitFor();
    await coach.keyboard.press('r');
    await coach
      .getByText(/✓ Reviewed|Reviewed/)
      .first()
      .waitFor();
    await coach.keyboard.press('n');
    await coach.getByText('No other sessions to review.').waitFor();
  });

  it('plays a film beside the curves: lined up by the catch, or by three moments, both move together', async () => {
    await coach.locator('.review-strip button').first().click();
    const ranges: number[] = [];
    coach.on('response', (r) => void (/clips/.test(r.url()) && ranges.push(r.status())));
    const film = { name: 'top.mp4', mimeType: 'video/mp4', buffer: await filmed(coach) };
    await coach.locator('.attach input[type=file]').setInputFiles(film);
    await coach.getByText('Not in sync yet').waitFor();
    const video = coach.locator('.film video');
    const at = async (): Promise<number> => {
      await expect.poll(() => video.evaluate((v: HTMLVideoElement) => v.seeking)).toBe(false);
      return video.evaluate((v: HTMLVideoElement) => v.currentTime);
    };
    const show = (timeS: number): Promise<void> =>
      video.evaluate((v: HTMLVideoElement, t) => void (v.currentTime = t), timeS);
    await expect
      .poll(() => video.evaluate((v: HTMLVideoElement) => v.duration))
      .toBeGreaterThan(0.8);
    expect(ranges).toContain(206);

    await show(0.5);
    await coach.getByRole('button', { name: 'This frame is the catch' }).click();
    await coach.getByText(/^In sync|does not show this moment/).waitFor();
    const slider = coach.locator('.scrub input');
    const toCatch = coach.locator('.event-buttons').getByRole('button', { name: /^Catch/i });
    await toCatch.click();
    await coach.getByText('In sync: the slider').waitFor();
    expect(await at()).toBeCloseTo(0.5, 1);
    const catchS = Number(await slider.inputValue());
    await slider.focus();
    for (let i = 0; i < 20; i++) await coach.keyboard.press('ArrowRight');
    expect(await at()).toBeCloseTo(0.7, 1);
    await coach.getByRole('button', { name: 'Previous frame' }).click();
    await expect.poll(async () => Number(await slider.inputValue())).toBeCloseTo(catchS + 0.18, 1);
    await expectSound(coach);

    await coach.getByText('Sync film and curves').click();
    await coach.getByRole('button', { name: 'Undo sync' }).click();
    await coach.getByText('Not in sync yet').waitFor();
    for (const by of [0, 0.1, 0.2]) {
      await show(0.4 + by);
      await coach.getByRole('button', { name: /^Mark in the film/ }).click();
      await toCatch.click();
      await slider.focus();
      for (let i = 0; i < by * 100; i++) await coach.keyboard.press('ArrowRight');
      await coach.getByRole('button', { name: /^Mark in the curves/ }).click();
    }
    await coach.getByText(/The three moments agree within \d+ ms/).waitFor();
    await coach.getByRole('button', { name: 'Sync with these' }).click();
    await toCatch.click();
    await coach.getByText('In sync: the slider').waitFor();
    expect(await at()).toBeCloseTo(0.4, 1);
    await coach.getByRole('button', { name: 'Delete film' }).click();
    await coach.getByText('No film attached.').waitFor();
    await coach.keyboard.press('Escape');
    await coach.getByText('Side by side').first().waitFor();
  });

  it('lets the student read and answer on a phone', async () => {
    await student.reload();
    await student.getByText(/1 comment/).waitFor();
    await expectSound(student);
    await student.locator('.session-row a').click();
    await student.getByText('Hold until the tick.').first().waitFor();
    expect(await student.getByRole('button', { name: /Mark as reviewed/ }).count()).toBe(0);
    await student
      .locator('.comments')
      .getByRole('button', { name: /^Reply/ })
      .click();
    await student.getByLabel(/^Reply to/).fill(`Felt slow ${HOSTILE}`);
    await student.locator('.thread').getByRole('button', { name: 'Send' }).click();
    await student.locator('.comment.by-student').waitFor();
    await expectSound(student);
  });

  it('shows the coach what the student answers, and leaves alone what the coach is writing', async () => {
    const field = coach.getByLabel('Comment', { exact: true });
    await field.fill('Half a sentence');
    session = /sessions\/([\w-]+)/.exec(student.url())?.[1] ?? '';
    await elsewhere(student, 'POST', 'comments', { text: 'One more thing' });
    await lookAgain(coach);
    await coach.getByText('One more thing').waitFor();
    await coach.getByRole('status').getByText('New comment by Ines').waitFor();
    expect(await field.inputValue()).toBe('Half a sentence');
    expect(await field.evaluate((node) => node === document.activeElement)).toBe(true);
    await field.fill('');
  });

  it('changes the plan, shows before saving what changes, and the student gets it', async () => {
    await coach.locator('.review-bar a').click();
    await coach.getByRole('link', { name: 'Change plan' }).click();
    const hold = coach.getByLabel('hold at the top: at least');
    await hold.fill('twelve');
    await coach
      .getByText(/: enter a number from /)
      .first()
      .waitFor();
    await hold.fill('1,2');
    await coach.getByLabel('Note to the student').fill(`Slowly. ${HOSTILE}`);
    await coach.getByText('Hold at the top: at least 1.2 s, was at least 1 s.').waitFor();
    await expectSound(coach);
    await coach.getByRole('button', { name: 'Save as new version' }).click();
    await coach.getByText(/not yet received by the student's computer/).waitFor();
    await student.goto(`${running.url}/#/`);
    await student.reload();
    await student.getByText('Hold at the top: at least 1.2 s, was at least 1 s.').waitFor();
    await expectSound(student);
  });

  it('keeps the rest of what a coach writes as text', async () => {
    await coach.getByLabel('Topic').fill(`Studio ${HOSTILE}`);
    await coach.getByRole('button', { name: 'Add lesson' }).click();
    await coach.locator('.lines').getByText('Studio').waitFor();
    await coach.getByRole('link', { name: 'Texts and templates' }).click();
    await fill(coach, { Name: `Hold ${HOSTILE}`, Text: HOSTILE });
    await coach.getByRole('button', { name: 'Add snippet' }).click();
    await coach.getByRole('button', { name: /^Change the snippet/ }).waitFor();
    await expectSound(coach);
    await coach.getByRole('link', { name: 'Club' }).click();
    await coach.getByRole('cell', { name: 'changed a plan' }).first().waitFor();
    await expectSound(coach);
    await coach.goBack();
    await coach.getByRole('heading', { name: 'Text snippets' }).waitFor();
  });

  it('prints a report that a student can be handed', async () => {
    await coach.goto(`${running.url}/#/`);
    await coach.reload();
    await coach.locator('.student-line').waitFor();
    // With hands on the page nothing moves under them unless they say so.
    const held = coach.locator('.student-line h3 a:focus');
    await expect
      .poll(async () => {
        await coach.keyboard.press('j');
        return held.count();
      })
      .toBe(1);
    await coach.keyboard.press('Shift');
    const hands = setInterval(
      () => void coach.keyboard.press('Shift').catch(() => undefined),
      1000,
    );
    await elsewhere(coach, 'PUT', 'reviewed', { reviewed: false });
    await lookAgain(coach);
    await coach.getByRole('button', { name: 'Show now' }).click();
    clearInterval(hands);
    await coach.locator('.student-line h3 a').click();
    await coach.getByRole('link', { name: 'Printable report' }).click();
    await coach.getByLabel('Message').fill(`Well done. ${HOSTILE}`);
    await coach.getByLabel(/Felt slow/).uncheck();
    await coach.locator('.sheet').getByText('Well done.').waitFor();
    await expectSound(coach);
    const sheet = await coach.locator('.sheet').innerText();
    expect(sheet).toContain('Training aid, not a medical device. It measures movement');
    expect(sheet).toContain('Accuracy of these numbers');
    expect(sheet).toContain('Hold until the tick.');
    expect(sheet).not.toContain('Felt slow');
    for (const format of ['A4', 'Letter'] as const) {
      const pages = await pagesOf(await coach.pdf({ format, printBackground: true }));
      expect(pages.length, format).toBeLessThanOrEqual(4);
      for (const page of pages)
        expect(page.length, `${format}: a page of a line`).toBeGreaterThan(80);
      // Whatever stands on the page, each figure too, stands on the paper.
      const printed = pages.join('');
      for (const piece of sheet.split(/[\n\t]/)) expect(printed, format).toContain(bare(piece));
    }
    // Nothing is wider than the printable width of the narrower paper (A4: 180 mm at 96 dots an inch).
    await coach.emulateMedia({ media: 'print' });
    await coach.setViewportSize({ width: 680, height: 960 });
    const wide = await coach.evaluate(() => document.documentElement.scrollWidth);
    expect(wide).toBeLessThanOrEqual(680);
    expect(await coach.locator('.report-settings').isVisible()).toBe(false);
    await coach.emulateMedia({ media: null });
    await coach.setViewportSize(SIZES.laptop);
  });

  it('compares two periods without pretending, and signs out', async () => {
    await coach.getByRole('link', { name: 'Back to the student' }).click();
    await coach.getByRole('link', { name: 'Compare two periods' }).click();
    await coach.getByText(/no sessions\./).waitFor();
    await expectSound(coach);
    // One session on one side: its values stand there, and no range is claimed.
    const at = Date.now() + 86_400_000;
    await coach.goto(`${coach.url().split('?')[0]!}?aFromMs=0&aToMs=${at}&bFromMs=0&bToMs=${at}`);
    await coach.reload();
    await coach.getByText('too few sessions').first().waitFor();
    await expectSound(coach);
    await coach.getByRole('link', { name: 'Account' }).click();
    await coach.getByRole('heading', { name: 'Account' }).waitFor();
    await expectSound(coach);
    await coach.getByRole('button', { name: 'Sign out', exact: true }).click();
    await coach.getByRole('heading', { name: 'Sign in' }).waitFor();
    await expectSound(coach);
    expect(token).not.toBe('');
    const serious = complaints.flat().filter((text) => !/status of 401/.test(text));
    expect(serious).toEqual([]);
  });
});
