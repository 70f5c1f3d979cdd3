import { MEASURE_INFO } from '../../coaching/measureInfo.ts';
import { measureText, targetText } from '../../coaching/measureText.ts';
import {
  type Plan,
  TARGET_MEASURES,
  type Target,
  type TargetMeasure,
} from '../../coaching/plan.ts';
import { median } from '../../math/stats.ts';
import type { Need } from '../../streaming/hubContract/students.ts';
import type { SpreadsView } from '../../streaming/sessionsContract.ts';

/** One of the student's newest sessions, as far as needs go by it. */
export interface RecentSession {
  readonly startedMs: number;
  readonly reviewed: boolean;
  readonly warnings: number;
  readonly painBefore: number | null;
  readonly painAfter: number | null;
  readonly repetitions: number;
  readonly balls: number;
  readonly ballsInMix: number;
  /** Of the rehearsals. */
  readonly spreads: SpreadsView;
}

export interface StudentFacts {
  readonly joinedMs: number;
  readonly lastPracticeMs: number | null;
  readonly unreviewed: number;
  readonly oldestUnreviewedMs: number | null;
  /** Oldest comment of the student that nobody answered. */
  readonly unansweredMs: number | null;
  readonly plan: Plan;
  /** Newest first, of the last two months. */
  readonly recent: readonly RecentSession[];
}

const DAY_MS = 86_400_000;
const WEEK_MS = 7 * DAY_MS;

/** Bands of the pain-monitoring model (from memory; see the safety texts): 4 of 10, or 2 more than before. */
const PAIN = 4;
const PAIN_RISE = 2;
/** Choices, no published norm. */
const SILENT_DAYS = 10;
const DRIFT_SESSIONS = 3;

const day = (ms: number): string =>
  new Date(ms).toLocaleDateString('en-GB', { day: 'numeric', month: 'short' });
const count = (n: number, one: string): string => `${n} ${one}${n === 1 ? '' : 's'}`;

const hurts = ({ painBefore, painAfter }: RecentSession): boolean =>
  Math.max(painBefore ?? 0, painAfter ?? 0) >= PAIN ||
  (painAfter ?? 0) - (painBefore ?? 0) >= PAIN_RISE;

function pain({ recent }: StudentFacts): string | null {
  const s = recent.find((one) => !one.reviewed && hurts(one));
  if (s === undefined) return null;
  const rated = Math.max(s.painBefore ?? 0, s.painAfter ?? 0);
  return `Pain ${rated} of 10 in the session of ${day(s.startedMs)}.`;
}

function warning({ recent }: StudentFacts): string | null {
  const s = recent.find((one) => !one.reviewed && one.warnings > 0);
  if (s === undefined) return null;
  return `${count(s.warnings, 'warning')} in the session of ${day(s.startedMs)}.`;
}

function unreviewed({ unreviewed: n, oldestUnreviewedMs }: StudentFacts): string | null {
  if (n === 0 || oldestUnreviewedMs === null) return null;
  return n === 1
    ? `The session of ${day(oldestUnreviewedMs)} is not reviewed.`
    : `${count(n, 'session')} not reviewed, the oldest of ${day(oldestUnreviewedMs)}.`;
}

const unanswered = ({ unansweredMs }: StudentFacts): string | null =>
  unansweredMs === null ? null : `A comment of ${day(unansweredMs)} waits for an answer.`;

const ofWeek = ({ recent }: StudentFacts, nowMs: number): readonly RecentSession[] =>
  recent.filter(({ startedMs }) => startedMs > nowMs - WEEK_MS);

const sum = (sessions: readonly RecentSession[], of: (s: RecentSession) => number): number =>
  sessions.reduce((total, s) => total + of(s), 0);

function mix(facts: StudentFacts, nowMs: number): string | null {
  const week = ofWeek(facts, nowMs);
  const balls = sum(week, (s) => s.balls);
  const early = balls - sum(week, (s) => s.ballsInMix);
  return early === 0 ? null : `${early} of ${count(balls, 'ball')} came too early in 7 days.`;
}

function volume(facts: StudentFacts, nowMs: number): string | null {
  const done = sum(ofWeek(facts, nowMs), (s) => s.repetitions);
  const { perWeek } = facts.plan.volume;
  return done <= perWeek ? null : `${done} repetitions in 7 days, at most ${perWeek} asked.`;
}

function noPractice({ lastPracticeMs, joinedMs }: StudentFacts, nowMs: number): string | null {
  const days = Math.floor((nowMs - (lastPracticeMs ?? joinedMs)) / DAY_MS);
  if (days < SILENT_DAYS) return null;
  return lastPracticeMs === null
    ? `No practice since joining ${days} days ago.`
    : `No practice for ${days} days.`;
}

const within = (value: number, { min = -Infinity, max = Infinity }: Target): boolean =>
  value >= min && value <= max;

/** The newest sessions all miss a target that the ones before reached. */
function drifted(facts: StudentFacts, measure: TargetMeasure): string | null {
  const target = facts.plan.targets[measure];
  if (target === null) return null;
  const medians = facts.recent
    .map((s) => s.spreads[measure]?.median)
    .filter((v) => v !== undefined);
  const now = medians.slice(0, DRIFT_SESSIONS);
  const before = medians.slice(DRIFT_SESSIONS, 2 * DRIFT_SESSIONS);
  if (now.length < DRIFT_SESSIONS || before.length === 0) return null;
  if (now.some((v) => within(v, target)) || !before.every((v) => within(v, target))) return null;
  const { name } = MEASURE_INFO[measure];
  const shown = measureText(measure, median(now), target);
  return `${name.charAt(0).toUpperCase()}${name.slice(1)}: ${shown} in the last ${DRIFT_SESSIONS} sessions, ${targetText(measure, target)} asked.`;
}

const drift = (facts: StudentFacts): string | null =>
  TARGET_MEASURES.map((m) => drifted(facts, m)).find((text) => text !== null) ?? null;

/** Why a student needs a look, most urgent first; one `none` where nothing does. Pure. */
export function needsOf(facts: StudentFacts, nowMs: number): readonly Need[] {
  const found: readonly (readonly [Need['code'], string | null])[] = [
    ['pain', pain(facts)],
    ['warning', warning(facts)],
    ['unreviewed', unreviewed(facts)],
    ['unanswered', unanswered(facts)],
    ['mix', mix(facts, nowMs)],
    ['volume', volume(facts, nowMs)],
    ['no-practice', noPractice(facts, nowMs)],
    ['drift', drift(facts)],
  ];
  const needs = found.flatMap(([code, text]) => (text === null ? [] : [{ code, text }]));
  return needs.length > 0 ? needs : [{ code: 'none', text: 'Practises as asked.' }];
}

export const ORDER: readonly Need['code'][] = [
  'pain',
  'warning',
  'unreviewed',
  'unanswered',
  'mix',
  'volume',
  'no-practice',
  'drift',
  'none',
];
