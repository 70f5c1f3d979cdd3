import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import * as analysis from '../../src/analysis/analysis.ts';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import { de } from '../../src/dashboard/strings/de.ts';
import { practiceHost } from '../../src/practice/host.ts';
import { livePractice } from '../../src/practice/livePractice.ts';
import { BleSource } from '../../src/sensors/sources/ble/bleSource.ts';
import { SensorDesk } from '../../src/sensors/sources/ble/desk.ts';
import { monotonicMs } from '../../src/sensors/sources/ble/messages.ts';
import { Pairings } from '../../src/sensors/sources/ble/pairings.ts';
import { radioProblem } from '../../src/sensors/sources/ble/problem.ts';
import { Radio } from '../../src/sensors/sources/ble/radio.ts';
import type { DeskCommand, DeskSensor } from '../../src/sensors/sources/deskView.ts';
import { LINK_TEXTS } from '../../src/sensors/sources/radioTexts.ts';
import { SyntheticSource } from '../../src/sensors/sources/synthetic/index.ts';
import { handTimers } from '../practice/handTimers.ts';
import { nobleIsInstalled } from '../virtual-radio/install.ts';
import { inRoom, type Room } from '../virtual-radio/room.ts';
import {
  openBrowser,
  openPage,
  type RunningService,
  seriousFindings,
  SIZES,
  startHost,
  startService,
} from './pageHarness.ts';
import { NOBODY_AROUND, WELL } from '../streaming/deskFixtures.ts';
import { findings } from './layout/findings.ts';
import { TYPEFACES, installTypefaces, setTypeface } from './layout/typefaces.ts';
import { simulated } from './simulated.ts';

const ROOM: Room = {
  loss: 0.05,
  sensors: [
    { kind: 'openProfile', address: 'c0:00:00:00:00:01', name: 'Blue', motion: 'tapped' },
    { kind: 'movesense', address: 'c0:00:00:00:00:02', name: 'Movesense 1', motion: 'still' },
    { kind: 'witMotion', address: 'c0:00:00:00:00:03', name: 'WT901BLE68', motion: 'still' },
  ],
};

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

describe.skipIf(!nobleIsInstalled())('the sensors page', () => {
  let folder: string;
  let radio: Radio;
  let service: RunningService;
  afterEach(async () => {
    await service.end();
    await radio.stop();
    rmSync(folder, { recursive: true, force: true });
  });

  async function open(room: Room | null, size: keyof typeof SIZES, lang = 'en'): Promise<Page> {
    folder = mkdtempSync(join(tmpdir(), 'stillcatch-'));
    radio = new Radio(monotonicMs, inRoom(room, join(folder, 'lock')));
    const source = new BleSource(radio, [], monotonicMs);
    const desk = new SensorDesk(radio, new Pairings(null), monotonicMs, (all) =>
      source.assign(all),
    );
    service = await startService(source, { desk });
    const viewport = SIZES[size];
    const { page } = await openPage(browser, `${service.url}?lang=${lang}#/sensors`, { viewport });
    return page;
  }

  const focused = (page: Page): Promise<string> => page.evaluate('document.activeElement.id');

  /** Kept where somebody asked to look at the pages. */
  const picture = async (page: Page, name: string): Promise<void> => {
    const shots = process.env['STILLCATCH_SHOTS'];
    if (shots) await page.screenshot({ path: join(shots, `${name}.png`), fullPage: true });
  };

  it('chooses the sensor that is tapped, shows how it does, and the practice gets its samples', async () => {
    const page = await open(ROOM, 'laptop');
    const chest = page.getByTestId('place-chest');
    await page.getByText('this one is moving').first().waitFor();
    await picture(page, 'sensors-around');
    await chest.getByRole('button', { name: 'Choose by tapping: chest' }).click();
    await chest.getByText('Blue').waitFor();
    await chest.getByText(/^10[345] of 104 Hz$/).waitFor();
    expect(await focused(page)).toBe('place-chest');
    await page.getByRole('button', { name: 'Wear on trail arm: Movesense 1' }).focus();
    await page.keyboard.press('Enter');
    const arm = page.getByTestId('place-trailArm');
    await arm.getByText('streaming').waitFor();
    await arm.getByText('64 %').waitFor();
    // the button is gone with its row; the keyboard goes on at the place
    expect(await focused(page)).toBe('place-trailArm');
    await picture(page, 'sensors-worn');
    expect(await seriousFindings(page)).toEqual([]);
    await page.getByRole('button', { name: 'Swap chest and arm' }).click();
    await chest.getByText('Movesense 1').waitFor();
    await page.getByRole('link', { name: 'Practice', exact: true }).click();
    await page
      .getByText(/10\d of 104 Hz/)
      .first()
      .waitFor();
    expect(service.practice.view().sensors.map((s) => s.state)).toEqual(['streaming', 'streaming']);
  });

  it('says what is missing and what to do where there is no adapter, in the language of the page', async () => {
    const page = await open(null, 'phone', 'de');
    await page.getByText('Es wurde kein Bluetooth-Adapter gefunden.').waitFor();
    const { message, mend } = radioProblem('no-adapter');
    const said = await page.getByRole('alert').innerText();
    for (const { say, run } of mend) {
      expect(said).toContain(de.said.refusal(say));
      if (run !== null) expect(said).toContain(run);
    }
    for (const english of [message, ...mend.map(({ say }) => say)])
      expect(await page.locator('main').innerText()).not.toContain(english);
    await picture(page, 'sensors-problem');
    expect(await seriousFindings(page)).toEqual([]);
    const wide = await page.evaluate(
      'document.documentElement.scrollWidth > document.documentElement.clientWidth',
    );
    expect(wide).toBe(false);
  });
});

const WORN: DeskSensor = {
  ...WELL,
  id: 'c00000000001',
  measuredRateHz: 104,
  lostPct: 0,
  lastPacketAgeMs: 20,
  clockResidualMs: 0.3,
  trace: [0, 90, 10, null],
};
const SILENT = { lostPct: null, clockResidualMs: null, rssiDbm: null, trace: [null, null] };
const CHANGES: readonly Partial<DeskSensor>[] = [
  { lostPct: 3.2, batteryPct: 7, rssiDbm: -93, clockResidualMs: 11.4 },
  { state: 'lost', reason: LINK_TEXTS.silent, ...SILENT },
  { state: 'retrying', reason: LINK_TEXTS['connect-timeout'], retryInMs: 8000, ...SILENT },
  { state: 'searching', reason: LINK_TEXTS['not-seen'], lastPacketAgeMs: 63_000, ...SILENT },
];

describe('the sensors page, whatever a sensor does', () => {
  it('says it on a laptop and on a phone without a code, and nothing moves', async () => {
    const desk = { view: NOBODY_AROUND, obey: () => null };
    const service = await startService(simulated(''), { desk });
    /** Where what stands below begins, in each typeface, px. */
    const show = async (
      page: Page,
      sensor: DeskSensor,
      shaken: string | null,
    ): Promise<Record<string, number>> => {
      desk.view = { ...NOBODY_AROUND, shaken, sensors: [sensor] };
      await page.getByTestId('place-chest').getByText(sensor.name).waitFor();
      expect(await page.locator('main').innerText()).not.toMatch(/NaN|null|undefined|\{/);
      expect(await findings(page)).toEqual([]);
      const below: Record<string, number> = {};
      for (const typeface of TYPEFACES) {
        await setTypeface(page, typeface);
        below[typeface.name] = (await page.locator('#around').boundingBox())?.y ?? 0;
      }
      return below;
    };
    for (const [size, lang] of [
      ['laptop', 'en'],
      ['phone', 'de'],
    ] as const) {
      const url = `${service.url}?lang=${lang}#/sensors`;
      const { page, context } = await openPage(browser, url, { viewport: SIZES[size] });
      await installTypefaces(page);
      const y = await show(page, WORN, null);
      for (const [i, change] of CHANGES.entries()) {
        const moved = { ...WORN, ...change, name: `Blue ${i}` };
        const shaken = moved.state === 'streaming' ? WORN.id : null;
        expect(await show(page, moved, shaken), `${size}: ${JSON.stringify(change)}`).toEqual(y);
      }
      await context.close();
    }
    await service.end();
  });
});

/** A guided practice with sensors on the wrong way round. Time is passed by hand: nobody waits for a bow. */
function swappedPractice() {
  const clock = handTimers();
  const worn = { prompted: true, calibrationFault: 'swapped', timers: clock.timers } as const;
  const source = new SyntheticSource({ seed: 5, hand: 'right', ...worn });
  const practice = livePractice({
    practiceId: 'swapped',
    source: Object.assign(source, { kind: 'ble' }),
    chain: analysis,
    settings: { hand: 'right', plan: DEFAULT_PLAN, emitFrames: true },
    now: clock.now,
    guided: true,
  });
  const answers = { clubConfirmed: true, historyConfirmed: true, warmedUp: true, redFlag: false };
  const calibrate = (): void => {
    practice.obey({ type: 'safety', answers: { ...answers, pain: 0, signs: [] } });
    practice.obey({ type: 'next' });
    clock.pass(3000);
    practice.obey({ type: 'next' });
    for (let s = 0; s < 90 && practice.view().guide?.status !== 'swapped'; s++) clock.pass(1000);
  };
  return { practice, calibrate };
}

describe('sensors strapped on the wrong way round', () => {
  it('are noticed in the calibration and swapped with one press, which begins it anew', async () => {
    const { practice, calibrate } = swappedPractice();
    const asked: DeskCommand[] = [];
    const obey = (command: DeskCommand): null => (asked.push(command), null);
    const running = await startHost(practiceHost({ first: practice }), {
      desk: { view: NOBODY_AROUND, obey },
    });
    calibrate();
    const { page, context } = await openPage(browser, `${running.url}#/ready`);
    await page.getByText('two sensors seem to be swapped').first().waitFor();
    expect(await seriousFindings(page)).toEqual([]);
    await page.getByRole('button', { name: 'Swap chest and arm' }).click();
    await page.getByRole('heading', { name: 'Stand still' }).waitFor();
    expect(asked).toEqual([{ type: 'swap' }]);
    expect(practice.view().guide).toMatchObject({ step: 'stand', status: 'asked' });
    await context.close();
    await running.end();
  });
});
