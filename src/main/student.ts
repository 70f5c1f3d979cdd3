#!/usr/bin/env node
import { randomUUID } from 'node:crypto';
import * as analysis from '../analysis/analysis.ts';
import { DEFAULT_PLAN } from '../coaching/plan.ts';
import { type LivePractice, livePractice } from '../practice/livePractice.ts';
import { SyntheticSource, type Timers } from '../sensors/sources/synthetic/index.ts';
import { listenLocally } from './listen.ts';
import {
  DEFAULT_PORT,
  STUDENT_HELP,
  SettingsError,
  type StudentSettings,
  readStudentSettings,
} from './settings.ts';
import { buildStudentApp } from './studentApp.ts';
import { warpedTimers } from './warp.ts';

const now = (): number => performance.now();

const HOST: Timers = {
  now,
  after: (delayMs, callback) => {
    const timer = setTimeout(callback, delayMs);
    return () => clearTimeout(timer);
  },
};

/** The simulated calibration lasts about this long, ms; the demo plays it so many times as fast. */
const CALIBRATION_MS = 42_000;
const CALIBRATION_FACTOR = 10;

function simulatedStudent({ seed, hand, speed }: StudentSettings): SyntheticSource {
  const timers = warpedTimers(HOST, CALIBRATION_MS / speed, CALIBRATION_FACTOR);
  return new SyntheticSource({ seed, hand, speed, endless: true, timers });
}

const practiceOf = (settings: StudentSettings): LivePractice =>
  livePractice({
    practiceId: randomUUID(),
    source: simulatedStudent(settings),
    chain: analysis,
    settings: { hand: settings.hand, plan: DEFAULT_PLAN, emitFrames: true },
    now,
  });

async function run(settings: StudentSettings): Promise<void> {
  const practice = practiceOf(settings);
  const app = await buildStudentApp({ practice, now });
  const address = await listenLocally(app, settings.port, !settings.portGiven);
  if (!settings.portGiven && address.port !== DEFAULT_PORT) {
    console.log(`Port ${DEFAULT_PORT} is taken, so this one is used instead.`);
  }
  console.log(`Stillcatch is at ${address.url}  (Ctrl+C ends it)`);
  practice.start();
  let ending = false;
  const end = (): void => {
    if (ending) process.exit(1);
    ending = true;
    void practice
      .stop()
      .then(() => app.close())
      .then(() => process.exit(0));
  };
  process.on('SIGINT', end);
  process.on('SIGTERM', end);
}

try {
  const settings = readStudentSettings(process.argv.slice(2));
  if (settings === 'help') console.log(STUDENT_HELP);
  else await run(settings);
} catch (error) {
  console.error(error instanceof Error ? error.message : String(error));
  process.exitCode = error instanceof SettingsError ? 2 : 1;
}
