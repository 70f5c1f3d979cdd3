/**
 * How often a double tap on the chest sensor would pause a practice that nobody wanted to pause, and how many double
 * taps are found: `npm run report:taps [practices]`. All simulated: practices of five minutes with balls, faults, practice
 * swings, walking about, teeing up, waggles and standing about; no coughs, claps or clothes, which a real chest has too.
 */
import * as analysis from '../../src/analysis/analysis.ts';
import type { Phase } from '../../src/analysis/contract.ts';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import { TAP_PHASES } from '../../src/practice/handsFree.ts';
import {
  type SimulatedSession,
  simulateSession,
} from '../../src/sensors/sources/synthetic/index.ts';
import { type DoubleTap, createDoubleTap, stepDoubleTap } from '../../src/swings/doubleTap.ts';

const practices = Number(process.argv[2] ?? 24);
const PRACTICE =
  'r r b walk r:short-hold r b:0.5 tee waggle idle:20 r:arms-first r b p walk abort r:losing-lean tee b r:missed-catch waggle r p b walk idle:30 walk';
const TAPPED = 'r taps idle:5 r taps walk taps waggle taps b taps tee taps idle:8 taps';
/** Sway and tremor of a calm adult, and of a restless one. */
const UNREST = [1, 3];

const samplesOf = ({ packets }: SimulatedSession) => packets.flatMap(({ samples }) => samples);

function tapsIn(session: SimulatedSession): DoubleTap[] {
  const taps = createDoubleTap();
  return samplesOf(session).flatMap((sample) => stepDoubleTap(taps, sample) ?? []);
}

/** Those told while the golfer does not swing. */
function tapsHeard(session: SimulatedSession): DoubleTap[] {
  const state = analysis.start({ hand: 'right', plan: DEFAULT_PLAN });
  const taps = createDoubleTap();
  let phase: Phase = 'calibrating';
  for (const event of session.events)
    analysis.step(state, { kind: 'event', event }, () => undefined);
  return samplesOf(session).flatMap((sample) => {
    analysis.step(state, { kind: 'sample', sample }, (o) => {
      if (o.kind === 'phase') phase = o.phase;
    });
    const tap = stepDoubleTap(taps, sample);
    return tap !== null && TAP_PHASES.includes(phase) ? [tap] : [];
  });
}

let [hours, fired] = [0, 0];
for (let i = 0; i < practices; i++) {
  const unrest = UNREST[i % UNREST.length] ?? 1;
  const session = simulateSession({ seed: i + 1, unrest, script: PRACTICE });
  hours += session.durationS / 3600;
  fired += tapsIn(session).length;
}
// Nothing seen in a time: fewer than 3 in that time with 95 % confidence (Hanley & Lippman-Hand 1983, JAMA 249:1743).
const atMost = fired === 0 ? `; under ${(3 / hours).toFixed(2)} an hour with 95 % confidence` : '';
console.log(`${hours.toFixed(1)} h of ${practices} simulated practices without a double tap`);
console.log(`  false firings: ${fired}, ${(fired / hours).toFixed(2)} an hour${atMost}`);
console.log('  (of the detector alone; a practice hears it only where nobody swings)');

let [hits, tapped, elsewhere] = [0, 0, 0];
for (let seed = 1; seed <= Math.min(practices, 40); seed++) {
  const session = simulateSession({ seed, script: TAPPED, unrest: UNREST[seed % 2] ?? 1 });
  const wanted = session.truth.distractors.filter(({ kind }) => kind === 'taps');
  const heard = tapsHeard(session).map(
    (tap) => wanted.find((w) => tap.firstS >= w.startS && tap.secondS <= w.endS) ?? null,
  );
  tapped += wanted.length;
  hits += new Set(heard.filter((w) => w !== null)).size;
  elsewhere += heard.filter((w) => w === null).length;
}
const share = ((100 * hits) / tapped).toFixed(0);
console.log(
  `${tapped} simulated double taps: ${hits} found (${share} %), ${elsewhere} told elsewhere`,
);
