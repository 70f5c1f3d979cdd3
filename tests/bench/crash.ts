/**
 * The whole service killed (SIGKILL) at random moments of a simulated practice: what is lost, whether the index is
 * sound, whether the session opens as interrupted with its repetitions. `npm run bench:crash [rounds]`
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type CrashRound, crashRound } from '../main/crashRounds.ts';

const BOUND_S = 1;
const rounds = Number(process.argv[2] ?? 20);
const root = mkdtempSync(join(tmpdir(), 'stillcatch-crash-'));
const all: CrashRound[] = [];
for (let i = 0; i < rounds; i++) {
  const r = await crashRound(root, Math.random());
  all.push(r);
  console.log(
    `round ${i + 1}: killed at session ${r.reachedS.toFixed(1)} s, lost ${r.lostS.toFixed(2)} s, ${r.state}, repetitions seen ${r.seen}, found ${r.found}, index repairs ${r.repaired}, integrity ${r.integrity}`,
  );
}
const worst = Math.max(...all.map((r) => r.lostS));
const short = all.filter((r) => r.found < r.seen).length;
const interrupted = all.filter((r) => r.state === 'interrupted').length;
console.log(
  `${rounds} rounds: lost at most ${worst.toFixed(2)} s (bound ${BOUND_S} s); ${interrupted} opened as interrupted; ${short} with a repetition missing; index repaired ${all.reduce((n, r) => n + r.repaired, 0)} times, sound in ${all.filter((r) => r.integrity === 'ok').length}`,
);
rmSync(root, { recursive: true, force: true });
process.exit(0);
