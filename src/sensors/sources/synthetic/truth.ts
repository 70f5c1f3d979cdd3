import type { TruthMeasures } from './measures.ts';
import type { DistractorKind, RehearsalFault } from './script.ts';

interface TruthBase {
  /** Backswing start, true time s. */
  readonly startS: number;
  /** Rehearsal: start of the hold. Ball and practice swing: turn reversal. */
  readonly topS: number;
  /** All movement of the repetition is over. */
  readonly endS: number;
  readonly measures: TruthMeasures;
}

interface TruthRehearsal extends TruthBase {
  readonly kind: 'rehearsal';
  readonly fault: RehearsalFault | null;
  /** From the top to the release. */
  readonly holdS: number;
  /** The club is let go: the earlier of chest and arm onset. */
  readonly clubReleaseS: number;
  /** Onset of the planned movement: the middle of the 40 ms over which muscles take it up. */
  readonly chestOnsetS: number;
  /** The arm starts relative to the chest. */
  readonly armOnsetS: number;
  /** Contact with the club; `null` where it lands. Without it measures are taken to 400 ms after the chest's onset. */
  readonly catchS: number | null;
  /** Peak of the catch's shock at the arm, m/s^2. */
  readonly shockMs2: number | null;
}

interface TruthBall extends TruthBase {
  readonly kind: 'ball';
  readonly carryOver: number;
  /** Peak rate of the chest's turn before impact. */
  readonly deliveryS: number;
  readonly impactS: number;
  readonly shockMs2: number;
}

interface TruthPracticeSwing extends TruthBase {
  readonly kind: 'practiceSwing';
  readonly deliveryS: number;
}

export type TruthRepetition = TruthRehearsal | TruthBall | TruthPracticeSwing;

export interface TruthDistractor {
  readonly kind: DistractorKind;
  readonly startS: number;
  readonly endS: number;
}
