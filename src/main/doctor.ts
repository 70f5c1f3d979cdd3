import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { driverOf } from '../sensors/sources/ble/drivers/drivers.ts';
import { nobleIsInstalled } from '../sensors/sources/ble/loadNoble.ts';
import { monotonicMs } from '../sensors/sources/ble/messages.ts';
import { radioProblem, stepText } from '../sensors/sources/ble/problem.ts';
import { Radio, type RadioStatus } from '../sensors/sources/ble/radio.ts';
import type { RadioProcessOptions } from '../sensors/sources/ble/radioProcess.ts';
import { hasNativeDatabase } from '../sessions/store/driver.ts';

interface DoctorCheck {
  /** What was looked at. */
  readonly title: string;
  /** `note`: nothing is wrong, but worth knowing. */
  readonly state: 'fine' | 'missing' | 'note';
  /** What was found, one sentence. */
  readonly found: string;
  /** What to do about it; empty where nothing is to be done. */
  readonly mend: readonly string[];
}

export interface DoctorReport {
  readonly checks: readonly DoctorCheck[];
  /** Nothing is missing. */
  readonly ok: boolean;
}

export interface DoctorOptions {
  readonly radio?: RadioProcessOptions;
  /** How long to look for sensors, ms. */
  readonly searchMs?: number;
  /** Where the system says what hardware it has (Linux). */
  readonly sysfs?: string;
  readonly platform?: NodeJS.Platform;
}

const NODE_NEEDED = 20;
const ANSWER_MS = 8000;
const SEARCH_MS = 4000;
const PAGE = fileURLToPath(new URL('../../dist/dashboard/index.html', import.meta.url));

function nodeCheck(): DoctorCheck {
  const major = Number.parseInt(process.versions.node, 10);
  return {
    title: 'Node.js',
    state: major >= NODE_NEEDED ? 'fine' : 'missing',
    found: `Version ${process.versions.node} on ${process.platform} ${process.arch}.`,
    mend: major >= NODE_NEEDED ? [] : [`Install Node.js ${NODE_NEEDED} or later.`],
  };
}

function pageCheck(): DoctorCheck {
  const built = existsSync(PAGE);
  return {
    title: 'Page',
    state: built ? 'fine' : 'missing',
    found: built ? 'Built.' : 'The page has not been built.',
    mend: built ? [] : ['Build it with: npm run build'],
  };
}

function databaseCheck(): DoctorCheck {
  const there = hasNativeDatabase();
  return {
    title: 'Database part',
    state: there ? 'fine' : 'note',
    found: there
      ? 'Installed.'
      : 'Its fast part is not installed. The plain part is used, which is slower.',
    mend: there ? [] : ['Install it with: npm install --include=optional'],
  };
}

function partCheck(platform: NodeJS.Platform): DoctorCheck {
  const there = nobleIsInstalled();
  const problem = radioProblem('noble-missing', '', platform);
  return {
    title: 'Bluetooth part',
    state: there ? 'fine' : 'missing',
    found: there ? 'Installed.' : problem.message,
    mend: there ? [] : problem.mend.map(stepText),
  };
}

function textOf(file: string): string {
  try {
    return readFileSync(file, 'utf8').trim();
  } catch {
    return '';
  }
}

const namesIn = (folder: string): string[] => (existsSync(folder) ? readdirSync(folder) : []);

/** Switches that the system or the case of the computer has put on the radio. */
function blocks(sysfs: string): string[] {
  const folder = join(sysfs, 'class/rfkill');
  return namesIn(folder)
    .map((name) => join(folder, name))
    .filter((f) => textOf(join(f, 'type')) === 'bluetooth')
    .flatMap((f) => [
      ...(textOf(join(f, 'soft')) === '1' ? ['blocked by software'] : []),
      ...(textOf(join(f, 'hard')) === '1' ? ['blocked by a hardware switch'] : []),
    ]);
}

function hardwareCheck(sysfs: string): DoctorCheck {
  const adapters = namesIn(join(sysfs, 'class/bluetooth')).filter((n) => /^hci\d+$/.test(n));
  const blocked = blocks(sysfs);
  const title = 'Bluetooth hardware';
  if (adapters.length === 0) {
    const { message, mend } = radioProblem('no-adapter', '', 'linux');
    return { title, state: 'missing', found: message, mend: mend.map(stepText) };
  }
  if (blocked.length === 0)
    return { title, state: 'fine', found: `Found: ${adapters.join(', ')}.`, mend: [] };
  const { mend } = radioProblem('adapter-off', '', 'linux');
  return {
    title,
    state: 'missing',
    found: `${adapters.join(', ')}: ${blocked.join(', ')}.`,
    mend: mend.map(stepText),
  };
}

/** Waits for the radio's status to be so, or for the time to be over. */
function waitFor(
  radio: Radio,
  ms: number,
  done: (status: RadioStatus) => boolean,
): Promise<RadioStatus> {
  return new Promise((resolve) => {
    const settle = (): void => {
      clearTimeout(timer);
      unlisten();
      resolve(radio.status);
    };
    const timer = setTimeout(settle, ms);
    const unlisten = radio.listen({ changed: (status) => done(status) && settle() });
  });
}

function adapterCheck(status: RadioStatus, platform: NodeJS.Platform): DoctorCheck {
  const title = 'Bluetooth adapter';
  if (status.ready) return { title, state: 'fine', found: 'It answers.', mend: [] };
  const problem = status.problem ?? radioProblem('no-answer', '', platform);
  const detail = problem.detail ? ` (${problem.detail.split('\n')[0]})` : '';
  return {
    title,
    state: 'missing',
    found: `${problem.message}${detail}`,
    mend: problem.mend.map(stepText),
  };
}

function sensorsCheck(status: RadioStatus): DoctorCheck {
  const title = 'Sensors around';
  if (status.seen.length === 0)
    return {
      title,
      state: 'note',
      found: 'No sensor that Stillcatch knows was seen.',
      mend: ['Switch the sensors on, bring them within a few metres, and look again.'],
    };
  const list = status.seen
    .map((s) => `${s.name} (${driverOf(s.driver).label}, ${s.rssiDbm} dBm)`)
    .join('; ');
  return { title, state: 'fine', found: `${list}.`, mend: [] };
}

async function radioChecks(options: DoctorOptions): Promise<DoctorCheck[]> {
  const platform = options.platform ?? process.platform;
  const radio = new Radio(monotonicMs, options.radio);
  try {
    radio.browse(true);
    const status = await waitFor(radio, ANSWER_MS, (s) => s.ready || s.problem !== null);
    const adapter = adapterCheck(status, platform);
    if (!status.ready) return [adapter];
    const later = await waitFor(radio, options.searchMs ?? SEARCH_MS, () => false);
    return [adapter, sensorsCheck(later)];
  } finally {
    await radio.stop();
  }
}

/** Looks at everything that live practice needs on this computer. */
export async function runDoctor(options: DoctorOptions = {}): Promise<DoctorReport> {
  const platform = options.platform ?? process.platform;
  const part = partCheck(platform);
  const checks = [nodeCheck(), pageCheck(), databaseCheck(), part];
  if (platform === 'linux') checks.push(hardwareCheck(options.sysfs ?? '/sys'));
  if (part.state !== 'missing') checks.push(...(await radioChecks(options)));
  return { checks, ok: checks.every((c) => c.state !== 'missing') };
}

const MARK: Record<DoctorCheck['state'], string> = {
  fine: 'ok     ',
  missing: 'MISSING',
  note: 'note   ',
};

const SUMMARY = {
  fine: 'All is there for live sensors.',
  missing:
    'Practice with demo sensors, recordings and all of the analysis work without Bluetooth; live sensors need what is marked.',
};

/** The report for a terminal, a word beside every state. */
export function formatDoctor(report: DoctorReport): string {
  const lines = report.checks.flatMap((c) => [
    `${MARK[c.state]}  ${c.title}: ${c.found}`,
    ...c.mend.map((step) => `           - ${step}`),
  ]);
  return [...lines, '', report.ok ? SUMMARY.fine : SUMMARY.missing, ''].join('\n');
}
