import { fill } from '../sensors/sentence.ts';
import type { OpenPain, OpenWarning } from './concerns.ts';
import { type DriftFacts, drifts } from './drift.ts';
import { NEED_TEXTS, WARNING_NEEDS } from './needTexts.ts';
import { type Plan, STAGES } from './plan.ts';

/** Why a student needs a look, in the order of need. */
export const NEED_CODES = [
  'pain',
  'warning',
  'unanswered',
  'unreviewed',
  'mix',
  'volume',
  'no-practice',
  'drift',
  'seen-warning',
  'none',
] as const;

export type NeedCode = (typeof NEED_CODES)[number];

/** These want a person; sessions of students without them can be reviewed together. */
const GRAVE: readonly NeedCode[] = ['pain', 'warning', 'unanswered'];

/** @param needs in the order of need */
export const needsCoach = (needs: readonly { readonly code: NeedCode }[]): boolean =>
  needs[0] !== undefined && GRAVE.includes(needs[0].code);

/** `weight` orders students of the same code: more is nearer. */
export interface RankedNeed {
  readonly code: NeedCode;
  /** One line that says why. */
  readonly text: string;
  readonly weight: number;
  /** The very session that it is about, and its start (epoch ms). */
  readonly sessionId?: string;
  readonly atMs?: number;
  /** The student's own words that wait for an answer, and what an answer goes to. */
  readonly quote?: string;
  readonly answerTo?: string;
}

/** Words of a student that wait for an answer. Times are epoch ms. */
export interface OpenQuestion {
  readonly sessionId: string;
  readonly atMs: number;
  /** Id of a comment, or `note` for the note of the session. */
  readonly answerTo: string;
  readonly text: string;
}

/** What is known of one student when the coach looks. Times are epoch ms. */
export interface AttentionFacts {
  readonly nowMs: number;
  readonly joinedMs: number;
  readonly plan: Plan;
  readonly pain: OpenPain | null;
  /** Newest first. */
  readonly warnings: readonly OpenWarning[];
  readonly unreviewed: number;
  /** Newest first, at most one a session. */
  readonly questions: readonly OpenQuestion[];
  readonly lastPracticeMs: number | null;
  /** Balls of the last `MIX_DAYS` days, and those of them in the mix. */
  readonly balls: number;
  readonly ballsInMix: number;
  /** Rehearsals and balls of the last 7 and 14 days. */
  readonly week: number;
  readonly fortnight: number;
  /** Sessions of the last 14 days whose repetitions are not known (`notCounted.ts`). */
  readonly unknown: number;
  /** Simulated sessions, of whichever time; they are in no other number. */
  readonly simulated: number;
  /** Newest first. */
  readonly recent: readonly DriftFacts[];
}

/** All that follows is a choice, without published norm. */
export const MIX_DAYS = 14;
const MIX_FEWEST_BALLS = 5;
const MIX_SHARE = 0.8;
/** Less than this share of the plan's weekly volume, over two weeks, is little. */
const LITTLE = 0.25;
const NO_PRACTICE_DAYS = 10;
const DAY_MS = 86_400_000;

/** What needs a look, the gravest first; one of `none` where nothing does. */
export function attention(facts: AttentionFacts): readonly RankedNeed[] {
  const { warnings } = facts;
  const found = [
    painNeed(facts),
    warningNeed(
      'warning',
      warnings.filter((w) => !w.seen),
    ),
    questionNeed(facts),
    unreviewedNeed(facts),
    mixNeed(facts),
    volumeNeed(facts),
    pauseNeed(facts),
    ...drifts(facts.plan, facts.recent).map(({ text, away }): RankedNeed => {
      return { code: 'drift', text, weight: away };
    }),
    warningNeed(
      'seen-warning',
      warnings.filter((w) => w.seen),
    ),
  ].filter((need) => need !== null);
  return found.length > 0 ? found : [nothing(facts)];
}

function painNeed({ pain }: AttentionFacts): RankedNeed | null {
  if (pain === null) return null;
  const { sessionId, startedMs, rating, sessions } = pain;
  const one = painText(pain);
  const text = sessions > 1 ? fill(NEED_TEXTS.more, { text: one, n: sessions }) : one;
  const weight = (pain.warning === 'red-flag' ? 100 : (rating ?? 0)) * 1000 + sessions;
  return { code: 'pain', text, weight, sessionId, atMs: startedMs };
}

function painText({ warning, rating }: OpenPain): string {
  if (warning === null || warning === 'pain-now')
    return rating === null ? WARNING_NEEDS['pain-now'] : fill(NEED_TEXTS.rated, { rating });
  const said = WARNING_NEEDS[warning];
  return rating === null ? said : fill(NEED_TEXTS.warnedAndRated, { warning: said, rating });
}

function warningNeed(
  code: 'warning' | 'seen-warning',
  warnings: readonly OpenWarning[],
): RankedNeed | null {
  const [newest] = warnings;
  if (newest === undefined) return null;
  const { sessionId, startedMs } = newest;
  const text = warnings.map(({ id }) => WARNING_NEEDS[id]).join(' ');
  return { code, text, weight: warnings.length, sessionId, atMs: startedMs };
}

function questionNeed({ questions }: AttentionFacts): RankedNeed | null {
  const [newest] = questions;
  if (newest === undefined) return null;
  const n = questions.length;
  const text = n === 1 ? NEED_TEXTS.question : fill(NEED_TEXTS.questions, { n });
  const { sessionId, atMs, answerTo, text: quote } = newest;
  return { code: 'unanswered', text, weight: n, sessionId, atMs, quote, answerTo };
}

const unreviewedNeed = ({ unreviewed: n }: AttentionFacts): RankedNeed | null =>
  n === 0 ? null : { code: 'unreviewed', text: fill(NEED_TEXTS.unreviewed, { n }), weight: n };

function mixNeed({ balls, ballsInMix, plan }: AttentionFacts): RankedNeed | null {
  if (balls < MIX_FEWEST_BALLS || ballsInMix / balls >= MIX_SHARE) return null;
  const { rehearsals, balls: asked } = plan.ratio;
  const sentence = STAGES[plan.stage].asksForBalls ? NEED_TEXTS.mix : NEED_TEXTS.ballsNotAsked;
  const text = fill(sentence, { inMix: ballsInMix, balls, rehearsals, asked, days: MIX_DAYS });
  return { code: 'mix', text, weight: 1 - ballsInMix / balls };
}

function volumeNeed(facts: AttentionFacts): RankedNeed | null {
  const { week, fortnight, unknown, plan, nowMs, joinedMs } = facts;
  const { perWeek } = plan.volume;
  if (week > perWeek)
    return {
      code: 'volume',
      text: fill(NEED_TEXTS.muchVolume, { n: week, most: perWeek }),
      weight: week / perWeek,
    };
  const old = nowMs - joinedMs >= 14 * DAY_MS;
  if (
    !old ||
    unknown > 0 ||
    daysAway(facts) >= NO_PRACTICE_DAYS ||
    fortnight >= LITTLE * 2 * perWeek
  )
    return null;
  return {
    code: 'volume',
    text: fill(NEED_TEXTS.littleVolume, { n: fortnight, most: 2 * perWeek }),
    weight: 1 - fortnight / (2 * perWeek),
  };
}

/** Whole days since the last practice, or since joining. */
const daysAway = ({ nowMs, lastPracticeMs, joinedMs }: AttentionFacts): number =>
  Math.max(0, Math.floor((nowMs - (lastPracticeMs ?? joinedMs)) / DAY_MS));

function pauseNeed(facts: AttentionFacts): RankedNeed | null {
  const days = daysAway(facts);
  if (days < NO_PRACTICE_DAYS) return null;
  const never = facts.simulated > 0 ? NEED_TEXTS.joinedSimulated : NEED_TEXTS.neverPractised;
  const sentence = facts.lastPracticeMs === null ? never : NEED_TEXTS.noPractice;
  const text = fill(sentence, { days });
  return { code: 'no-practice', text, weight: days };
}

function nothing({ lastPracticeMs, simulated }: AttentionFacts): RankedNeed {
  const never = simulated > 0 ? NEED_TEXTS.onlySimulated : NEED_TEXTS.noPracticeYet;
  return { code: 'none', text: lastPracticeMs === null ? never : NEED_TEXTS.well, weight: 0 };
}

export interface Placed {
  readonly id: string;
  readonly name: string;
  /** Never empty. */
  readonly needs: readonly RankedNeed[];
}

const compareText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** By the first need, its weight, the needs after it in the same way, then name and id: total, the same every time. */
export function compareAttention(a: Placed, b: Placed): number {
  for (let i = 0; i < Math.max(a.needs.length, b.needs.length); i++) {
    const [x, y] = [a.needs[i], b.needs[i]];
    if (x === undefined || y === undefined) return x === undefined ? 1 : -1;
    const byCode = NEED_CODES.indexOf(x.code) - NEED_CODES.indexOf(y.code);
    if (byCode !== 0) return byCode;
    if (x.weight !== y.weight) return y.weight - x.weight;
  }
  return compareText(a.name, b.name) || compareText(a.id, b.id);
}
