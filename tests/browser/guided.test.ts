import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { studentHost } from '../../src/main/studentHost.ts';
import { NOBODY, type Person } from '../../src/practice/person.ts';
import type { SensorSource } from '../../src/sensors/sources/source.ts';
import { SyntheticSource } from '../../src/sensors/sources/synthetic/index.ts';
import { openStore } from '../../src/sessions/store/store.ts';
import { turned } from '../practice/turned.ts';
import { scratch } from '../sessions/makeSession.ts';
import { HaltableClock } from './haltable.ts';
import { SIZES, openBrowser, openPage, seriousFindings, startHost } from './pageHarness.ts';
import { simulated } from './simulated.ts';

const LONG = { timeout: 240_000 };
/** The simulated student lives this much faster than the test's clock. */
const SPEED = 4;

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

/** As though a person wore the sensors, so that the practice counts. */
const worn = (source: SensorSource): SensorSource => ({
  kind: source.kind,
  simulated: false,
  start: (listener) => source.start(listener),
  stop: () => source.stop(),
  ask: (what) => source.ask?.(what),
});

/** A whole service with a student's memory that lasts as long as the test. */
async function studentService(
  person: Person = NOBODY,
  date = (): number => Date.UTC(2026, 4, 3, 9),
) {
  const kept = { person, slipped: false };
  const clock = new HaltableClock();
  const wear = (hand: 'left' | 'right') =>
    worn(new SyntheticSource({ seed: 4, hand, prompted: true, speed: SPEED, timers: clock }));
  const slip = { sensor: 'chest', axis: { x: 1, y: 0, z: 0 }, deg: 25 } as const;
  const host = studentHost({
    first: { source: simulated(''), hand: 'right', kind: 'demo', close: async () => undefined },
    sourceFor: ({ hand }) => (kept.slipped ? turned(wear(hand), slip) : wear(hand)),
    store: { read: () => kept.person, write: (next) => void (kept.person = next) },
    now: () => clock.now(),
    date,
  });
  /** Time stands as soon as the student is asked for this movement. */
  const haltAt = (step: string): void => {
    clock.haltWhen = () => host.current().view().guide?.step === step;
  };
  const folder = scratch();
  const store = await openStore(folder);
  const running = await startHost(host, { sessions: { store, problem: null, folder } });
  const end = async (): Promise<void> => {
    await running.end();
    await store.close();
  };
  return { ...running, end, kept, haltAt, goOn: () => clock.goOn() };
}

type StudentService = Awaited<ReturnType<typeof studentService>>;

const isFocused = (page: Page, name: string | RegExp): Promise<boolean> =>
  page.evaluate(
    (pattern) => {
      const element = document.activeElement;
      const label = element?.closest('label')?.textContent ?? element?.textContent ?? '';
      return new RegExp(pattern).test(label.trim());
    },
    typeof name === 'string' ? `^${name}` : name.source,
  );

/** Moves the focus by Tab alone to what has that name. */
async function tabTo(page: Page, name: string | RegExp): Promise<void> {
  for (let i = 0; i < 60; i++) {
    if (await isFocused(page, name)) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`Tab never came to ${String(name)}`);
}

async function pressOn(page: Page, name: string | RegExp, key = 'Enter'): Promise<void> {
  await tabTo(page, name);
  await page.keyboard.press(key);
}

/** axe-core on the laptop's size and on the phone's, and nothing that goes out sideways there. */
async function look(page: Page): Promise<void> {
  expect(await seriousFindings(page)).toEqual([]);
  await page.setViewportSize(SIZES.phone);
  expect(await seriousFindings(page)).toEqual([]);
  const wide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
  expect(wide, 'goes out sideways').toBeLessThanOrEqual(0);
  await page.setViewportSize(SIZES.laptop);
  const scrolls = await page.evaluate(
    () =>
      document.querySelector('main.ready, main.practice') !== null &&
      (document.scrollingElement as HTMLElement).scrollHeight > innerHeight,
  );
  const heading = await page.getByRole('heading').first().innerText();
  expect(scrolls, `${heading} scrolls on a laptop`).toBe(false);
}

/** Begins what leads to a guided movement: on a phone, too, words, progress and caption are in sight. */
async function movement(
  { haltAt, goOn }: Pick<StudentService, 'haltAt' | 'goOn'>,
  page: Page,
  step: string,
  begin: () => Promise<void> = () => Promise.resolve(),
): Promise<void> {
  haltAt(step);
  await begin();
  await page.locator(`[data-step="${step}"]`).waitFor(LONG);
  await look(page);
  await page.setViewportSize(SIZES.phone);
  for (const part of ['.state-word', '.guide-text', '.caption']) {
    const box = await page.locator(part).boundingBox();
    expect((box?.y ?? 9999) + (box?.height ?? 0), part).toBeLessThanOrEqual(SIZES.phone.height);
  }
  await page.setViewportSize(SIZES.laptop);
  goOn();
}

const heading = (page: Page, name: string) => page.getByRole('heading', { name }).waitFor(LONG);

/** The guided start of a returning student, by keyboard, up to the re-check. */
async function beginRecheck(page: Page): Promise<void> {
  await page.goto(page.url().replace(/#.*/, '#/today'));
  await pressOn(page, 'Start a practice');
  await heading(page, 'Before you start');
  await pressOn(page, 'No', 'Space');
  await pressOn(page, 'Space, shoes', 'Space');
  await pressOn(page, 'I have warmed up', 'Space');
  await tabTo(page, '0$');
  await page.keyboard.press('Space');
  await pressOn(page, 'Confirm');
  await heading(page, 'Put on both sensors');
  await pressOn(page, 'Both sensors are on');
  await page.getByText('Calibrated on 3 May 2026').waitFor(LONG);
  const check = page.getByRole('button', { name: 'Quick check' });
  await check.and(page.locator(':enabled')).waitFor(LONG);
}

/** Next time: the short check passes; with a sensor that moved it is refused, and the way on is the whole calibration. */
async function comesBack(page: Page, service: StudentService): Promise<void> {
  await beginRecheck(page);
  await look(page);
  await movement(service, page, 'recheckBow', () => pressOn(page, 'Quick check'));
  await heading(page, 'Your comfortable range');
  service.kept.slipped = true;
  await beginRecheck(page);
  await pressOn(page, 'Quick check');
  await page.getByRole('heading', { name: 'A sensor has moved' }).waitFor(LONG);
  expect(await page.locator('main').innerText()).toContain('The chest sensor has moved by about');
  expect(await page.locator('.guide-text').innerText()).toBe('Failed.');
  await look(page);
  await pressOn(page, 'Full calibration');
  await page.locator('[data-step="stand"]').waitFor(LONG);
}

describe('a whole practice at home', () => {
  it('goes by keyboard alone from today to the summary, with nothing serious found on the way', async () => {
    const service = await studentService();
    const { page, context, complaints } = await openPage(browser, `${service.url}#/today`);
    await heading(page, 'Today');
    await look(page);
    await pressOn(page, 'Start a practice');

    await heading(page, 'Before you start');
    await look(page);
    const toTheTop = () =>
      page.locator('body').evaluate(() => document.querySelector<HTMLElement>('h2')?.focus());
    for (const [missing, next] of [
      ['Answer the question about signs first.', 'No'],
      ['Answer the question about earlier injuries first.', 'Yes, I have asked'],
    ] as const) {
      await pressOn(page, 'Confirm');
      await page.getByText(missing).waitFor(LONG);
      await toTheTop();
      await pressOn(page, next, 'Space');
    }
    await pressOn(page, 'Confirm');
    await page.getByText('Choose a number first.').waitFor(LONG);
    await toTheTop();
    await pressOn(page, 'I have warmed up', 'Space');
    await tabTo(page, '0$');
    await page.keyboard.press('ArrowRight');
    await pressOn(page, 'Confirm');
    await page.getByText('Clear 3 m around you').and(page.getByRole('alert')).waitFor(LONG);
    // what was filled in is still there
    expect(await page.getByLabel('I have warmed up').isChecked()).toBe(true);
    await toTheTop();
    await pressOn(page, 'Space, shoes', 'Space');
    await pressOn(page, 'Confirm');

    await heading(page, 'Put on both sensors');
    await look(page);
    await pressOn(page, 'Both sensors are on');
    await heading(page, 'Sensor check');
    await page
      .getByRole('button', { name: 'Calibrate' })
      .and(page.locator(':enabled'))
      .waitFor(LONG);
    await look(page);

    await movement(service, page, 'bow', () => pressOn(page, 'Calibrate'));
    await heading(page, 'Your comfortable range');
    await look(page);
    expect(await page.getByTestId('caption').innerText()).toContain('Calibrated');
    await movement(service, page, 'rangeBend', () => pressOn(page, 'Measure my range'));
    await movement(service, page, 'address');
    await page.locator('main.practice.far').waitFor(LONG);

    await page.locator('.strip li').nth(1).waitFor(LONG);
    await page.keyboard.press('b');
    await page.locator('.strip li.corrected').waitFor(LONG);
    await page.keyboard.press('u');
    await page.locator('.strip li.corrected').waitFor({ state: 'detached', ...LONG });
    await page.keyboard.press('h');
    await heading(page, 'Pain now?');
    await look(page);
    await pressOn(page, 'No pain, resume');
    await page.locator('dialog').waitFor({ state: 'detached', ...LONG });
    await page.keyboard.press('e');
    await pressOn(page, 'End it');

    await heading(page, 'After the practice');
    expect(await page.getByTestId('summary').innerText()).toMatch(/\d of \d passed|No rehearsal/);
    await look(page);
    await tabTo(page, '0$');
    await page.keyboard.press('Space');
    await tabTo(page, 'A note');
    await page.keyboard.type('Chest first felt right.');
    await pressOn(page, 'Save and close');
    await page.getByText('Saved.').waitFor(LONG);
    await look(page);

    const [session] = service.kept.person.sessions;
    expect(session).toMatchObject({ painBefore: 1, painAfter: 0, note: 'Chest first felt right.' });
    expect(service.kept.person.historyConfirmed).toBe(true);
    expect(service.kept.person.ownRange.flexionDeg).toBeGreaterThan(50);
    await comesBack(page, service);
    expect(complaints).toEqual([]);
    await context.close();
    await service.end();
  });

  it('stops on a phone where a red flag was named', async () => {
    const service = await studentService(NOBODY, Date.now);
    const { page, context } = await openPage(browser, `${service.url}#/today`, {
      viewport: SIZES.phone,
      hasTouch: true,
    });
    await page.getByRole('button', { name: 'Start a practice' }).tap();
    // at once: nothing was ticked and no number was chosen
    await page.getByRole('button', { name: 'Yes', exact: true }).tap();
    await heading(page, 'No practice today');
    await page
      .getByText('This can need urgent care. Stop and seek medical help now.')
      .first()
      .waitFor(LONG);
    expect(await seriousFindings(page)).toEqual([]);
    const overflow = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    expect(overflow).toBeLessThanOrEqual(0);
    await page.goto(service.url);
    const stopped = page.getByTestId('stopped-today');
    await stopped.waitFor(LONG);
    const start = page.getByRole('button', { name: 'Start a practice' });
    expect(await start.count()).toBe(0);
    expect(await seriousFindings(page)).toEqual([]);
    await stopped.getByRole('button', { name: 'I have read this' }).tap();
    await start.waitFor(LONG);
    expect(await stopped.isVisible()).toBe(true);
    expect(await start.getAttribute('class')).not.toContain('primary');
    await context.close();
    await service.end();
  });

  it('ends the session at a pain over 5 and says what to do', async () => {
    const service = await studentService({ ...NOBODY, historyConfirmed: true });
    const { page, context } = await openPage(browser, service.url);
    await page.locator('[data-testid="verdict"]:not([data-mark="none"])').waitFor(LONG);
    await page.keyboard.press('h');
    await page.locator('dialog .rating').nth(7).click();
    await page.getByRole('button', { name: 'Save' }).click();
    await heading(page, 'After the practice');
    await page
      .getByText('Stop now and get advice from a licensed health professional')
      .first()
      .waitFor(LONG);
    await context.close();
    await service.end();
  });
});
