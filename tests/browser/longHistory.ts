import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { DEFAULT_PLAN, type Plan } from '../../src/coaching/plan.ts';
import { type Random, gaussian, seededRandom } from '../../src/math/random.ts';
import { openDatabase } from '../../src/sessions/store/driver.ts';
import type { Spread } from '../../src/coaching/pools.ts';
import type { MeasureSpreads } from '../../src/sessions/store/spreads.ts';
import type { SessionStore } from '../../src/sessions/store/store.ts';
import type { IndexTables } from '../../src/sessions/store/tables.ts';

const DAY_MS = 86_400_000;

type Spreads = MeasureSpreads['rehearsals'];

/** The same session, a little better or worse. */
function shifted(spreads: Spreads, random: Random): Spreads {
  const moved = Object.entries(spreads).map(([measure, spread]: [string, Spread]) => {
    const by = gaussian(random) * (spread.high - spread.low);
    const { count, low, median, high } = spread;
    return [measure, { count, low: low + by, median: median + by, high: high + by }];
  });
  return Object.fromEntries(moved) as Spreads;
}

const laterPlan: Plan = {
  ...DEFAULT_PLAN,
  name: 'More bend',
  targets: { ...DEFAULT_PLAN.targets, addedFlexionDeg: { min: 4 }, holdS: { min: 1.2, max: 2 } },
};

/**
 * Fills the index with sessions every other day back from the one session that the store holds: its figures,
 * jittered. For tests and benches of lists and courses; the recordings of these sessions do not exist.
 */
export async function addHistory(
  store: SessionStore,
  sessions: number,
  lastMs: number,
): Promise<void> {
  const db = openDatabase<IndexTables>(store.places.index);
  const random = seededRandom(5);
  const model = await db.selectFrom('session').selectAll().executeTakeFirstOrThrow();
  const spreads = JSON.parse(model.spreads) as MeasureSpreads;
  await db.transaction().execute(async (transaction) => {
    for (let n = 1; n <= sessions; n++) {
      const id = `h${String(n).padStart(4, '0')}`;
      await mkdir(join(store.places.sessions, id), { recursive: true });
      await transaction
        .insertInto('session')
        .values({
          ...model,
          id,
          simulated: 0,
          startedMs: lastMs - 2 * n * DAY_MS,
          painBefore: n % 9 === 0 ? 3 : 0,
          painAfter: n % 9 === 0 ? 2 : 0,
          passed: Math.round(model.scored * random()),
          plan: JSON.stringify(n > sessions / 2 ? DEFAULT_PLAN : laterPlan),
          spreads: JSON.stringify({
            ...spreads,
            rehearsals: shifted(spreads.rehearsals, random),
            balls: shifted(spreads.balls, random),
          }),
        })
        .execute();
      if (n % 20 === 0)
        await transaction
          .insertInto('warning')
          .values({
            sessionId: id,
            position: 0,
            warningId: 'volume',
            atS: 60,
            text: 'More than usual.',
          })
          .execute();
    }
  });
  await db.destroy();
}
