import { asksForMore } from './cues.ts';
import type { CarryOver, Cue, Ledger, SafetyWarning, WarningId } from './judgement.ts';
import type { Plan } from './plan.ts';

/** How often a thing to change was said. */
export interface CueCount {
  readonly cue: Cue;
  readonly count: number;
}

/** What the advice is drawn from. */
export interface PracticeFacts {
  readonly scored: number;
  readonly passed: number;
  /** Things to change, most frequent first. */
  readonly faults: readonly CueCount[];
  readonly mix: {
    readonly asked: Plan['ratio'];
    readonly ledger: Ledger;
    readonly kept: number | null;
  };
  readonly carryOver: CarryOver;
}

export interface NextStep {
  readonly code:
    | 'pain'
    | 'less'
    | 'smaller'
    | 'lower-drop'
    | 'too-little'
    | 'one-thing'
    | 'hit-balls'
    | 'keep-mix'
    | 'shorter-swings'
    | 'go-on'
    | 'same-again';
  readonly text: string;
}

/** With fewer scored rehearsals nothing is advised. This and the shares below are choices. */
export const ADVICE_FEWEST = 5;
const OFTEN = 0.25;
const MIX_KEPT = 0.8;
const MOSTLY = 0.8;
/** Less of the rehearsals' added flexion in the balls asks for shorter swings. */
export const CARRIED = 0.5;

const AFTER_WARNING: readonly (readonly [readonly WarningId[], NextStep])[] = [
  [
    ['red-flag', 'pain-high', 'pain-now', 'pain-next-day'],
    { code: 'pain', text: 'Pain comes first: follow the advice above before you practise again.' },
  ],
  [['volume'], { code: 'less', text: 'Do fewer repetitions next time.' }],
  [
    ['own-range', 'trunk-own-range'],
    { code: 'smaller', text: 'Make the movement smaller and stay inside your comfortable range.' },
  ],
  [['missed'], { code: 'lower-drop', text: 'Catch the club earlier or use a lighter club.' }],
];

/** One thing to do next time: safety first, then the commonest fault, then the mix, then the balls. */
export function nextStep(facts: PracticeFacts, warnings: readonly SafetyWarning[]): NextStep {
  return (
    AFTER_WARNING.find(([ids]) =>
      warnings.some((w) => ids.includes(w.id) && w.swingsOnly !== true),
    )?.[1] ??
    tooLittle(facts) ??
    oneThing(facts, warnings.length > 0) ??
    keepMix(facts) ??
    shorterSwings(facts) ??
    goOn(facts)
  );
}

function tooLittle({ scored }: PracticeFacts): NextStep | null {
  if (scored >= ADVICE_FEWEST) return null;
  const text = `Not enough data for advice: ${scored} of at least ${ADVICE_FEWEST} rehearsals could be scored.`;
  return { code: 'too-little', text };
}

function oneThing({ faults, scored }: PracticeFacts, warned: boolean): NextStep | null {
  const often = faults.find((f) => f.count / scored >= OFTEN && !(warned && asksForMore(f.cue)));
  if (!often) return null;
  const text = `One thing next time: ${often.cue.text} (${often.count} of ${scored} rehearsals)`;
  return { code: 'one-thing', text };
}

function keepMix({ mix }: PracticeFacts): NextStep | null {
  const { asked, kept } = mix;
  if (asked.balls === 0) return null;
  const words = `${asked.rehearsals} rehearsals, then ${asked.balls === 1 ? 'a ball' : `${asked.balls} balls`}`;
  if (kept === null) return { code: 'hit-balls', text: `Hit balls in between: ${words}.` };
  return kept < MIX_KEPT ? { code: 'keep-mix', text: `Follow the mix: ${words}.` } : null;
}

function shorterSwings({ carryOver }: PracticeFacts): NextStep | null {
  if (carryOver.addedFlexion === null || carryOver.addedFlexion >= CARRIED) return null;
  const text =
    'Your balls show less than half of the added bend of your rehearsals. Try shorter swings.';
  return { code: 'shorter-swings', text };
}

const goOn = ({ passed, scored }: PracticeFacts): NextStep =>
  passed / scored >= MOSTLY
    ? { code: 'go-on', text: 'Most rehearsals were right. Continue with the plan.' }
    : { code: 'same-again', text: 'No single fault stands out. Practise the same plan again.' };
