// Real time: two virtual sensors at 104 Hz through noble, the radio's process and the source. Argument: seconds.
import { readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { ImuSample } from '../../src/sensors/sample.ts';
import { BleSource } from '../../src/sensors/sources/ble/bleSource.ts';
import { monotonicMs } from '../../src/sensors/sources/ble/messages.ts';
import { Radio } from '../../src/sensors/sources/ble/radio.ts';
import { inRoom } from '../virtual-radio/room.ts';

const SECONDS = Number(process.argv[2] ?? 600);
const addresses = ['c0:00:00:00:00:01', 'c0:00:00:00:00:02'];
const ROLES = ['chest', 'trailArm'] as const;

// A machine that is busy with something else stops the virtual sensors' radio too; they hold what they measured
// meanwhile, so that a loss counted here is one above the link.
const sensors = addresses.map((address, i) => ({
  kind: 'openProfile' as const,
  address,
  buffer: 3000,
  ppm: 40 - 70 * i,
}));
const radio = new Radio(
  monotonicMs,
  inRoom({ sensors, loss: 0.1 }, join(tmpdir(), `stillcatch-bench-${process.pid}`)),
);
const source = new BleSource(
  radio,
  addresses.map((address, i) => ({
    role: ROLES[i] ?? 'chest',
    sensor: { id: address.replaceAll(':', ''), driver: 'openProfile', name: address },
  })),
  monotonicMs,
);

/** CPU s of a process and its memory, MB (Linux). */
function usage(pid: number): { cpuS: number; memoryMb: number } {
  const stat = readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ')[1]?.split(' ') ?? [];
  const pages = Number(readFileSync(`/proc/${pid}/statm`, 'utf8').split(' ')[1]);
  return { cpuS: (Number(stat[11]) + Number(stat[12])) / 100, memoryMb: (pages * 4096) / 1e6 };
}

let samples = 0;
source.start({
  samples: (batch: readonly ImuSample[]) => (samples += batch.length),
  event: () => undefined,
  link: () => undefined,
  end: () => undefined,
});
const pause = (s: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, s * 1000));
await pause(5);
const pids = { service: process.pid, 'radio process (with the virtual radio)': radio.pid ?? 0 };
const at = () => Object.values(pids).map(usage);
const before = at();
const begun = performance.now();
const every = Math.max(1, SECONDS / 10);
for (let s = 0; s < SECONDS; s += every) {
  await pause(every);
  const memory = at().map((u) => u.memoryMb.toFixed(0));
  console.log(`${Math.round(s + every)} s: ${samples} samples, memory ${memory.join(' / ')} MB`);
}
const seconds = (performance.now() - begun) / 1000;
at().forEach((now, i) => {
  const was = before[i] ?? now;
  const share = (100 * (now.cpuS - was.cpuS)) / seconds;
  console.log(
    `${Object.keys(pids)[i]}: ${share.toFixed(1)} % of a core, memory ${was.memoryMb.toFixed(0)} -> ${now.memoryMb.toFixed(0)} MB`,
  );
});
for (const [role, h] of Object.entries(source.health()))
  console.log(
    `${role}: ${h.measuredRateHz?.toFixed(1)} Hz of ${h.nominalRateHz}, lost ${h.lostPct.toFixed(3)} %, malformed ${h.malformed}, clock residual ${h.clockResidualMs?.toFixed(2)} ms`,
  );
await source.stop();
await radio.stop();
