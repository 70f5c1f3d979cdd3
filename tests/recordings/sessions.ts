import { simulateSession } from '../../src/sensors/sources/synthetic/index.ts';
import type { SimulationOptions } from '../../src/sensors/sources/synthetic/options.ts';

/** One shipped recording: a simulated session and what it shows. */
export interface Shipped {
  readonly name: string;
  readonly subject: string;
  readonly about: string;
  readonly options: SimulationOptions;
}

const MIXED =
  'r r b:0.6 r:short-hold r b:0.8 r:arms-first r:losing-lean r b:0.5 r:losing-rotation r:missed-catch r r b:0.7';
const LEFT = 'r r:losing-rotation b:0.9 r r p b:0.4 r:short-hold r:losing-lean r b:0.7 r:arms-first r';
const LOSSY = 'r r b:0.6 r r:short-hold r b:0.8 r r:arms-first r idle:8 r';
const NOTHING = 'walk tee waggle abort p idle:10 tee p abort walk waggle abort takeoff';

/** Losses of up to four samples, clocks far apart, a gap in one hold and a long one while standing about. */
function lossy(): SimulationOptions {
  const plain: SimulationOptions = {
    seed: 303,
    script: LOSSY,
    rateHz: 104,
    skewPpm: { chest: 310, trailArm: -240 },
  };
  // What the radio loses does not change the movement, so its times can be looked up first.
  const { truth } = simulateSession({ ...plain, rateHz: 1 });
  const held = truth.repetitions[3];
  const idle = truth.distractors[0];
  if (!held || !idle) throw new Error('the script has no fourth repetition or no idle');
  const loss = { lostShare: 0.03, longestRun: 2 };
  const inHold = { fromS: held.topS + 0.45, toS: held.topS + 0.75 };
  const standing = { fromS: idle.startS + 2.5, toS: idle.startS + 5 };
  return {
    ...plain,
    radio: {
      chest: { ...loss, gaps: [standing] },
      trailArm: { ...loss, gaps: [inHold, standing] },
    },
  };
}

export const SHIPPED: readonly Shipped[] = [
  {
    name: 'right-mixed',
    subject: 'SimRight',
    about: 'Right-handed: good rehearsals, each fault once, balls with known carry-over.',
    options: { seed: 101, script: MIXED },
  },
  {
    name: 'left-mixed',
    subject: 'SimLeft',
    about: 'Left-handed, 104 Hz: good and faulty rehearsals, balls, one practice swing.',
    options: { seed: 202, script: LEFT, hand: 'left', rateHz: 104 },
  },
  {
    name: 'loss-skew-gap',
    subject: 'SimLossy',
    about:
      'Right-handed, 104 Hz: 3 % of packets lost in short runs, device clocks 550 ppm apart, a gap inside one hold and one of 2.5 s while standing about.',
    options: lossy(),
  },
  {
    name: 'distractors',
    subject: 'SimNothing',
    about:
      'Right-handed: walking, bending to tee a ball, waggles, backswings that are lowered again, practice swings, taking the sensors off. No rehearsal, no ball.',
    options: { seed: 404, script: NOTHING },
  },
];
