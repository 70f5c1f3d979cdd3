/**
 * Server time of the hub's pages with 200 students and 20 000 sessions in a real SQLite file: `npm run bench:hub`.
 * The rows are bench rows: made up here with sizes as real ones have, their recordings are not there.
 */
import { mkdir, stat, writeFile } from 'node:fs/promises';
import { dirname } from 'node:path';
import { TARGET_MEASURES } from '../../src/coaching/plan.ts';
import { sessionPaths } from '../../src/hub/sessionPaths.ts';
import { percentile } from '../../src/math/stats.ts';
import { seededRandom } from '../../src/math/random.ts';
import { benchSessionPage } from './hubPage.ts';
import { sessionRow } from '../hub/coach/rows.ts';
import { type TestHub, testHub } from '../hub/testHub.ts';

const STUDENTS = 200;
const SESSIONS = 100;
const DAY_MS = 86_400_000;
const random = seededRandom(1);

const spreads = (): Record<string, object> =>
  Object.fromEntries(
    TARGET_MEASURES.map((m) => [m, { count: 40, low: random(), median: random(), high: random() }]),
  );

async function fill(hub: TestHub): Promise<void> {
  const { db } = hub.context;
  for (let i = 0; i < STUDENTS; i++) {
    const studentId = `bench${i}`;
    const person = { role: 'student', login: null, passwordHash: null, hand: 'right' } as const;
    await db
      .insertInto('person')
      .values({
        ...person,
        id: studentId,
        name: `Bench ${i}`,
        active: 1,
        createdMs: 0,
        coachId: 'carl',
      })
      .execute();
    await db.transaction().execute(async (t) => {
      for (let k = 0; k < SESSIONS; k++) {
        const startedMs = hub.clock.ms - (k + random()) * 2 * DAY_MS;
        const row = sessionRow({
          id: `${studentId}x${k}`,
          studentId,
          startedMs,
          rehearsals: 28,
          balls: 12,
          ballsInMix: 10,
          scored: 26,
          passed: 20,
          warnings: k % 20 === 0 ? 1 : 0,
          painAfter: k % 7 === 0 ? 2 : null,
          reviewedMs: k < 5 || k % 10 === 3 ? null : startedMs + DAY_MS,
          spreads: JSON.stringify({ rehearsals: spreads(), balls: spreads() }),
        });
        await t.insertInto('session').values(row).execute();
        if (row.warnings > 0)
          await t
            .insertInto('warning')
            .values({ sessionId: row.id, position: 0, warningId: 'missed', atS: 1, text: 'x' })
            .execute();
        if (k % 10 === 0)
          await t
            .insertInto('comment')
            .values({
              id: `${row.id}c`,
              sessionId: row.id,
              authorId: k % 20 === 0 ? studentId : 'carl',
              atMs: startedMs,
              text: 'x',
              repIndex: null,
              momentS: null,
              replyTo: null,
            })
            .execute();
      }
    });
  }
  const paths = sessionPaths(hub.context.places, 'bench0', 'bench0x3');
  await mkdir(dirname(paths.analysis), { recursive: true });
  const measures = Object.fromEntries(TARGET_MEASURES.map((m) => [m, random()]));
  const checks = TARGET_MEASURES.map((measure) => {
    return { measure, value: random(), target: { min: random() }, passed: true };
  });
  const repetition = { kind: 'rehearsal', topS: random(), measures, verdict: { checks } };
  const repetitions = Array.from({ length: 200 }, (_, i) => ({ ...repetition, index: i + 1 }));
  await writeFile(paths.analysis, JSON.stringify({ repetitions, warnings: [] }));
}

async function measure(hub: TestHub, url: string, times: number): Promise<void> {
  const took: number[] = [];
  let bytes = 0;
  const cpu = process.cpuUsage();
  for (let i = 0; i < times; i++) {
    const from = performance.now();
    const answer = await hub.ask('carl', { url });
    took.push(performance.now() - from);
    if (answer.statusCode !== 200) throw new Error(`${url}: ${answer.statusCode}`);
    bytes = answer.rawPayload.length;
  }
  const { user, system } = process.cpuUsage(cpu);
  const busy = ((user + system) / 1000 / times).toFixed(0).padStart(5);
  const shown = [0.5, 0.95].map((p) => (percentile(took, p) ?? 0).toFixed(0).padStart(5));
  const bound = url === '/api/students' ? 'at most 300 ms (95th)' : 'no bound of its own';
  console.log(
    `${url.slice(0, 38).padEnd(40)} ${shown.join(' ms ')} ms ${busy} ms  ${(bytes / 1000).toFixed(0)} kB  ${bound}`,
  );
}

const hub = await testHub();
try {
  const from = performance.now();
  await fill(hub);
  const { size } = await stat(hub.context.places.database);
  console.log(
    `${STUDENTS} students, ${STUDENTS * SESSIONS} sessions (bench rows), ${(size / 1e6).toFixed(0)} MB of SQLite, filled in ${((performance.now() - from) / 1000).toFixed(0)} s`,
  );
  console.log('address                                  median    95th  processor  answer');
  await measure(hub, '/api/students', 60);
  await measure(hub, '/api/students/bench0', 40);
  await measure(hub, '/api/students/bench0/sessions', 40);
  await measure(hub, '/api/students/bench0/progress', 20);
  await measure(hub, '/api/sessions/bench0x3', 40);
  await measure(hub, '/api/sessions/bench0x4', 40);
  const year = `aFromMs=0&aToMs=${hub.clock.ms - 100 * DAY_MS}&bFromMs=${hub.clock.ms - 100 * DAY_MS}&bToMs=${hub.clock.ms}`;
  await measure(hub, `/api/students/bench0/compare?${year}`, 20);
} finally {
  await hub.close();
}
await benchSessionPage();
