/** How long the demo club takes to fill, and how large it is: `npm run bench:demo`. */
import { mkdtemp, readdir, rm, stat } from 'node:fs/promises';
import { cpus, loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { openHubData } from '../../src/hub/db/open.ts';
import { studentFacts } from '../../src/hub/coach/facts.ts';
import { fillDemoClub } from '../../src/hub/demo/fill.ts';
import { demoId } from '../../src/hub/demo/people.ts';
import { DEMO_COACHES } from '../../src/hub/demo/stories.ts';

const root = await mkdtemp(join(tmpdir(), 'stillcatch-bench-'));
const data = await openHubData(root);
const from = performance.now();
const seconds = (): string => ((performance.now() - from) / 1000).toFixed(0);
try {
  const { db, places } = data;
  const settings = { publicUrl: 'http://localhost' };
  let done = 0;
  const seen: Promise<{ readonly list: string; readonly after: string }>[] = [];
  const context = { db, places, settings, now: Date.now, say: console.log };
  const listNow = async (): Promise<string> => {
    const lists = DEMO_COACHES.map(({ login }) =>
      studentFacts(context, { coachId: demoId(login) }),
    );
    const rows = (await Promise.all(lists)).flat();
    return JSON.stringify(rows.map(({ id, needs }) => [id, needs[0]?.code]));
  };
  const club = await fillDemoClub(context, (n) => {
    done = n;
    const after = seconds();
    seen.push(listNow().then((list) => ({ list, after })));
  });
  console.log(`people, plans and lessons: after ${seconds()} s`);
  await club.filled;
  const lists = await Promise.all(seen);
  const last = lists.at(-1)!;
  const settled = lists[lists.findLastIndex(({ list }) => list !== last.list) + 1]!;
  console.log(`the list of students as it stays: after ${settled.after} s`);
  const names = await readdir(root, { recursive: true, withFileTypes: true });
  const files = names.filter((e) => e.isFile()).map((e) => join(e.parentPath, e.name));
  const sizes = await Promise.all(files.map(async (f) => (await stat(f)).size));
  const megabytes = (sizes.reduce((a, b) => a + b, 0) / 1e6).toFixed(0);
  const { user, system } = process.cpuUsage();
  console.log(`${done} sessions after ${seconds()} s, ${megabytes} MB on disk`);
  console.log(
    `processor ${((user + system) / 1e6).toFixed(0)} s, ${cpus().length} cores, load ${loadavg()[0]!.toFixed(1)}`,
  );
  const bad = await db
    .selectFrom('session')
    .select(['id', 'problem'])
    .where('analysed', '=', 0)
    .execute();
  for (const { id, problem } of bad) console.log(`${id}: ${problem}`);
} finally {
  await data.close();
  await rm(root, { recursive: true, force: true });
}
