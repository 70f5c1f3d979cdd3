// A practice in a process of its own, to be killed: real time, two sensors at 100 Hz, each row's time told on
// standard output once the writer has it, with the longest time, s, that the machine let this process stand.
// Started by the crash test with the data folder.
import { writeSync } from 'node:fs';
import { DEFAULT_PLAN } from '../../../src/coaching/plan.ts';
import { openStore } from '../../../src/sessions/store/store.ts';

const [, , folder = ''] = process.argv;
const store = await openStore(folder);
/** What the other end is too slow to take is not told: the next row says more. */
const tell = (line: string): void => {
  try {
    writeSync(1, `${line}\n`);
  } catch (error) {
    if (!(error instanceof Error && 'code' in error && error.code === 'EAGAIN')) throw error;
  }
};

tell('open');
const { writer } = await store.begin({
  subject: 'me',
  hand: 'right',
  plan: DEFAULT_PLAN,
  startedAt: new Date(),
});
const started = performance.now();
let written = 0;
let tickMs = started;
let longestMs = 0;
setInterval(() => {
  longestMs = Math.max(longestMs, performance.now() - tickMs);
  tickMs = performance.now();
  for (; written / 100 <= (performance.now() - started) / 1000; written++)
    for (const sensor of ['chest', 'trailArm'] as const)
      writer.sample({
        sensor,
        timeS: written / 100,
        acc: { x: 0.01, y: 0, z: 9.81 },
        gyro: { x: 0.001, y: 0, z: 0 },
        deviceTimeS: written / 100,
        arrivalTimeS: null,
        saturated: false,
      });
  tell(`${(written - 1) / 100} ${longestMs / 1000}`);
}, 10);
