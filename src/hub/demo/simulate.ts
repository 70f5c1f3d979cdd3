import { createHash } from 'node:crypto';
import { mkdir, readFile, rm } from 'node:fs/promises';
import type { AnalysisInput } from '../../analysis/contract.ts';
import type { Plan } from '../../coaching/plan.ts';
import { seededRandom } from '../../math/random.ts';
import { createGolfer } from '../../sensors/sources/synthetic/golfer.ts';
import { createScene } from '../../sensors/sources/synthetic/scene.ts';
import { parseScript } from '../../sensors/sources/synthetic/script.ts';
import { streamScene } from '../../sensors/sources/synthetic/simulation.ts';
import { writePlan } from '../../sessions/derivatives.ts';
import { type PracticeNotes, writeNotes } from '../../sessions/practiceNotes.ts';
import { writeSession } from '../../sessions/write/sessionWriter.ts';
import { zipSession } from '../../sessions/write/zipSession.ts';
import { analyse } from '../analysis/analyse.ts';
import type { JobAnswer } from '../analysis/jobMessages.ts';
import type { SessionPaths } from '../sessionPaths.ts';

export interface DemoOrder {
  readonly sessionId: string;
  readonly paths: SessionPaths;
  /** The same for all sessions of one student: the same body. */
  readonly golferSeed: number;
  readonly seed: number;
  readonly hand: 'left' | 'right';
  readonly script: string;
  /** deg; the golfer's own where left out. */
  readonly keptRotationDeg?: number;
  readonly startedAt: string;
  readonly plan: Plan;
  readonly notes: PracticeNotes;
}

export interface DemoAnswer {
  readonly sessionId: string;
  readonly sha256: string;
  readonly bytes: number;
  readonly answer: JobAnswer;
}

/** Half the usual rate keeps the recordings small and the club quickly filled. */
const RATE_HZ = 50;
export const DEMO_SESSION_NAME = 'Simulated practice (demo)';

/** Simulates one practice, keeps its recording as though it had been sent, and analyses it as the hub does. */
export async function simulateDemo(order: DemoOrder): Promise<DemoAnswer> {
  const { sessionId, paths, plan, notes } = order;
  const folder = `${paths.zip}.making`;
  await mkdir(paths.folder, { recursive: true, mode: 0o700 });
  await rm(folder, { recursive: true, force: true });
  try {
    const track = { samplingHz: RATE_HZ, device: 'simulated sensor' };
    const header = {
      subject: 'demo',
      session: '1',
      hand: order.hand,
      startedAt: order.startedAt,
      name: DEMO_SESSION_NAME,
      simulated: true,
      tracks: { chest: track, trailArm: track },
    };
    await writeSession(folder, header, inputs(order));
    await writePlan(folder, plan);
    await writeNotes(folder, notes);
    await zipSession(folder, paths.zip);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
  const zip = await readFile(paths.zip);
  const answer = await analyse({ sessionId, paths, plan, labels: [] });
  const sha256 = createHash('sha256').update(zip).digest('hex');
  return { sessionId, sha256, bytes: zip.length, answer };
}

function* inputs(order: DemoOrder): Generator<AnalysisInput[]> {
  const { seed, hand, script, notes } = order;
  const own = createGolfer(seededRandom(order.golferSeed));
  const { keptRotationDeg = own.keptRotationDeg } = order;
  const scene = { ...createScene(seed), golfer: { ...own, keptRotationDeg } };
  const options = { seed, hand, rateHz: RATE_HZ, calibrationRepetitions: 3 };
  const pain = (value: number | null, onsetS: number): AnalysisInput[] =>
    value === null ? [] : [{ kind: 'event', event: { type: 'pain', onsetS, durationS: 0, value } }];
  let lastS = 0;
  yield pain(notes.painBefore, 0.1);
  for (const item of streamScene(scene, options, parseScript(script))) {
    lastS = item.timeS;
    if (item.kind === 'event') yield [{ kind: 'event', event: item.event }];
    else if (item.kind === 'packet')
      yield item.packet.samples.map((sample) => ({ kind: 'sample', sample }));
  }
  yield pain(notes.painAfter, lastS - 0.5);
}
