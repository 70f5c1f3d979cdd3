import type { JudgedRepetition } from '../../../coaching/judgement.ts';
import type { Comment } from '../../../streaming/hubContract/review.ts';

/** A comment with what was answered to it, oldest first. */
export interface Thread {
  readonly root: Comment;
  readonly replies: readonly Comment[];
}

/** The comment that a thread begins with, however deep an answer lies. */
function rootOf(comment: Comment, byId: ReadonlyMap<string, Comment>): Comment {
  const above = comment.replyTo === null ? undefined : byId.get(comment.replyTo);
  return above === undefined || above.atMs > comment.atMs ? comment : rootOf(above, byId);
}

/** Threads by the time of their first comment; an answer to what is gone stands for itself. */
export function threadsOf(comments: readonly Comment[]): readonly Thread[] {
  const sorted = [...comments].sort((a, b) => a.atMs - b.atMs);
  const byId = new Map(sorted.map((c) => [c.id, c]));
  const threads = new Map<string, { root: Comment; replies: Comment[] }>();
  for (const comment of sorted) {
    const root = rootOf(comment, byId);
    if (root === comment) threads.set(comment.id, { root, replies: [] });
    else threads.get(root.id)?.replies.push(comment);
  }
  return [...threads.values()];
}

/** Around a repetition so much still belongs to it, s: what its curves show. */
const BEFORE_S = 1.5;
const AFTER_S = 1;

/** The repetition that is shown at a moment; `null` between repetitions. */
export const repetitionAt = (
  repetitions: readonly JudgedRepetition[],
  momentS: number,
): JudgedRepetition | null =>
  repetitions.find((r) => momentS >= r.startS && momentS <= r.endS) ??
  repetitions.find((r) => momentS >= r.startS - BEFORE_S && momentS <= r.endS + AFTER_S) ??
  null;

/** The repetition that a comment hangs on. */
export const pinOf = (
  { index, momentS }: Pick<Comment, 'index' | 'momentS'>,
  repetitions: readonly JudgedRepetition[],
): number | null =>
  index ?? (momentS === null ? null : (repetitionAt(repetitions, momentS)?.index ?? null));

/** How many comments hang on each repetition, answers included. */
export function commentCounts(
  threads: readonly Thread[],
  repetitions: readonly JudgedRepetition[],
): ReadonlyMap<number, number> {
  const counts = new Map<number, number>();
  for (const { root, replies } of threads) {
    const index = pinOf(root, repetitions);
    if (index !== null) counts.set(index, (counts.get(index) ?? 0) + 1 + replies.length);
  }
  return counts;
}
