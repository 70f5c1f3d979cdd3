/**
 * 200 students' machines that wait at the hub for news, as while their pages are open: what it costs, and how soon one
 * of them hears of a new plan. `npm run bench:listeners`. The machines ask from the same process, so their cost is in
 * the figures too.
 */
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import { hashOf, newToken } from '../../src/streaming/secrets.ts';
import { percentile } from '../../src/math/stats.ts';
import { type NamedInbox, hubClient } from '../../src/sending/hubClient.ts';
import { sessionRow } from '../hub/coach/rows.ts';
import { type TestHub, testHub } from '../hub/testHub.ts';
import { listen } from '../hub/uploads/sending.ts';

const MACHINES = 200;
const SESSIONS = 30;
const WATCHED_S = 50;

async function addMachine({ context: { db } }: TestHub, i: number): Promise<string> {
  const studentId = `bench${i}`;
  const token = newToken();
  const person = { role: 'student', login: null, passwordHash: null, hand: 'right' } as const;
  const about = { id: studentId, name: `Bench ${i}`, active: 1, createdMs: 0, coachId: 'carl' };
  await db
    .insertInto('person')
    .values({ ...person, ...about })
    .execute();
  const machine = { id: `${studentId}m`, studentId, name: 'Laptop', tokenHash: hashOf(token) };
  await db
    .insertInto('machine')
    .values({ ...machine, pairedMs: 0, lastSeenMs: null, revokedMs: null })
    .execute();
  for (let k = 0; k < SESSIONS; k++) {
    const row = sessionRow({ id: `${studentId}x${k}`, studentId, startedMs: k, reviewedMs: 1 });
    await db.insertInto('session').values(row).execute();
  }
  return token;
}

const cpuMs = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

const hub = await testHub();
const url = `http://127.0.0.1:${await listen(hub)}`;
const tokens: string[] = [];
for (let i = 0; i < MACHINES; i++) tokens.push(await addMachine(hub, i));

const heardMs = new Map<number, number>();
let asked = 0;
const end = new AbortController();
async function keepAsking(token: string, i: number): Promise<void> {
  const client = hubClient(url, token);
  let have: string | null = null;
  while (!end.signal.aborted) {
    asked++;
    const got: NamedInbox | null = await client
      .inbox({ have, ...(have !== null && { waitS: 25 }) })
      .catch(() => null);
    if (have !== null && got !== null) heardMs.set(i, performance.now());
    have = got?.name ?? have;
  }
}
const all = tokens.map(keepAsking);
await new Promise((done) => setTimeout(done, 3000));
const before = { cpu: cpuMs(), at: performance.now(), asked };
await new Promise((done) => setTimeout(done, WATCHED_S * 1000));
const share = (cpuMs() - before.cpu) / (performance.now() - before.at);
console.log(
  `${MACHINES} machines waiting ${WATCHED_S} s: ${asked - before.asked} questions, ` +
    `${(share * 100).toFixed(2)} % of a core for hub and machines, ${(process.memoryUsage().rss / 2 ** 20).toFixed(0)} MB`,
);
const took: number[] = [];
for (let i = 0; i < MACHINES; i += 10) {
  const from = performance.now();
  const payload = { plan: { ...DEFAULT_PLAN, name: `Plan ${i}` }, validFromMs: 0, basedOn: 0 };
  await hub.ask('carl', { method: 'POST', url: `/api/students/bench${i}/plans`, payload });
  while (!heardMs.has(i)) await new Promise((done) => setTimeout(done, 1));
  took.push((heardMs.get(i) ?? NaN) - from);
}
console.log(
  `a new plan is heard of after ${(percentile(took, 0.5) ?? NaN).toFixed(0)} ms (median of ${took.length}), ` +
    `most ${Math.max(...took).toFixed(0)} ms, its saving included`,
);
end.abort();
await hub.close();
await Promise.all(all);
