/** Kills the whole service in the middle of a practice, again and again, and looks at what is left. */
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';
import { sql } from 'kysely';
import { io } from 'socket.io-client';
import { openSession } from '../../src/sessions/openSession.ts';
import { openDatabase } from '../../src/sessions/store/driver.ts';
import { openStore } from '../../src/sessions/store/store.ts';
import type { IndexTables } from '../../src/sessions/store/tables.ts';
import type { Batch, Snapshot } from '../../src/streaming/contract.ts';

export interface CrashRound {
  /** Session s when it was killed, as a page saw it. */
  readonly reachedS: number;
  /** Of the sensor that lost more, s of the wall clock. */
  readonly lostS: number;
  readonly state: string;
  readonly repaired: number;
  /** What `PRAGMA integrity_check` says: ok. */
  readonly integrity: string;
  /** That a page had seen, and were over before the last sample that was kept. */
  readonly seen: number;
  readonly found: number;
}

/** Faster than life, so that there are repetitions in a short round. */
const SPEED = 6;
const MAIN = fileURLToPath(new URL('../../src/main/student.ts', import.meta.url));

async function startService(root: string): Promise<{ child: ChildProcess; url: string }> {
  const args = ['--import', 'tsx', MAIN, '--data', root, '--port', '0', '--speed', `${SPEED}`];
  const child = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'inherit'] });
  let said = '';
  for await (const chunk of child.stdout) {
    said += String(chunk);
    const url = /http:\S+/.exec(said)?.[0];
    if (url !== undefined) return { child, url };
  }
  throw new Error(`the service did not start: ${said}`);
}

/** A page that only looks: session time against the wall clock, and the ends of the repetitions. */
function watch(url: string) {
  const times: { readonly atMs: number; readonly timeS: number }[] = [];
  const ends = new Map<number, number>();
  const socket = io(url, { transports: ['websocket'] });
  let id = '';
  socket.once('connect', () =>
    socket.emit('command', { type: 'begin', kind: 'demo', hand: 'right', sensors: 'demo' }),
  );
  const take = (view: Partial<Snapshot['view']>, timeS: number | undefined): void => {
    if (timeS !== undefined) times.push({ atMs: performance.now(), timeS });
    if (view.last) ends.set(view.last.index, view.last.endS);
    id = view.keeping?.sessionId ?? id;
  };
  socket.on('snapshot', ({ view }: Snapshot) => take(view, view.curve.timeS.at(-1)));
  socket.on('batch', ({ sequence, sections, points }: Batch) => {
    take(sections, points.timeS.at(-1));
    socket.emit('seen', sequence);
  });
  return { times, ends, id: () => id, close: () => socket.close() };
}

async function lastTimes(folder: string): Promise<number> {
  const session = await openSession(folder);
  const last = { chest: 0, trailArm: 0, club: Infinity };
  for await (const batch of session.inputs())
    for (const input of batch)
      if (input.kind === 'sample') last[input.sample.sensor] = input.sample.timeS;
  await session.close();
  return Math.min(last.chest, last.trailArm);
}

async function integrityOf(index: string): Promise<string> {
  const db = openDatabase<IndexTables>(index);
  const { rows } = await sql<{ integrity_check: string }>`PRAGMA integrity_check`.execute(db);
  await db.destroy();
  return rows.map((row) => row.integrity_check).join('; ');
}

/** One round in a data folder; `chance` 0..1 says when, from the first moving second on. */
export async function crashRound(root: string, chance: number): Promise<CrashRound> {
  const { child, url } = await startService(root);
  const page = watch(url);
  while (page.times.length === 0 || page.id() === '')
    await new Promise((done) => setTimeout(done, 20));
  await new Promise((done) => setTimeout(done, 1000 + chance * 9000));
  const killedMs = performance.now();
  child.kill('SIGKILL');
  await once(child, 'exit');
  page.close();
  const store = await openStore(root);
  await store.recover();
  const session = await store.get(page.id());
  const keptS = await lastTimes(store.folderOf(page.id()));
  const reached = page.times.findLast(({ timeS }) => timeS <= keptS);
  const round: CrashRound = {
    reachedS: page.times.at(-1)?.timeS ?? 0,
    lostS: (killedMs - (reached?.atMs ?? 0)) / 1000,
    state: session?.state ?? 'gone',
    repaired: store.repaired.length,
    integrity: await integrityOf(store.places.index),
    // a repetition is known a little after its end: the samples of that time may be among the lost
    seen: [...page.ends.values()].filter((endS) => endS < keptS - 0.5).length,
    found: session?.repetitions.length ?? 0,
  };
  await store.close();
  return round;
}
