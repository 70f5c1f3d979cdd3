import type { DeviceClock } from '../../src/sensors/clock/clock.ts';
import { betweenSensors, type MethodName } from '../sensors/clock/linkErrors.ts';

const LINKS: {
  name: string;
  rateHz: number;
  intervalMs: number;
  ppm: number;
  kind: DeviceClock;
  asked?: boolean;
}[] = [
  { name: '104 Hz at 15 ms', rateHz: 104, intervalMs: 15, ppm: 40, kind: 'stamped' },
  { name: '104 Hz at 30 ms', rateHz: 104, intervalMs: 30, ppm: 40, kind: 'stamped' },
  { name: '100 Hz at 11.25 ms', rateHz: 100, intervalMs: 11.25, ppm: 40, kind: 'stamped' },
  { name: '100 Hz at 15 ms', rateHz: 100, intervalMs: 15, ppm: 40, kind: 'stamped' },
  { name: '100 Hz at 30 ms', rateHz: 100, intervalMs: 30, ppm: 40, kind: 'stamped' },
  {
    name: '104 Hz at 15 ms, asked',
    rateHz: 104,
    intervalMs: 15,
    ppm: 40,
    kind: 'stamped',
    asked: true,
  },
  {
    name: '104 Hz at 30 ms, asked',
    rateHz: 104,
    intervalMs: 30,
    ppm: 40,
    kind: 'stamped',
    asked: true,
  },
  {
    name: '100 Hz at 15 ms, asked',
    rateHz: 100,
    intervalMs: 15,
    ppm: 40,
    kind: 'stamped',
    asked: true,
  },
  {
    name: '100 Hz at 30 ms, asked',
    rateHz: 100,
    intervalMs: 30,
    ppm: 40,
    kind: 'stamped',
    asked: true,
  },
  { name: '100 Hz at 15 ms, 7000 ppm', rateHz: 100, intervalMs: 15, ppm: 7000, kind: 'counted' },
];
const METHOD_NAMES: MethodName[] = ['naive', 'leastSquares', 'live', 'final'];
const SECONDS = 300;
const SEEDS = 12;

console.log(
  `Simulated links, 10 % failed connection events, ${SECONDS} s, ${SEEDS} pairs of sensors.`,
);
console.log('Time error between two sensors after 10 s, median / 95th percentile, ms\n');
console.log(`| link | ${METHOD_NAMES.join(' | ')} |\n| --- | --- | --- | --- | --- |`);
for (const { name, kind, ...link } of LINKS) {
  const cells = METHOD_NAMES.map((method) => {
    const { medianMs, p95Ms } = betweenSensors(method, { ...link, seconds: SECONDS }, SEEDS, kind);
    return `${medianMs.toFixed(2)} / ${p95Ms.toFixed(2)}`;
  });
  console.log(`| ${name} | ${cells.join(' | ')} |`);
}
