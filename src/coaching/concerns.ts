import type { WarningId } from './judgement.ts';

/** Warnings of pain: they stay open until a later session is free of pain or the coach closes it. */
export const PAIN_WARNINGS = [
  'red-flag',
  'pain-high',
  'pain-now',
  'pain-next-day',
] as const satisfies readonly WarningId[];

/** Bands of the pain-monitoring model, as the warnings have them: 4 of 10, or 2 more than before. */
export const PAIN_FROM = 4;
export const PAIN_RISE = 2;

/** What one analysed session says of pain and warnings. Times are epoch ms. */
export interface SessionSigns {
  readonly sessionId: string;
  readonly startedMs: number;
  readonly receivedMs: number;
  readonly reviewed: boolean;
  /** Done under the plan that is valid now. */
  readonly underPlan: boolean;
  /** 0-10, `null` where it was not asked. */
  readonly painBefore: number | null;
  readonly painAfter: number | null;
  readonly warnings: readonly WarningId[];
}

/** Starts of the newest sessions without any sign, which need not be among the `SessionSigns`. */
export interface QuietSince {
  /** Pain was rated, and low. */
  readonly painFreeMs: number | null;
  /** Reviewed, under the plan that is valid now. */
  readonly reviewedMs: number | null;
}

/** A coach closed the pain of all sessions up to `throughMs` that had come by `atMs`. */
export interface PainClosed {
  readonly throughMs: number;
  readonly atMs: number;
}

export interface OpenPain {
  readonly sessionId: string;
  readonly startedMs: number;
  /** The gravest pain warning of the session; `null` where the rating alone shows it. */
  readonly warning: WarningId | null;
  readonly rating: number | null;
  /** Open sessions with pain, this one among them. */
  readonly sessions: number;
}

const highest = ({ painBefore, painAfter }: SessionSigns): number | null =>
  painBefore === null && painAfter === null ? null : Math.max(painBefore ?? 0, painAfter ?? 0);

const painWarningOf = ({ warnings }: SessionSigns): WarningId | null =>
  PAIN_WARNINGS.find((id) => warnings.includes(id)) ?? null;

function isPainful(signs: SessionSigns): boolean {
  const { painBefore, painAfter } = signs;
  const rise = painBefore === null || painAfter === null ? 0 : painAfter - painBefore;
  return painWarningOf(signs) !== null || (highest(signs) ?? 0) >= PAIN_FROM || rise >= PAIN_RISE;
}

const newestOf = (ms: readonly number[], atLeast: number | null): number =>
  Math.max(atLeast ?? -Infinity, ...ms);

/**
 * Pain that nobody has dealt with. It ends with a later session in which pain was rated and was low, or with the
 * coach's word; a session in which nobody asked says nothing. @param signs in any order
 */
export function openPain(
  signs: readonly SessionSigns[],
  quiet: QuietSince,
  closed: readonly PainClosed[],
): OpenPain | null {
  const free = signs.filter((s) => highest(s) !== null && !isPainful(s));
  const freeMs = newestOf(
    free.map((s) => s.startedMs),
    quiet.painFreeMs,
  );
  const isClosed = (s: SessionSigns): boolean =>
    closed.some(({ throughMs, atMs }) => s.startedMs <= throughMs && s.receivedMs <= atMs);
  const open = signs
    .filter((s) => isPainful(s) && s.startedMs > freeMs && !isClosed(s))
    .sort((a, b) => b.startedMs - a.startedMs);
  const [newest] = open;
  if (newest === undefined) return null;
  const { sessionId, startedMs } = newest;
  const [warning, rating] = [painWarningOf(newest), highest(newest)];
  return { sessionId, startedMs, warning, rating, sessions: open.length };
}

export interface OpenWarning {
  readonly id: WarningId;
  readonly sessionId: string;
  readonly startedMs: number;
  /** The session was reviewed; the warning stays in view until the next one shows that it is gone. */
  readonly seen: boolean;
}

/**
 * Warnings other than pain that have not faded, one of each kind, newest first. One fades with a later session that
 * was reviewed, done under the plan of now and is without it.
 */
export function openWarnings(
  signs: readonly SessionSigns[],
  quiet: Pick<QuietSince, 'reviewedMs'>,
): readonly OpenWarning[] {
  const ids = new Set(signs.flatMap((s) => s.warnings));
  for (const id of PAIN_WARNINGS) ids.delete(id);
  const newestFirst = [...signs].sort((a, b) => b.startedMs - a.startedMs);
  return [...ids]
    .flatMap((id) => {
      const without = signs.filter((s) => s.reviewed && s.underPlan && !s.warnings.includes(id));
      const fadedMs = newestOf(
        without.map((s) => s.startedMs),
        quiet.reviewedMs,
      );
      const open = newestFirst.filter((s) => s.warnings.includes(id) && s.startedMs > fadedMs);
      const shown = open.find((s) => !s.reviewed) ?? open[0];
      if (shown === undefined) return [];
      const { sessionId, startedMs, reviewed } = shown;
      return [{ id, sessionId, startedMs, seen: reviewed }];
    })
    .sort((a, b) => b.startedMs - a.startedMs);
}
