import { chmodSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import type { Consent } from '../streaming/hubContract/coachLink.ts';
import type { Inbox, MachineComment } from '../streaming/hubContract/machine.ts';

/** What is known of a session at the hub. */
export interface SentMark {
  readonly state: 'sent' | 'refused';
  readonly atMs: number;
  readonly why: string | null;
  /** Names the notes that the hub has (`notesName`); left out: not known, so they are sent. */
  readonly notes?: string;
}

/** Everything about the connection with a coach that outlives the program. Plain data. */
export interface LinkState {
  readonly schema: 1;
  readonly connection: {
    readonly hubUrl: string;
    readonly token: string;
    readonly student: string;
    readonly coach: string;
    readonly club: string;
    readonly machine: string;
    readonly sinceMs: number;
  } | null;
  readonly consent: Consent | null;
  /** By the session's id. */
  readonly sessions: Readonly<Record<string, SentMark>>;
  readonly inbox: Inbox | null;
  readonly lastContactMs: number | null;
  readonly outbox: readonly (MachineComment & { readonly atMs: number })[];
  /** Ids of the coach's comments that have been looked at. */
  readonly seen: readonly string[];
  /** Version of the plan that the hub knows to have come. */
  readonly planSeen: string | null;
}

export const NOT_CONNECTED: LinkState = {
  schema: 1,
  connection: null,
  consent: null,
  sessions: {},
  inbox: null,
  lastContactMs: null,
  outbox: [],
  seen: [],
  planSeen: null,
};

export interface LinkFile {
  read(): LinkState;
  change(part: Partial<LinkState>): void;
}

/** One JSON file that nobody else may read: the token is in it. A broken one counts as not connected. */
export function linkFile(path: string, complain: (sentence: string) => void): LinkFile {
  let state = load(path, complain);
  return {
    read: () => state,
    change(part) {
      state = { ...state, ...part };
      try {
        mkdirSync(dirname(path), { recursive: true });
        writeFileSync(`${path}.new`, JSON.stringify(state), { mode: 0o600 });
        chmodSync(`${path}.new`, 0o600);
        renameSync(`${path}.new`, path);
      } catch (error) {
        complain(`${path} could not be written: ${String(error)}`);
      }
    },
  };
}

function load(path: string, complain: (sentence: string) => void): LinkState {
  let text: string;
  try {
    text = readFileSync(path, 'utf8');
  } catch {
    return NOT_CONNECTED;
  }
  try {
    const value = JSON.parse(text) as Partial<LinkState> | null;
    if (value?.schema === 1) return { ...NOT_CONNECTED, ...value };
  } catch {
    // said below
  }
  complain(`${path} is damaged: connect with your coach again.`);
  return NOT_CONNECTED;
}
