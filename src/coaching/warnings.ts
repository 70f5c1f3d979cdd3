import { mean } from '../math/stats.ts';
import { fill } from '../sensors/sentence.ts';
import type { Rehearsal } from '../swings/repetition.ts';
import { catchMissed, isUnscored } from './judge.ts';
import type { SafetyWarning, WarningId } from './judgement.ts';
import type { Plan } from './plan.ts';
import { type PainSign, SAFETY_TEXTS } from './safetyTexts.ts';

/** @param atS session s; 0 before the start */
export const warningOf = (id: WarningId, atS: number): SafetyWarning => ({
  id,
  atS,
  text: SAFETY_TEXTS[id].text,
});

const PAIN_HIGH_ABOVE = 5;
const PAIN_NOW_FROM = 4;
const PAIN_NOW_RISE = 2;

export interface PainReport {
  /** 0-10 */
  readonly rating: number;
  /** Rating at the session's start; `null` where this is it. */
  readonly atStart: number | null;
  readonly signs: readonly PainSign[];
  /** Session s. */
  readonly atS: number;
}

/** `pain-high` over 5 of 10 or with a sign of its own, `pain-now` from 4 or 2 over the start, else `null`. */
export function painWarning({ rating, atStart, signs, atS }: PainReport): SafetyWarning | null {
  if (rating > PAIN_HIGH_ABOVE || signs.length > 0) return warningOf('pain-high', atS);
  if (rating < PAIN_NOW_FROM && (atStart === null || rating < atStart + PAIN_NOW_RISE)) return null;
  const warning = warningOf('pain-now', atS);
  return { ...warning, text: fill(warning.text, { pain: rating }) };
}

/** @param baseline the rating before the last session; `null` where there is none */
export const painNextDayWarning = (
  rating: number,
  baseline: number | null,
): SafetyWarning | null =>
  baseline !== null && rating > baseline ? warningOf('pain-next-day', 0) : null;

export interface StartChecks {
  /** Club and space, asked each session. */
  readonly clubConfirmed: boolean;
  /** Asked once. */
  readonly historyConfirmed: boolean;
  readonly warmedUp: boolean;
  readonly redFlag: boolean;
}

/** What must be shown before a session may start, the gravest first. */
export function startWarnings(c: StartChecks): readonly SafetyWarning[] {
  const ids: WarningId[] = [
    ...(c.redFlag ? (['red-flag'] as const) : []),
    ...(c.historyConfirmed ? [] : (['history'] as const)),
    ...(c.clubConfirmed ? [] : (['club'] as const)),
    ...(c.warmedUp ? [] : (['warm-up'] as const)),
  ];
  return ids.map((id) => warningOf(id, 0));
}

/** What is told before the start alone: the sensors and the events of a session say nothing of it. */
export const saidBefore = (all: readonly SafetyWarning[]): readonly SafetyWarning[] =>
  all.filter(({ id }) => SAID_BEFORE.includes(id)).map(({ id, atS, text }) => ({ id, atS, text }));

const SAID_BEFORE: readonly WarningId[] = [
  'red-flag',
  'history',
  'club',
  'warm-up',
  'pain-next-day',
];

/** Repetitions (rehearsals and balls) done before this session. */
export interface VolumeHistory {
  /** In the six days before today and earlier today. */
  readonly thisWeek: number;
  /** Totals of the four weeks before that; fewer than four, or four without practice, give no usual to compare with. */
  readonly weeksBefore: readonly number[];
}

export const NO_HISTORY: VolumeHistory = { thisWeek: 0, weeksBefore: [] };

/** Over one's usual by more than this is warned of. A convention (weak evidence). */
const OVER_USUAL = 1.5;

/** Warns once: at the repetition with which a limit is passed, or at the first if it already was. */
export function volumeWarning(
  inSession: number,
  history: VolumeHistory,
  plan: Pick<Plan, 'volume'>,
  atS: number,
): SafetyWarning | null {
  const over = (n: number): boolean =>
    n > plan.volume.perSession || n + history.thisWeek > weekLimit(history, plan);
  const passedNow = over(inSession) && (inSession <= 1 || !over(inSession - 1));
  return passedNow ? warningOf('volume', atS) : null;
}

function weekLimit({ weeksBefore }: VolumeHistory, { volume }: Pick<Plan, 'volume'>): number {
  const usual = weeksBefore.length < 4 ? null : mean(weeksBefore.slice(-4));
  return usual ? Math.min(volume.perWeek, OVER_USUAL * usual) : volume.perWeek;
}

const MISSED_OF = 5;
const MISSED_FROM = 2;

/**
 * Two of the last five catches missed, the newest among them, so that it warns at a miss and not again after
 * a good catch. Rehearsals that could not be scored are passed over: their catch is not known.
 * @param rehearsals oldest first
 */
export function missedWarning(rehearsals: readonly Rehearsal[]): SafetyWarning | null {
  const last = rehearsals.filter((r) => !isUnscored(r)).slice(-MISSED_OF);
  const newest = last.at(-1);
  if (!newest || newest !== rehearsals.at(-1) || !catchMissed(newest)) return null;
  return last.filter(catchMissed).length >= MISSED_FROM ? warningOf('missed', newest.endS) : null;
}
