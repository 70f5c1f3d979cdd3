import { type DriftFacts, drifts } from './drift.ts';
import { type Plan, STAGES } from './plan.ts';

/** Why a student needs a look, in the order of need. */
export const NEED_CODES = [
  'pain',
  'warning',
  'unreviewed',
  'unanswered',
  'mix',
  'volume',
  'no-practice',
  'drift',
  'none',
] as const;

export type NeedCode = (typeof NEED_CODES)[number];

/** `weight` orders students of the same code: more is nearer. */
export interface RankedNeed {
  readonly code: NeedCode;
  /** One line that says why. */
  readonly text: string;
  readonly weight: number;
}

/** What is known of one student when the coach looks. Times are epoch ms. */
export interface AttentionFacts {
  readonly nowMs: number;
  readonly joinedMs: number;
  readonly plan: Plan;
  /** Of sessions that nobody has looked at: highest rating 0-10, `null` where none was given. */
  readonly pain: number | null;
  /** Most that a rating rose within one of them; `null` where none was given twice. */
  readonly painRise: number | null;
  /** Of those sessions: warnings of pain, and all the others. */
  readonly painWarnings: number;
  readonly otherWarnings: number;
  readonly unreviewed: number;
  /** Sessions in which the student spoke last. */
  readonly unanswered: number;
  readonly lastPracticeMs: number | null;
  /** Balls of the last `MIX_DAYS` days, and those of them in the mix. */
  readonly balls: number;
  readonly ballsInMix: number;
  /** Rehearsals and balls of the last 7 and 14 days. */
  readonly week: number;
  readonly fortnight: number;
  /** Newest first. */
  readonly recent: readonly DriftFacts[];
}

/** Bands of the pain-monitoring model, as the warnings have them: 4 of 10, or 2 more than before. */
const PAIN_FROM = 4;
const PAIN_RISE = 2;
/** All that follows is a choice, without published norm. */
export const MIX_DAYS = 14;
const MIX_FEWEST_BALLS = 5;
const MIX_SHARE = 0.8;
/** Less than this share of the plan's weekly volume, over two weeks, is little. */
const LITTLE = 0.25;
const NO_PRACTICE_DAYS = 10;
const DAY_MS = 86_400_000;

const many = (n: number, one: string): string => `${n} ${one}${n === 1 ? '' : 's'}`;

/** What needs a look, the gravest first; one of `none` where nothing does. */
export function attention(facts: AttentionFacts): readonly RankedNeed[] {
  const found = [
    painNeed(facts),
    warningNeed(facts),
    unreviewedNeed(facts),
    unansweredNeed(facts),
    mixNeed(facts),
    volumeNeed(facts),
    pauseNeed(facts),
    ...drifts(facts.plan, facts.recent).map(({ text, away }): RankedNeed => {
      return { code: 'drift', text, weight: away };
    }),
  ].filter((need) => need !== null);
  return found.length > 0 ? found : [nothing(facts)];
}

function painNeed({ pain, painRise, painWarnings }: AttentionFacts): RankedNeed | null {
  const hurts = (pain ?? 0) >= PAIN_FROM || (painRise ?? 0) >= PAIN_RISE;
  if (painWarnings === 0 && !hurts) return null;
  const rated = pain === null ? '' : ` Highest rating ${pain} of 10.`;
  const text =
    painWarnings > 0
      ? `${many(painWarnings, 'pain warning')} in sessions not yet reviewed.${rated}`
      : `Pain ${pain} of 10 in a session not yet reviewed.`;
  return { code: 'pain', text, weight: (pain ?? 0) * 1000 + painWarnings };
}

const warningNeed = ({ otherWarnings: n }: AttentionFacts): RankedNeed | null =>
  n === 0
    ? null
    : { code: 'warning', text: `${many(n, 'warning')} in sessions not yet reviewed.`, weight: n };

const unreviewedNeed = ({ unreviewed: n }: AttentionFacts): RankedNeed | null =>
  n === 0
    ? null
    : { code: 'unreviewed', text: `${many(n, 'session')} not yet reviewed.`, weight: n };

const unansweredNeed = ({ unanswered: n }: AttentionFacts): RankedNeed | null =>
  n === 0
    ? null
    : {
        code: 'unanswered',
        text: `The student had the last word in ${many(n, 'session')}.`,
        weight: n,
      };

function mixNeed({ balls, ballsInMix, plan }: AttentionFacts): RankedNeed | null {
  if (balls < MIX_FEWEST_BALLS || ballsInMix / balls >= MIX_SHARE) return null;
  const { rehearsals, balls: asked } = plan.ratio;
  const text = STAGES[plan.stage].asksForBalls
    ? `${ballsInMix} of ${many(balls, 'ball')} came in the mix of ${rehearsals} to ${asked} (last ${MIX_DAYS} days).`
    : `${many(balls, 'ball')} in the last ${MIX_DAYS} days; the plan asks for rehearsals only.`;
  return { code: 'mix', text, weight: 1 - ballsInMix / balls };
}

function volumeNeed(facts: AttentionFacts): RankedNeed | null {
  const { week, fortnight, plan, nowMs, joinedMs } = facts;
  const { perWeek } = plan.volume;
  if (week > perWeek)
    return {
      code: 'volume',
      text: `${many(week, 'repetition')} in 7 days; the plan says at most ${perWeek}.`,
      weight: week / perWeek,
    };
  const old = nowMs - joinedMs >= 14 * DAY_MS;
  if (!old || daysAway(facts) >= NO_PRACTICE_DAYS || fortnight >= LITTLE * 2 * perWeek) return null;
  return {
    code: 'volume',
    text: `${many(fortnight, 'repetition')} in 14 days; the plan has room for ${2 * perWeek}.`,
    weight: 1 - fortnight / (2 * perWeek),
  };
}

/** Whole days since the last practice, or since joining. */
const daysAway = ({ nowMs, lastPracticeMs, joinedMs }: AttentionFacts): number =>
  Math.max(0, Math.floor((nowMs - (lastPracticeMs ?? joinedMs)) / DAY_MS));

function pauseNeed(facts: AttentionFacts): RankedNeed | null {
  const days = daysAway(facts);
  if (days < NO_PRACTICE_DAYS) return null;
  const text =
    facts.lastPracticeMs === null
      ? `Joined ${days} days ago, no practice yet.`
      : `No practice for ${days} days.`;
  return { code: 'no-practice', text, weight: days };
}

const nothing = ({ lastPracticeMs }: AttentionFacts): RankedNeed => ({
  code: 'none',
  text: lastPracticeMs === null ? 'No practice yet.' : 'Practises as asked.',
  weight: 0,
});

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
