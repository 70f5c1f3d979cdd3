import { type Origin, countsAsPractice } from './countsAsPractice.ts';

/**
 * Why a session that is listed is in no count. `recording`: under way. `analysing`: recorded, its repetitions are not
 * known yet. `failed`: it could not be analysed. `simulated`: nobody practised.
 */
export const NOT_COUNTED = ['recording', 'analysing', 'failed', 'simulated'] as const;
export type NotCounted = (typeof NOT_COUNTED)[number];

/** How many sessions are not counted, by why. */
export type NotCountedCounts = Readonly<Record<NotCounted, number>>;

export const ALL_COUNTED: NotCountedCounts = {
  recording: 0,
  analysing: 0,
  failed: 0,
  simulated: 0,
};

/** What is known of a session before its numbers are. */
export interface Analysis {
  readonly recording: boolean;
  readonly analysed: boolean;
  /** Why it could not be analysed, in words. */
  readonly problem: string | null;
}

export type AnalysisProgress = 'analysed' | Exclude<NotCounted, 'simulated'>;

/** How far a session's numbers are; a problem of a later analysis takes nothing from what is there. */
export function progressOf(session: Analysis): AnalysisProgress {
  if (session.analysed) return 'analysed';
  if (session.recording) return 'recording';
  return session.problem === null ? 'analysing' : 'failed';
}

/** `null` where the session is counted. A simulated one never will be, however far its analysis is. */
export function whyNotCounted(
  session: Analysis & Origin,
  demonstration = false,
): NotCounted | null {
  if (!countsAsPractice(session, demonstration)) return 'simulated';
  const progress = progressOf(session);
  return progress === 'analysed' ? null : progress;
}

/** A session that is in no count. */
export interface UncountedSession {
  /** Epoch ms. */
  readonly startedMs: number;
  readonly notCounted: NotCounted;
}

/** A session with its repetitions (rehearsals and balls), which mean something only where it is counted. */
export interface CountedSession {
  /** Epoch ms. */
  readonly startedMs: number;
  readonly notCounted: NotCounted | null;
  readonly repetitions: number;
}

/** What was done in a time, and what of that time is in no count. */
export interface PracticeCounts {
  readonly sessions: number;
  readonly repetitions: number;
  readonly notCounted: NotCountedCounts;
}

/** As they are counted: not at all. */
export const uncounted = (sessions: readonly UncountedSession[]): readonly CountedSession[] =>
  sessions.map((s) => ({ ...s, repetitions: 0 }));

export const NOTHING_DONE: PracticeCounts = {
  sessions: 0,
  repetitions: 0,
  notCounted: ALL_COUNTED,
};

/** Of the sessions that began after `afterMs` (epoch), and not after `untilMs`. */
export function practiceCounts(
  sessions: readonly CountedSession[],
  afterMs = -Infinity,
  untilMs = Infinity,
): PracticeCounts {
  const within = sessions.filter((s) => s.startedMs > afterMs && s.startedMs <= untilMs);
  const counted = within.filter((s) => s.notCounted === null);
  const number = (why: NotCounted): number => within.filter((s) => s.notCounted === why).length;
  return {
    sessions: counted.length,
    repetitions: counted.reduce((sum, s) => sum + s.repetitions, 0),
    notCounted: {
      recording: number('recording'),
      analysing: number('analysing'),
      failed: number('failed'),
      simulated: number('simulated'),
    },
  };
}

const WEEK_MS = 7 * 86_400_000;

/** Of the seven days that end with `atMs` (epoch). */
export const weekCounts = (sessions: readonly CountedSession[], atMs: number): PracticeCounts =>
  practiceCounts(sessions, atMs - WEEK_MS, atMs);

/** Sessions of practice whose repetitions are not known: the sum is a lower bound as long as there are any. */
export const unknownSessions = ({ recording, analysing, failed }: NotCountedCounts): number =>
  recording + analysing + failed;

/**
 * What may be said of a time. `counted`: the number of repetitions, even 0. `unknown`: somebody practised, no number
 * yet. `simulated`: only simulated sessions. `none`: nothing.
 */
export type Standing = 'counted' | 'unknown' | 'simulated' | 'none';

export function standingOf({ sessions, notCounted }: PracticeCounts): Standing {
  if (sessions > 0) return 'counted';
  if (unknownSessions(notCounted) > 0) return 'unknown';
  return notCounted.simulated > 0 ? 'simulated' : 'none';
}

/** The newest session of practice, counted or not; a simulated one is none. @param sessions in any order */
export const lastPractice = <S extends CountedSession>(sessions: readonly S[]): S | null =>
  sessions
    .filter((s) => s.notCounted !== 'simulated')
    .reduce<S | null>((a, b) => (a === null || b.startedMs > a.startedMs ? b : a), null);
