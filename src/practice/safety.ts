import type { SafetyWarning } from '../coaching/judgement.ts';
import { type PainSign, SAFETY_TEXTS } from '../coaching/safetyTexts.ts';
import { painNextDayWarning, painWarning, startWarnings } from '../coaching/warnings.ts';

/** What the person says before a session. */
export interface SafetyAnswers {
  readonly clubConfirmed: boolean;
  readonly historyConfirmed: boolean;
  readonly warmedUp: boolean;
  readonly redFlag: boolean;
  /** 0-10; may be `null` with a red flag, which asks for nothing more. */
  readonly pain: number | null;
  readonly signs: readonly PainSign[];
}

export type SafetyOutcome =
  /** The session may not start; why, gravest first. */
  | { readonly kind: 'stop'; readonly warnings: readonly SafetyWarning[] }
  /** Something must be confirmed first. */
  | { readonly kind: 'missing'; readonly warning: SafetyWarning }
  | { readonly kind: 'no-rating' }
  /** It may start; what is said along the way. */
  | { readonly kind: 'go'; readonly warnings: readonly SafetyWarning[] };

const MUST_CONFIRM: readonly SafetyWarning['id'][] = ['history', 'club'];

/**
 * @param painBefore rating at the start of the last session; `null` where there was none
 */
export function judgeSafety(answers: SafetyAnswers, painBefore: number | null): SafetyOutcome {
  const warnings = [...startWarnings(answers), ...ofPain(answers, painBefore)];
  const stops = warnings.filter((w) => SAFETY_TEXTS[w.id].endsSession);
  if (stops.length > 0) return { kind: 'stop', warnings: stops };
  if (answers.pain === null) return { kind: 'no-rating' };
  const missing = warnings.find((w) => MUST_CONFIRM.includes(w.id));
  return missing === undefined ? { kind: 'go', warnings } : { kind: 'missing', warning: missing };
}

const ofPain = (
  { pain: rating, signs }: SafetyAnswers,
  painBefore: number | null,
): readonly SafetyWarning[] =>
  rating === null
    ? []
    : [
        painWarning({ rating, signs, atStart: null, atS: 0 }),
        painNextDayWarning(rating, painBefore),
      ].filter((w) => w !== null);
