import type { Cue, CueCode } from './judgement.ts';
import type { TargetMeasure } from './plan.ts';

/** Arm and chest are said to start together when they are this close, ms. A choice of the design. */
export const TOGETHER_MS = 20;

const cue = (code: CueCode, text: string): Cue => ({ code, text });

/** What to change, by the measure that failed and the side of the band on which it lies. */
export const FAULT_CUES: Record<TargetMeasure, { readonly below: Cue; readonly above: Cue }> = {
  holdS: {
    below: cue('hold-longer', 'Hold longer at the top.'),
    above: cue('hold-shorter', 'Let go a little sooner.'),
  },
  chestLeadMs: {
    below: cue('chest-first', 'Let your chest start first.'),
    above: cue('arms-sooner', 'Let your arms follow sooner.'),
  },
  leanChangeDeg: {
    below: cue('keep-lean', 'Stay bent forward as you turn.'),
    above: cue('bend-less', 'Bend forward a little less.'),
  },
  addedFlexionDeg: {
    below: cue('bend-down', 'Bend your chest down more.'),
    above: cue('bend-less', 'Bend forward a little less.'),
  },
  keptRotationDeg: {
    below: cue('keep-arm-out', 'Keep your trail arm turned out.'),
    above: cue('arm-out-less', 'Turn your trail arm out less.'),
  },
  turnTowardTargetDeg: {
    below: cue('turn-through', 'Turn your chest through more.'),
    above: cue('turn-less', 'Turn your chest a little less.'),
  },
  releaseToCatchMs: {
    below: cue('catch-later', 'Let the club fall longer.'),
    above: cue('catch-sooner', 'Catch the club sooner.'),
  },
};

/** The chest's start is asked for in three ways: after, together with, or only just before the arms. */
export function chestLeadCue(leadMs: number): Cue {
  if (leadMs >= TOGETHER_MS) return cue('chest-first', 'Let your arms wait longer.');
  if (leadMs > -TOGETHER_MS) return cue('chest-first', 'Together. Let your chest start first.');
  return FAULT_CUES.chestLeadMs.below;
}

export const MISSED_CATCH = cue('missed-catch', 'Missed. Shorten the drop.');

/** Said instead of a cue that a standing warning forbids. */
export const STAY_EASY = cue('stay-easy', 'Easy now. Stay in comfort.');

const FASTER_OR_FARTHER: readonly CueCode[] = [
  'hold-shorter',
  'arms-sooner',
  'keep-lean',
  'bend-down',
  'keep-arm-out',
  'turn-through',
  'catch-sooner',
  'catch-later',
];

/** True for a cue to go faster or farther, which is never given while a warning stands. */
export const asksForMore = (c: Cue): boolean => FASTER_OR_FARTHER.includes(c.code);

const GOOD = ['Good, just like that.', 'That was right.', 'Yes, that is it.', 'Good. Keep that.'];

/** A short positive cue; varies by the repetition's index alone. */
export const goodCue = (index: number): Cue =>
  cue('good', GOOD[Math.abs(Math.trunc(index)) % GOOD.length] ?? 'Good.');

export const notScored = (why: string): Cue => cue('not-scored', `Not scored: ${why}.`);
