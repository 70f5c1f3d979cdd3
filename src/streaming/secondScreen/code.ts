import { randomInt } from 'node:crypto';
import { sameText } from '../secrets.ts';
import {
  CODE_DIGITS,
  CODE_HOLDS_S,
  CODE_TRIES,
  type CodeState,
  type CodeView,
} from '../secondScreenContract.ts';

/** A pairing code as it was shown, and what became of it. Plain data. */
export interface PairingCode {
  readonly digits: string;
  /** Monotonic, ms: setting the computer's clock makes no code live longer. */
  readonly untilMs: number;
  wrong: number;
  used: boolean;
}

/** One of a million, from the system's source of randomness. */
export const newPairingCode = (nowMs: number): PairingCode => ({
  digits: String(randomInt(10 ** CODE_DIGITS)).padStart(CODE_DIGITS, '0'),
  untilMs: nowMs + CODE_HOLDS_S * 1000,
  wrong: 0,
  used: false,
});

export function codeState(code: PairingCode, nowMs: number): CodeState {
  if (code.used) return 'used';
  if (code.wrong >= CODE_TRIES) return 'spent';
  return nowMs < code.untilMs ? 'waiting' : 'expired';
}

export function codeView(code: PairingCode, nowMs: number): CodeView {
  const state = codeState(code, nowMs);
  const waits = state === 'waiting';
  return {
    state,
    digits: waits ? code.digits : null,
    leftS: waits ? Math.ceil((code.untilMs - nowMs) / 1000) : 0,
  };
}

/**
 * Tries what was typed, with spaces anywhere. The right digits use the code up.
 * All wrong tries count together, so that asking from many addresses does not help.
 */
export function tryCode(code: PairingCode, typed: string, nowMs: number): 'right' | 'wrong' | 'no' {
  if (codeState(code, nowMs) !== 'waiting') return 'no';
  code.used = sameText(typed.replaceAll(/\s/g, ''), code.digits);
  if (code.used) return 'right';
  code.wrong += 1;
  return 'wrong';
}
