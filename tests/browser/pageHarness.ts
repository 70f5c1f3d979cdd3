import { createRequire } from 'node:module';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { mkdtempSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { type Browser, type BrowserContext, type Page, chromium } from 'playwright-core';
import { build } from 'vite';
import * as analysis from '../../src/analysis/analysis.ts';
import { NOTHING_DONE } from '../../src/coaching/notCounted.ts';
import { DEFAULT_PLAN, type Plan } from '../../src/coaching/plan.ts';
import { listenAt } from '../../src/main/listen.ts';
import { buildStudentApp } from '../../src/main/studentApp.ts';
import { type PracticeHost, practiceHost } from '../../src/practice/host.ts';
import { livePractice } from '../../src/practice/livePractice.ts';
import type { SensorSource } from '../../src/sensors/sources/source.ts';
import type { CoachService } from '../../src/sending/coachLink.ts';
import type { KeptSessions } from '../../src/streaming/sessionsApi.ts';
import type { PlanService } from '../../src/streaming/planApi.ts';
import { type SecondScreen, secondScreen } from '../../src/streaming/secondScreen/service.ts';
import type { DeskService } from '../../src/streaming/desk.ts';
import { browserPath } from './chromium.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
/** Without a coach, and nothing is kept. */
const NO_PLANS: PlanService = {
  coach: () => null,
  own: () => [],
  write: () => {
    throw new Error('Nothing is kept here.');
  },
  week: async () => NOTHING_DONE,
};

const PATIENCE_MS = 180_000;

const now = (): number => performance.now();

let built: Promise<string> | null = null;

/** The page as it is in the tree, built once for a test run. */
export const builtPage = (): Promise<string> => (built ??= buildPage());

async function buildPage(): Promise<string> {
  const outDir = mkdtempSync(join(tmpdir(), 'stillcatch-page-'));
  await build({
    configFile: join(root, 'vite.config.ts'),
    logLevel: 'error',
    build: { outDir, emptyOutDir: true },
  });
  return outDir;
}

export const openBrowser = (): Promise<Browser> =>
  chromium.launch({
    executablePath: browserPath(),
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      '--autoplay-policy=no-user-gesture-required',
    ],
  });

export interface RunningHost {
  readonly url: string;
  readonly port: number;
  end(): Promise<void>;
}

export interface RunningService extends RunningHost {
  readonly practice: ReturnType<typeof livePractice>;
}

interface ServiceOptions {
  readonly port?: number;
  readonly hand?: 'left' | 'right';
  readonly plan?: Plan;
  readonly desk?: DeskService;
  readonly sessions?: KeptSessions;
  readonly plans?: PlanService;
  readonly coach?: CoachService;
  /** Where a second screen can be switched on, in place of an address of a network. */
  readonly secondScreenAt?: string;
}

async function secondScreenOf(host: PracticeHost, address: string): Promise<SecondScreen> {
  return secondScreen({
    host,
    now,
    date: Date.now,
    addresses: () => [{ address, family: 4, card: 'test' }],
    listen: (app, at) => listenAt(app, at, 0, false),
    folder: await builtPage(),
  });
}

/** Serves the page of a host on a free (or the given) port. */
export async function startHost(
  host: PracticeHost,
  { desk, port, sessions, plans, coach, secondScreenAt }: ServiceOptions = {},
): Promise<RunningHost> {
  const app = await buildStudentApp({
    host,
    now,
    dashboardFolder: await builtPage(),
    ...(desk && { desk }),
    ...(sessions && { sessions }),
    plans: plans ?? NO_PLANS,
    ...(coach && { coach }),
    ...(secondScreenAt && { secondScreen: await secondScreenOf(host, secondScreenAt) }),
  });
  await app.listen({ host: '127.0.0.1', port: port ?? 0 });
  host.current().start();
  const { port: used } = app.server.address() as AddressInfo;
  const end = async (): Promise<void> => {
    await host.stop();
    await app.close();
  };
  return { url: `http://127.0.0.1:${used}/`, port: used, end };
}

/** The real service with the real analysis and one practice. */
export async function startService(
  source: SensorSource,
  options: ServiceOptions = {},
): Promise<RunningService> {
  const practice = livePractice({
    practiceId: `${Date.now()}`,
    source,
    chain: analysis,
    settings: {
      hand: options.hand ?? 'right',
      plan: options.plan ?? DEFAULT_PLAN,
      emitFrames: true,
    },
    now,
  });
  const running = await startHost(practiceHost({ first: practice }), options);
  return { ...running, practice };
}

export const SIZES = {
  laptop: { width: 1366, height: 768 },
  phone: { width: 390, height: 844 },
} as const;

/** Opens the page and collects what it complains about. */
export async function openPage(
  browser: Browser,
  url: string,
  options: Parameters<Browser['newContext']>[0] = {},
): Promise<{ page: Page; context: BrowserContext; complaints: string[] }> {
  const context = await browser.newContext({ viewport: SIZES.laptop, ...options });
  // For a machine that has much else to do.
  context.setDefaultTimeout(PATIENCE_MS);
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') complaints.push(`${message.text()} ${message.location().url}`);
  });
  await page.goto(url);
  return { page, context, complaints };
}

interface AxeResult {
  readonly violations: readonly {
    readonly id: string;
    readonly impact: string | null;
    readonly nodes: readonly { readonly html: string; readonly failureSummary?: string }[];
  }[];
}

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core'), 'utf8');

/** Serious and critical findings of axe-core, in words. */
export async function seriousFindings(page: Page): Promise<string[]> {
  await page.evaluate(axeSource);
  const result = await page.evaluate(() =>
    (globalThis as unknown as { axe: { run(): Promise<AxeResult> } }).axe.run(),
  );
  return result.violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .flatMap(({ id, nodes }) => nodes.map((n) => `${id}: ${n.html} ${n.failureSummary ?? ''}`));
}
