import type { QrRows } from './hubContract/people.ts';

/** An address of this computer in a private network. */
export interface NetworkAddress {
  readonly address: string;
  readonly family: 4 | 6;
  /** The network card's name, as the system calls it. */
  readonly card: string;
}

/** A screen that was let in by its code. */
export interface PairedScreen {
  readonly id: string;
  /** From where it was paired. */
  readonly address: string;
  /** ms since 1970, UTC. */
  readonly pairedMs: number;
  /** It shows the practice now. */
  readonly watching: boolean;
}

/** `spent`: too many wrong tries. */
export type CodeState = 'waiting' | 'used' | 'expired' | 'spent';

export interface CodeView {
  readonly state: CodeState;
  /** Six digits; `null` where they are of no use any more. */
  readonly digits: string | null;
  /** s for which it still holds. */
  readonly leftS: number;
}

/** How the second screen stands: what the student's own page shows of it. */
export interface SecondScreenView {
  /** Where it could be switched on. Empty: this computer is in no private network. */
  readonly addresses: readonly NetworkAddress[];
  /** `null`: off; nothing listens. */
  readonly on: {
    readonly url: string;
    readonly qr: QrRows;
    readonly address: string;
    /** This computer still has the address. */
    readonly reachable: boolean;
    readonly code: CodeView;
    readonly screens: readonly PairedScreen[];
  } | null;
}

/** Codes of refusals that the second screen says in its own words. */
export type PairRefusal = 'wrong-code' | 'no-code';

export const CODE_DIGITS = 6;
export const CODE_HOLDS_S = 300;
/** Wrong codes that one code bears, from whatever addresses they come. */
export const CODE_TRIES = 5;
