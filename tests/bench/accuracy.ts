/**
 * Accuracy of the whole analysis on simulated sessions with exact truth: `npm run report:accuracy`.
 * Options: `--json`; `--rehearsals 200`; `--seed 1000` first seed; `--worst` lists the worst cases;
 * `--only 1016` plays the session of that seed alone; `--unrest 3` with that many times the usual sway and tremor.
 */
import { parseArgs } from 'node:util';
import type { Case, Match } from './accuracyCases.ts';
import { distractorSessions, matchUp, mixedSessions, runCase } from './accuracyCases.ts';
import { type Figure, type KindScore, figures, kindScores } from './accuracyFigures.ts';
import { type VerdictScore, verdictScore } from './accuracyVerdicts.ts';

const { values } = parseArgs({
  options: {
    json: { type: 'boolean', default: false },
    worst: { type: 'boolean', default: false },
    rehearsals: { type: 'string', default: '200' },
    seed: { type: 'string', default: '1000' },
    only: { type: 'string' },
    unrest: { type: 'string', default: '1' },
  },
});

interface Matched {
  readonly c: Case;
  readonly pairs: Match[];
  readonly extra: ReturnType<typeof matchUp>['extra'];
}

const unrest = Number(values.unrest);
const run = (options: Parameters<typeof runCase>[0]): Matched => {
  const c = runCase({ ...options, unrest });
  return { c, ...matchUp(c) };
};

const firstSeed = Number(values.only ?? values.seed);
const single = values.only !== undefined;
const mixed = [...mixedSessions(single ? 1 : Number(values.rehearsals), firstSeed)].map(run);
const quiet = distractorSessions(single ? 0 : 8, firstSeed + 4000).map(run);
const all = [...mixed, ...quiet];

const number = (v: number | null, digits = 2): string => (v === null ? '-' : v.toFixed(digits));
const line = (cells: readonly string[], widths: readonly number[]): string =>
  cells.map((c, i) => (i === 0 ? c.padEnd(widths[i] ?? 0) : c.padStart(widths[i] ?? 0))).join(' ');

function printFigures(list: readonly Figure[]): void {
  const widths = [30, 5, 9, 9, 9, 7, 6];
  console.log(line(['absolute error', 'n', 'median', 'p95', 'max', 'bound', ''], widths));
  for (const f of list) {
    const met = f.met === null ? '' : f.met ? 'met' : 'MISSED';
    const row = [`${f.name} (${f.unit})`, String(f.n), number(f.median), number(f.p95)];
    console.log(line([...row, number(f.max), number(f.bound, 0), met], widths));
    if (values.worst) for (const d of f.worst) console.log(`    ${worst(d)}`);
  }
}

const worst = (d: Figure['worst'][number]): string =>
  `${number(d.error)} (${number(d.truth)} read ${number(d.found)}) seed ${d.seed} ${d.hand} at ${d.atS.toFixed(2)} s, ${d.what} ${d.flags.join(' ')}`;

function printScores(title: string, scores: readonly KindScore[]): void {
  const widths = [30, 7, 7, 7, 10, 8, 8];
  console.log(line([title, 'true', 'found', 'right', 'precision', 'recall', 'F1'], widths));
  for (const s of scores) {
    const counts = [String(s.truths), String(s.found), String(s.right)];
    const rates = [s.precision, s.recall, s.f1].map((v) => number(v, 4));
    console.log(line([s.kind, ...counts, ...rates], widths));
  }
}

function printWrong(): void {
  for (const { c, pairs, extra } of all) {
    const at = `seed ${c.options.seed} ${c.options.hand}`;
    if (!c.found.calibration.accepted || c.found.calibration.problems.length > 0) {
      console.log(`calibration: ${at} ${JSON.stringify(c.found.calibration)}`);
    }
    for (const p of pairs.filter((x) => x.found?.kind !== x.truth.kind)) {
      const fault = p.truth.kind === 'rehearsal' ? (p.truth.fault ?? 'good') : '';
      const seen = p.found?.kind ?? 'nothing';
      console.log(`missed: ${at} at ${number(p.truth.topS)} s ${p.truth.kind} ${fault} -> ${seen}`);
    }
    for (const r of extra) {
      const during = c.distractors.find((d) => d.startS <= r.topS && d.endS >= r.topS);
      console.log(`invented: ${at} at ${number(r.topS)} s ${r.kind} during ${during?.kind ?? '-'}`);
    }
  }
}

function printVerdicts(v: VerdictScore): void {
  console.log(
    `verdicts: ${v.right} of ${v.judged} as the truth says; not scored ${v.notScored}; catches seen ${v.catchesSeen} of ${v.catches}, invented ${v.catchesInvented} of ${v.missed}`,
  );
  for (const w of v.wrong) console.log(`  ${w}`);
}

const list = figures(mixed);
const withRepetitions = kindScores(mixed);
const withoutRehearsals = kindScores(quiet);
const verdicts = verdictScore(mixed);
if (values.json) {
  console.log(
    JSON.stringify({ figures: list, withRepetitions, withoutRehearsals, verdicts }, null, 1),
  );
} else {
  const hands = (hand: string) => mixed.filter(({ c }) => c.options.hand === hand).length;
  console.log(
    `Simulated truth: ${mixed.length} sessions with repetitions (${hands('right')} right-handed, ${hands('left')} left-handed), ${quiet.length} of distractors only; noise, mounting, loss and skew as the simulator's defaults.`,
  );
  printFigures(list);
  printScores('repetitions', withRepetitions);
  printScores('distractor sessions', withoutRehearsals);
  printVerdicts(verdicts);
  printWrong();
}
