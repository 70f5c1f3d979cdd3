/** Flags are 0 and 1, times epoch ms or session s as named, JSON is text. */
export interface SessionTable {
  /** Letters and digits; the name of its folder too. */
  id: string;
  name: string;
  subject: string;
  hand: 'left' | 'right';
  simulated: number;
  /** Epoch ms; what the list is sorted by. */
  startedMs: number;
  durationS: number | null;
  state: SessionState;
  /** Epoch ms; `null` while it is not deleted. */
  deletedMs: number | null;
  /** 1 once results are in the other tables. */
  analysed: number;
  /** Why it could not be analysed, in words; `null` otherwise. */
  problem: string | null;
  rehearsals: number;
  scored: number;
  passed: number;
  balls: number;
  ballsInMix: number;
  ledger: string;
  painBefore: number | null;
  painAfter: number | null;
  note: string;
  plan: string;
  /** JSON of `MeasureSpreads`. */
  spreads: string;
}

/**
 * `running`: being recorded now. `complete`: ended as meant. `interrupted`: the program or machine
 * stopped meanwhile; all that was synced is there. `unread`: its folder was found without an entry in
 * the index; the recovery will read it.
 */
export type SessionState = 'running' | 'complete' | 'interrupted' | 'unread';

interface RepetitionTable {
  sessionId: string;
  position: number;
  kind: string;
  atS: number;
  /** `null`: not scored, or not a rehearsal. */
  passed: number | null;
  /** JSON of the judged repetition. */
  judged: string;
}

interface WarningTable {
  sessionId: string;
  position: number;
  warningId: string;
  atS: number;
  text: string;
}

export interface IndexTables {
  session: SessionTable;
  repetition: RepetitionTable;
  warning: WarningTable;
}
