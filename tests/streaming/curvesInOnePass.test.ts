import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import { analyseSession } from '../../src/sessions/analyseSession.ts';
import { type RecordedSession, openSession } from '../../src/sessions/openSession.ts';
import { analyseWithCurves } from '../../src/streaming/curvesInOnePass.ts';
import { curvesIn } from '../../src/streaming/reviewing.ts';
import { writeSimulated } from '../sessions/simulated.ts';

const folder = mkdtempSync(join(tmpdir(), 'stillcatch-curves-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

type Labels = Parameters<typeof analyseWithCurves>[2];

/** Result first, then the curves of its repetitions: the recording runs through the analysis twice. */
async function inTwoPasses(session: RecordedSession, labels: Labels = []) {
  const analysis = await analyseSession(session, DEFAULT_PLAN, { labels });
  return { analysis, curves: await curvesIn(session, DEFAULT_PLAN, analysis) };
}

async function bothWays(path: string, labels: Labels = []) {
  const session = await openSession(path);
  try {
    const { analysis, curves } = await analyseWithCurves(session, DEFAULT_PLAN, labels);
    const once = { analysis, curves: [...curves] };
    return { once, twice: await inTwoPasses(session, labels) };
  } finally {
    await session.close();
  }
}

const shipped = (name: string): string =>
  fileURLToPath(new URL(`../../recordings/${name}.zip`, import.meta.url));

describe('result and curves from one pass', () => {
  it.each(['right-mixed', 'left-mixed', 'loss-skew-gap'])(
    'are those of two passes, bit for bit: %s',
    async (name) => {
      const { once, twice } = await bothWays(shipped(name));
      expect(once.curves.length).toBeGreaterThan(3);
      expect(once.curves.every((c) => c.timeS.length > 50 && c.address !== null)).toBe(true);
      expect(JSON.stringify(once)).toBe(JSON.stringify(twice));
    },
  );

  it('also where the coach, or the student while practising, said that a repetition was another', async () => {
    const path = join(folder, 'said');
    await writeSimulated(path, { seed: 45, script: 'p r r b r:short-hold r' });
    const first = await bothWays(path);
    const tops = first.twice.analysis.repetitions.map((r) => r.topS);
    const labels = [
      { topS: tops[0]!, kind: 'ball' },
      { topS: tops[1]!, kind: 'ball' },
      { topS: tops[3]!, kind: 'rehearsal' },
      { topS: tops[5]!, kind: 'ignored' },
    ] as const;
    const { once, twice } = await bothWays(path, labels);
    expect(once.curves.map((c) => c.kind)).toEqual([
      'ball',
      'ball',
      'rehearsal',
      'rehearsal',
      'rehearsal',
      'rehearsal',
    ]);
    expect(JSON.stringify(once)).toBe(JSON.stringify(twice));
  });
});
