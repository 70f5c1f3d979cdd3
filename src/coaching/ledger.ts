import type { Repetition } from '../swings/repetition.ts';
import type { Ledger } from './judgement.ts';
import { askedRatio, type Plan } from './plan.ts';

export type RepetitionKind = Repetition['kind'];
/** What a person says a repetition was. */
export type CorrectedKind = RepetitionKind | 'ignored';

/** What happened to the ledger, oldest first. Nothing is ever taken out: an undo is an entry too. */
type LedgerEvent =
  | { readonly type: 'detected'; readonly index: number; readonly kind: RepetitionKind }
  | { readonly type: 'corrected'; readonly index: number; readonly kind: CorrectedKind }
  | { readonly type: 'undone' };

/** Written in place: a long history costs no more with each entry. Plain data. */
export interface LedgerBook {
  readonly ratio: Plan['ratio'];
  readonly events: LedgerEvent[];
  /** Kind by the repetition's index. */
  readonly detected: Record<number, RepetitionKind>;
  /** The corrections of each repetition that stand, oldest first. */
  readonly said: Record<number, CorrectedKind[]>;
  /** Which repetition each correction that stands is of, oldest first. */
  readonly standing: number[];
}

/** One repetition as it stands after corrections. */
export interface LedgerEntry {
  readonly index: number;
  readonly detected: RepetitionKind;
  /** `null`: stands as detected. */
  readonly corrected: CorrectedKind | null;
  readonly kind: CorrectedKind;
  /** For a ball: it came after the asked number of rehearsals. `null` for all else. */
  readonly inMix: boolean | null;
}

export interface LedgerStatus {
  readonly next: 'rehearsal' | 'ball';
  /** How many of those before the other is due; `null` where the plan asks for no balls. */
  readonly toGo: number | null;
  /** The last entry is a ball that came too early. */
  readonly ballTooEarly: boolean;
}

export const emptyLedger = (plan: Pick<Plan, 'ratio' | 'stage'>): LedgerBook => ({
  ratio: askedRatio(plan),
  events: [],
  detected: {},
  said: {},
  standing: [],
});

/** A repetition was detected; one with the same index replaces the former (a closer look may change its kind). */
export function addToLedger(
  book: LedgerBook,
  { index, kind }: Pick<Repetition, 'index' | 'kind'>,
): LedgerBook {
  book.events.push({ type: 'detected', index, kind });
  book.detected[index] = kind;
  return book;
}

/** A person says what it was; the detected kind stays visible. */
export function correctLedger(book: LedgerBook, index: number, kind: CorrectedKind): LedgerBook {
  book.events.push({ type: 'corrected', index, kind });
  (book.said[index] ??= []).push(kind);
  book.standing.push(index);
  return book;
}

/** Takes back the latest correction that still stands; without one nothing changes. */
export function undoCorrection(book: LedgerBook): LedgerBook {
  const index = book.standing.pop();
  if (index === undefined) return book;
  book.events.push({ type: 'undone' });
  book.said[index]?.pop();
  return book;
}

export const canUndo = (book: LedgerBook): boolean => book.standing.length > 0;

/** All repetitions in the order of their index, practice swings and ignored ones among them. */
export function ledgerEntries(book: LedgerBook): readonly LedgerEntry[] {
  const mix = startMix();
  // whole numbers as keys come in ascending order
  return Object.entries(book.detected).map(([key, kind]) => {
    const index = Number(key);
    const corrected = book.said[index]?.at(-1) ?? null;
    const stands = corrected ?? kind;
    return {
      index,
      detected: kind,
      corrected,
      kind: stands,
      inMix: stepMix(mix, stands, book.ratio),
    };
  });
}

/** The present run of rehearsals, and of balls after it. */
interface Mix {
  rehearsals: number;
  balls: number;
}

const startMix = (): Mix => ({ rehearsals: 0, balls: 0 });

/**
 * Counts one entry. A ball is in the mix when at least the asked number of rehearsals came since the previous
 * run of balls, and the run is no longer than asked. Every attempt at a rehearsal counts, passed, failed or
 * not scored: the mix is about practice done, the verdict about its quality (a choice).
 */
function stepMix(mix: Mix, kind: CorrectedKind, ratio: Plan['ratio']): boolean | null {
  if (kind === 'ball') {
    mix.balls += 1;
    return mix.rehearsals >= ratio.rehearsals && mix.balls <= ratio.balls;
  }
  if (kind !== 'rehearsal') return null;
  if (mix.balls > 0) Object.assign(mix, startMix());
  mix.rehearsals += 1;
  return null;
}

/** Practice swings and ignored repetitions are not counted. */
export function ledgerOf(book: LedgerBook): Ledger {
  const counted = countedEntries(book);
  const balls = counted.filter((e) => e.kind === 'ball');
  const rehearsals = counted.length - balls.length;
  return {
    rehearsals,
    balls: balls.length,
    ratio: balls.length === 0 ? null : rehearsals / balls.length,
    ballsInMix: balls.filter((e) => e.inMix === true).length,
    entries: counted.map((e) => (e.kind === 'ball' ? 'b' : 'r')).join(''),
  };
}

const countedEntries = (book: LedgerBook): readonly LedgerEntry[] =>
  ledgerEntries(book).filter((e) => e.kind === 'rehearsal' || e.kind === 'ball');

export function ledgerStatus(book: LedgerBook): LedgerStatus {
  const counted = countedEntries(book);
  const mix = startMix();
  for (const e of counted) stepMix(mix, e.kind, book.ratio);
  const ballTooEarly = counted.at(-1)?.inMix === false;
  if (book.ratio.balls === 0) return { next: 'rehearsal', toGo: null, ballTooEarly };
  const ballsDue = mix.rehearsals >= book.ratio.rehearsals ? book.ratio.balls - mix.balls : 0;
  if (ballsDue > 0) return { next: 'ball', toGo: ballsDue, ballTooEarly };
  const done = mix.balls > 0 ? 0 : mix.rehearsals;
  return { next: 'rehearsal', toGo: book.ratio.rehearsals - done, ballTooEarly };
}

const count = (n: number, one: string): string => (n === 1 ? `one ${one}` : `${n} ${one}s`);

/** What comes next, for the screen and the voice. */
export function ledgerText(status: LedgerStatus): string {
  const { next, toGo, ballTooEarly } = status;
  if (toGo === null)
    return ballTooEarly ? 'No balls yet. Rehearsals only for now.' : 'Rehearsals only.';
  if (next === 'ball') return toGo === 1 ? 'Hit a ball.' : `Hit ${count(toGo, 'ball')}.`;
  const rehearsals = count(toGo, 'rehearsal');
  return ballTooEarly
    ? `That ball was too early. First ${rehearsals}.`
    : `${rehearsals.charAt(0).toUpperCase()}${rehearsals.slice(1)} to go.`;
}
