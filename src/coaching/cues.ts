import type { SentenceBook } from '../sensors/sentence.ts';
import type { Cue, CueCode } from './judgement.ts';
import type { TargetMeasure } from './plan.ts';

/** Arm and chest are said to start together when they are this close, ms. A choice of the design. */
export const TOGETHER_MS = 20;

/** Every sentence that is said after a rehearsal; its key is its code, or begins with it where there are several. */
export const CUE_TEXTS = {
  'hold-longer': 'Hold longer at the top.',
  'hold-shorter': 'Let go a little sooner.',
  'chest-first': 'Let your chest start first.',
  'chest-first:together': 'Together. Let your chest start first.',
  'chest-first:wait': 'Let your arms wait longer.',
  'arms-sooner': 'Let your arms follow sooner.',
  'keep-lean': 'Stay in posture.',
  'bend-less': 'Bend forward a little less.',
  'bend-down': 'Bend your chest down more.',
  'keep-arm-out': 'Keep your trail arm rotated outward.',
  'arm-out-less': 'Rotate your trail arm outward less.',
  'turn-through': 'Turn your chest farther.',
  'turn-less': 'Turn your chest a little less.',
  'catch-later': 'Let the club fall longer.',
  'catch-sooner': 'Catch the club sooner.',
  'missed-catch': 'Missed. Catch it earlier.',
  'stay-easy': 'Take it easy. Stay comfortable.',
  good: 'Good, just like that.',
  'good:right': 'That was right.',
  'good:it': 'Yes, that is it.',
  'good:keep': 'Good. Keep that.',
  'not-scored:gap': 'Not scored: signal lost.',
  'not-scored:range': 'Not scored: sensor over range.',
  'not-scored:targets': 'Not scored: plan has no targets.',
  'not-scored:holdS': 'Not scored: hold not detected.',
  'not-scored:chestLeadMs': 'Not scored: arm start not detected.',
  'not-scored:leanChangeDeg': 'Not scored: lean not detected.',
  'not-scored:addedFlexionDeg': 'Not scored: bend not detected.',
  'not-scored:keptRotationDeg': 'Not scored: arm rotation not detected.',
  'not-scored:turnTowardTargetDeg': 'Not scored: turn not detected.',
  'not-scored:releaseToCatchMs': 'Not scored: catch not detected.',
} as const satisfies SentenceBook;

export type CueKey = keyof typeof CUE_TEXTS;

const cue = (key: CueKey): Cue => ({
  code: key.replace(/:.*$/, '') as CueCode,
  text: CUE_TEXTS[key],
});

/** What to change, by the measure that failed and the side of the band on which it lies. */
export const FAULT_CUES: Record<TargetMeasure, { readonly below: Cue; readonly above: Cue }> = {
  holdS: { below: cue('hold-longer'), above: cue('hold-shorter') },
  chestLeadMs: { below: cue('chest-first'), above: cue('arms-sooner') },
  leanChangeDeg: { below: cue('keep-lean'), above: cue('bend-less') },
  addedFlexionDeg: { below: cue('bend-down'), above: cue('bend-less') },
  keptRotationDeg: { below: cue('keep-arm-out'), above: cue('arm-out-less') },
  turnTowardTargetDeg: { below: cue('turn-through'), above: cue('turn-less') },
  releaseToCatchMs: { below: cue('catch-later'), above: cue('catch-sooner') },
};

/** The chest's start is asked for in three ways: after, together with, or only just before the arms. */
export function chestLeadCue(leadMs: number): Cue {
  if (leadMs >= TOGETHER_MS) return cue('chest-first:wait');
  if (leadMs > -TOGETHER_MS) return cue('chest-first:together');
  return FAULT_CUES.chestLeadMs.below;
}

export const MISSED_CATCH = cue('missed-catch');

/** Said instead of a cue that a standing warning forbids. */
export const STAY_EASY = cue('stay-easy');

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

const GOOD = ['good', 'good:right', 'good:it', 'good:keep'] as const;

/** A short positive cue; varies by the repetition's index alone. */
export const goodCue = (index: number): Cue =>
  cue(GOOD[Math.abs(Math.trunc(index)) % GOOD.length] ?? 'good');

/** Why a rehearsal was not scored: lost samples, a sensor over its range, nothing asked, or a measure not seen. */
export type Unscored = 'gap' | 'range' | 'targets' | TargetMeasure;

export const notScored = (why: Unscored): Cue => cue(`not-scored:${why}`);
