/** Each fails one measure of the default plan and no other. */
const REHEARSAL_FAULTS = [
  'short-hold',
  'arms-first',
  'losing-lean',
  'losing-rotation',
  'missed-catch',
] as const;
export type RehearsalFault = (typeof REHEARSAL_FAULTS)[number];

/** Movements that are not repetitions. */
const DISTRACTORS = ['walk', 'tee', 'abort', 'waggle', 'idle', 'taps', 'takeoff'] as const;
export type DistractorKind = (typeof DISTRACTORS)[number];

export type ScriptToken =
  | { readonly kind: 'rehearsal'; readonly fault: RehearsalFault | null }
  /** `carryOver`: the ball's added flexion and kept rotation as a part of the rehearsals'. */
  | { readonly kind: 'ball'; readonly carryOver: number }
  | { readonly kind: 'practiceSwing' }
  /** `seconds` only for `idle`; `null` lets the generator choose. */
  | { readonly kind: DistractorKind; readonly seconds: number | null };

/** The script cannot be played. `position` counts characters from 1, `token` words from 1. */
export class ScriptError extends Error {
  readonly code = 'script';
  readonly position: number;
  readonly token: number;

  constructor(message: string, position: number, token: number) {
    super(`script, character ${position} (word ${token}): ${message}`);
    this.name = 'ScriptError';
    this.position = position;
    this.token = token;
  }
}

const WORDS = `r, ${REHEARSAL_FAULTS.map((f) => `r:${f}`).join(', ')}, b, b:0.6, p, ${DISTRACTORS.join(', ')}, idle:10`;
const MOST_REPEATS = 1000;
const DEFAULT_CARRY_OVER = 0.7;

/** Throws what is wrong in one sentence; the caller adds the place. */
function readWord(name: string, argument: string | undefined): ScriptToken {
  if (name === 'r') return { kind: 'rehearsal', fault: readFault(argument) };
  if (name === 'b') return { kind: 'ball', carryOver: readCarryOver(argument) };
  const distractor = DISTRACTORS.find((d) => d === name);
  if (distractor === 'idle') return { kind: 'idle', seconds: readSeconds(argument) };
  if (argument !== undefined && (name === 'p' || distractor)) {
    throw new Error(`"${name}" takes nothing after a colon`);
  }
  if (name === 'p') return { kind: 'practiceSwing' };
  if (distractor) return { kind: distractor, seconds: null };
  throw new Error(`unknown word "${name}"; known are ${WORDS}`);
}

function readFault(argument: string | undefined): RehearsalFault | null {
  if (argument === undefined) return null;
  const fault = REHEARSAL_FAULTS.find((f) => f === argument);
  if (!fault) {
    throw new Error(`unknown fault "${argument}"; known are ${REHEARSAL_FAULTS.join(', ')}`);
  }
  return fault;
}

function readNumber(argument: string, low: number, high: number, what: string): number {
  const value = /^\d+(\.\d+)?$/.test(argument) ? Number(argument) : NaN;
  if (!(value >= low && value <= high)) {
    throw new Error(`${what} must be a number from ${low} to ${high}, not "${argument}"`);
  }
  return value;
}

const readCarryOver = (argument: string | undefined): number =>
  argument === undefined
    ? DEFAULT_CARRY_OVER
    : readNumber(argument, 0, 1.5, 'carry-over of a ball');

const readSeconds = (argument: string | undefined): number | null =>
  argument === undefined ? null : readNumber(argument, 1, 600, 'idle seconds');

function readRepeats(text: string | undefined): number {
  if (text === undefined) return 1;
  const value = readNumber(text, 1, MOST_REPEATS, 'a repeat count');
  if (!Number.isInteger(value)) throw new Error(`a repeat count must be whole, not "${text}"`);
  return value;
}

/**
 * Reads a session's script: words separated by blanks or commas.
 *
 * | word | what the golfer does |
 * | --- | --- |
 * | `r` | a good rehearsal |
 * | `r:short-hold` `r:arms-first` `r:losing-lean` `r:losing-rotation` `r:missed-catch` | a rehearsal with that fault alone |
 * | `b` `b:0.6` | a ball; the number is the part of the rehearsals' added flexion and kept rotation that it shows (0 to 1.5, else 0.7) |
 * | `p` | a practice swing, no ball |
 * | `walk` `tee` `abort` `waggle` | walks off and back; bends to tee a ball; lowers the club calmly from a hold; fidgets at address |
 * | `idle` `idle:20` | stands about (1 to 600 s) |
 * | `taps` | taps the chest sensor twice with a finger |
 * | `takeoff` | takes the sensors off and puts them on a table; only as the last word |
 *
 * `*n` repeats a word: `r*4 b`.
 * @throws ScriptError naming the place.
 */
export function parseScript(script: string): ScriptToken[] {
  const tokens: ScriptToken[] = [];
  const words = [...script.matchAll(/[^\s,]+/g)];
  words.forEach((match, i) => {
    const place = [match.index + 1, i + 1] as const;
    const parts = /^([^:*]*)(?::([^*]*))?(?:\*(.*))?$/.exec(match[0]);
    try {
      const word = readWord(parts?.[1] ?? match[0], parts?.[2]);
      const repeats = readRepeats(parts?.[3]);
      if (word.kind === 'takeoff' && (i < words.length - 1 || repeats > 1)) {
        throw new Error('"takeoff" ends a session, so nothing may follow it');
      }
      for (let n = 0; n < repeats; n++) tokens.push(word);
    } catch (error) {
      throw new ScriptError((error as Error).message, ...place);
    }
  });
  return tokens;
}
