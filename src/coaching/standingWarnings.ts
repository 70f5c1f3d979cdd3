import type { SafetyWarning, WarningId } from './judgement.ts';

/** A warning as it is kept with the session. */
export interface KeptWarning extends SafetyWarning {
  /** Session s; `null` while it stands. */
  readonly acknowledgedAtS: number | null;
}

export type WarningAction =
  | { readonly type: 'raised'; readonly warning: SafetyWarning }
  | { readonly type: 'acknowledged'; readonly id: WarningId; readonly atS: number };

/** All warnings of a session, oldest first. A warning that still stands is not raised twice; once acknowledged it may come again. */
export function stepWarnings(
  kept: readonly KeptWarning[],
  action: WarningAction,
): readonly KeptWarning[] {
  if (action.type === 'raised') {
    const { id, times, lastS = action.warning.atS } = action.warning;
    const standing = kept.find((w) => w.id === id && isStanding(w));
    // A warning that is raised again after it was acknowledged is a new one, with the count of all.
    if (standing === undefined)
      return [...kept, { ...action.warning, atS: lastS, acknowledgedAtS: null }];
    return times === undefined
      ? kept
      : kept.map((w) => (w === standing ? { ...w, times, lastS } : w));
  }
  return kept.map((w) =>
    w.id === action.id && isStanding(w) ? { ...w, acknowledgedAtS: action.atS } : w,
  );
}

const isStanding = (w: KeptWarning): boolean => w.acknowledgedAtS === null;

export const standingWarnings = (kept: readonly KeptWarning[]): readonly KeptWarning[] =>
  kept.filter(isStanding);
