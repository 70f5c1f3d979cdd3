// A practice in a process of its own, to be killed: real time, two sensors at 100 Hz, each row's time told on
// standard output once the writer has it. Started by the crash test with the data folder.
import { writeSync } from 'node:fs';
import { DEFAULT_PLAN } from '../../../src/coaching/plan.ts';
import { openStore } from '../../../src/sessions/store/store.ts';

const [, , folder = ''] = process.argv;
const store = await openStore(folder);
writeSync(1, 'open\n');
const { writer } = await store.begin({
  subject: 'me',
  hand: 'right',
  plan: DEFAULT_PLAN,
  startedAt: new Date(),
});
const started = performance.now();
let written = 0;
setInterval(() => {
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
  writeSync(1, `${(written - 1) / 100}\n`);
}, 10);
