import type { Rehearsal, RepetitionFlag } from '../swings/repetition.ts';
import {
  asksForMore,
  chestLeadCue,
  FAULT_CUES,
  goodCue,
  MISSED_CATCH,
  notScored,
  STAY_EASY,
  type Unscored,
} from './cues.ts';
import { measureValue } from './measureValue.ts';
import type { Check, Cue, Verdict } from './judgement.ts';
import { type Plan, TARGET_MEASURES, type Target, type TargetMeasure } from './plan.ts';

/** Flags after which no number of the repetition is trusted. */
const UNSCORED: Partial<Record<RepetitionFlag, Unscored>> = {
  gap: 'gap',
  'impact-not-seen': 'gap',
  saturated: 'range',
};

/** The club was not caught in the time a fall can take: it landed, or no catch was found. */
export const catchMissed = (r: Pick<Rehearsal, 'flags'>): boolean =>
  r.flags.includes('landed') || r.flags.includes('catch-not-detected');

/** Some of its numbers cannot be trusted: it is neither passed nor failed. */
export const isUnscored = (r: { readonly flags: readonly RepetitionFlag[] }): boolean =>
  unscoredReason(r.flags) !== undefined;

/** The rehearsal's value for a target, `null` where it was not taken. */
function targetValue(r: Rehearsal, measure: TargetMeasure): number | null {
  const value = measureValue(r, measure);
  return value !== null && Number.isFinite(value) ? value : null;
}

/**
 * Measures against the plan's targets, and the one cue: the first failed of hold, chest lead, lean, added
 * flexion, kept rotation, turn, catch. Heading drift is no reason not to score: all judged measures are
 * differences over about a second or depend on gravity alone.
 * @param warningStands while a warning stands, a cue to go faster or farther is passed over
 */
export function judgeRehearsal(rehearsal: Rehearsal, plan: Plan, warningStands = false): Verdict {
  const checks = TARGET_MEASURES.flatMap((m) => checkMeasure(rehearsal, m, plan.targets[m]));
  const reason = unscoredReason(rehearsal.flags) ?? missingReason(checks);
  if (reason !== undefined) return { passed: null, checks, cue: notScored(reason) };
  if (checks.some((c) => c.passed === false))
    return { passed: false, checks, cue: faultCue(checks, catchMissed(rehearsal), warningStands) };
  return { passed: true, checks, cue: goodCue(rehearsal.index) };
}

function unscoredReason(flags: readonly RepetitionFlag[]): Unscored | undefined {
  return flags.map((f) => UNSCORED[f]).find((reason) => reason !== undefined);
}

/** A missing measure leaves a repetition unscored only where nothing else failed. */
function missingReason(checks: readonly Check[]): Unscored | undefined {
  if (checks.some((c) => c.passed === false)) return undefined;
  const missing = checks.find((c) => c.passed === null);
  if (missing) return missing.measure;
  return checks.length === 0 ? 'targets' : undefined;
}

function checkMeasure(r: Rehearsal, measure: TargetMeasure, target: Target | null): Check[] {
  if (target === null) return [];
  const value = targetValue(r, measure);
  const missed = measure === 'releaseToCatchMs' && catchMissed(r);
  return [{ measure, value, target, passed: missed ? false : isWithin(value, target) }];
}

export function isWithin(value: number | null, target: Target): boolean | null {
  if (value === null) return null;
  return value >= (target.min ?? -Infinity) && value <= (target.max ?? Infinity);
}

function faultCue(checks: readonly Check[], missed: boolean, warningStands: boolean): Cue {
  const cues = checks.filter((c) => c.passed === false).map((c) => cueFor(c, missed));
  return cues.find((c) => !(warningStands && asksForMore(c))) ?? STAY_EASY;
}

function cueFor({ measure, value, target }: Check, missed: boolean): Cue {
  if (measure === 'releaseToCatchMs' && missed) return MISSED_CATCH;
  const below = value !== null && value < (target.min ?? -Infinity);
  if (measure === 'chestLeadMs' && below) return chestLeadCue(value);
  return below ? FAULT_CUES[measure].below : FAULT_CUES[measure].above;
}
