/** What was written and not sent yet. */
export interface Draft {
  readonly value: unknown;
  /** When it was written last, epoch ms. */
  readonly atMs: number;
}

/** Drafts of one account, by what they are about. */
export interface Drafts {
  read(about: string): Draft | null;
  keep(about: string, value: unknown): void;
  drop(about: string): void;
}

/** The part of the browser's storage that is used here. */
export type DraftStorage = Pick<Storage, 'getItem' | 'setItem' | 'removeItem' | 'key' | 'length'>;

const PREFIX = 'stillcatch.draft/';
/** Older ones are removed: after two weeks nobody means to send them. A choice. */
const OLDEST_MS = 14 * 86_400_000;

function parsed(text: string | null): Draft | null {
  try {
    const { value, atMs } = JSON.parse(text ?? 'null') as Draft;
    return Number.isFinite(atMs) && value !== undefined ? { value, atMs } : null;
  } catch {
    return null;
  }
}

/** Of every account, so that nothing lies here for good. */
function removeOld(storage: DraftStorage, nowMs: number): void {
  const keys = Array.from({ length: storage.length }, (_, i) => storage.key(i) ?? '');
  for (const key of keys.filter((one) => one.startsWith(PREFIX))) {
    const draft = parsed(storage.getItem(key));
    if (draft === null || nowMs - draft.atMs > OLDEST_MS) storage.removeItem(key);
  }
}

/**
 * The drafts that this browser keeps for one account: another person who signs in on the same computer has others.
 * Where the browser keeps nothing (private windows, a full disk), they last as long as the page.
 */
export function draftsOf(account: string, storage: DraftStorage | null, now = Date.now): Drafts {
  const keyOf = (about: string): string => `${PREFIX}${encodeURIComponent(account)}/${about}`;
  const here = new Map<string, string>();
  const attempt = <T>(what: (kept: DraftStorage) => T): T | null => {
    try {
      return storage === null ? null : what(storage);
    } catch {
      return null;
    }
  };
  attempt((kept) => removeOld(kept, now()));
  return {
    read: (about) => {
      const key = keyOf(about);
      const draft = parsed(here.get(key) ?? attempt((kept) => kept.getItem(key)));
      return draft !== null && now() - draft.atMs <= OLDEST_MS ? draft : null;
    },
    keep: (about, value) => {
      const text = JSON.stringify({ value, atMs: now() });
      here.delete(keyOf(about));
      const kept = attempt((into) => {
        into.setItem(keyOf(about), text);
        return true;
      });
      if (kept === null) here.set(keyOf(about), text);
    },
    drop: (about) => {
      here.delete(keyOf(about));
      attempt((kept) => kept.removeItem(keyOf(about)));
    },
  };
}

function browserStorage(): DraftStorage | null {
  try {
    return localStorage;
  } catch {
    return null;
  }
}

const accounts = new Map<string, Drafts>();

/** The same for every part of the page. */
export function browserDrafts(account: string): Drafts {
  const drafts = accounts.get(account) ?? draftsOf(account, browserStorage());
  accounts.set(account, drafts);
  return drafts;
}
