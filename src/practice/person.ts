import type { KnownFits } from '../body/recheck.ts';
import type { Stop } from './stops.ts';
import type { CountedSession } from '../coaching/notCounted.ts';
import type { OwnRange, Plan } from '../coaching/plan.ts';
import type { VolumeHistory } from '../coaching/warnings.ts';
import type { About } from './about.ts';
import type { PersonView } from './view.ts';

/** What is kept of one session. */
export interface PastSession {
  /** As the kept session is called; left out where it was not kept, or by an older version. */
  readonly sessionId?: string;
  /** ms since 1970, UTC. */
  readonly startedMs: number;
  /** Rehearsals and balls. */
  readonly repetitions: number;
  /** 0-10 */
  readonly painBefore: number;
  /** `null` where the session was never closed. */
  readonly painAfter: number | null;
  readonly note: string;
}

/** Which sensors a calibration belongs to. Plain data. */
export interface SensorIdentity {
  readonly kind: 'synthetic' | 'replay' | 'ble';
  readonly chest: string;
  readonly trailArm: string;
}

/** A calibration as it is kept for the next practice's re-check. */
export interface KeptCalibration {
  /** ms since 1970, UTC. */
  readonly madeMs: number;
  readonly hand: 'left' | 'right';
  readonly sensors: SensorIdentity;
  readonly fits: KnownFits;
}

/** What is known of the student from one session to the next. Plain data. */
export interface Person {
  readonly schema: 1;
  readonly historyConfirmed: boolean;
  readonly about?: About;
  readonly ownRange: OwnRange;
  /** The newest stop; left out before the first one. */
  readonly stop?: Stop;
  /** Left out before the first one. */
  readonly calibration?: KeptCalibration;
  /** Oldest first. */
  readonly sessions: readonly PastSession[];
}

export const NOBODY: Person = { schema: 1, historyConfirmed: false, ownRange: {}, sessions: [] };

export const MOST_SESSIONS = 1000;

const DAY_MS = 86_400_000;
const WEEK_MS = 7 * DAY_MS;
const WEEKS = 4;

/** Repetitions of sessions that began in [fromMs, toMs). */
const between = ({ sessions }: Person, fromMs: number, toMs: number): number =>
  sessions
    .filter((s) => s.startedMs >= fromMs && s.startedMs < toMs)
    .reduce((sum, s) => sum + s.repetitions, 0);

/** What was done before now; the weeks before this one only as far as there is a past. */
export function volumeHistory(person: Person, nowMs: number): VolumeHistory {
  const weekStartMs = nowMs - WEEK_MS;
  const firstMs = person.sessions[0]?.startedMs ?? nowMs;
  const weeksBefore = Array.from({ length: WEEKS }, (_, i) => weekStartMs - (WEEKS - i) * WEEK_MS)
    .filter((fromMs) => fromMs + WEEK_MS > firstMs)
    .map((fromMs) => between(person, fromMs, fromMs + WEEK_MS));
  return { thisWeek: between(person, weekStartMs, nowMs), weeksBefore };
}

/** As they are counted. */
export const countedSessions = ({ sessions }: Person): readonly CountedSession[] =>
  sessions.map(({ startedMs, repetitions }) => ({ startedMs, repetitions, notCounted: null }));

export function personView(person: Person): PersonView {
  const last = person.sessions.at(-1);
  return {
    firstUse: !person.historyConfirmed,
    about: person.about ?? {},
    ...(person.stop && { stop: person.stop }),
    painBefore: last?.painBefore ?? null,
    lastSession:
      last === undefined
        ? null
        : { startedMs: last.startedMs, repetitions: last.repetitions, note: last.note },
  };
}

/** The plan with the student's own comfortable range, where the plan has none of its own. */
export const planFor = (plan: Plan, person: Person): Plan => ({
  ...plan,
  ownRange: { ...person.ownRange, ...plan.ownRange },
});

/** A session has begun: it counts from now on, whatever becomes of it. */
export const withSession = (person: Person, session: PastSession): Person => ({
  ...person,
  historyConfirmed: true,
  sessions: [...person.sessions, session].slice(-MOST_SESSIONS),
});

/** How far the newest session is: known even where nobody ever closes it. */
export const withCount = (person: Person, repetitions: number): Person => ({
  ...person,
  sessions: person.sessions.map((session, i) =>
    i === person.sessions.length - 1 ? { ...session, repetitions } : session,
  ),
});

/** The note of a kept session as it is now. */
export interface SessionNote {
  readonly id: string;
  /** ms since 1970, UTC. */
  readonly startedMs: number;
  readonly note: string;
  readonly simulated: boolean;
}

/** A session without a name of its own is the one that began nearest, ms; a choice. */
const SAME_WITHIN_MS = 3_600_000;

/**
 * The person with a note that was edited on its session's page; the same person where the session is not known.
 * Ratings stay: a warning the next day goes by what was said at the time.
 */
export function withNote(person: Person, kept: SessionNote): Person {
  const { id, startedMs, note, simulated } = kept;
  const away = (session: PastSession): number => {
    if (session.sessionId !== undefined) return session.sessionId === id ? -1 : Infinity;
    return simulated ? Infinity : Math.abs(session.startedMs - startedMs);
  };
  const least = Math.min(...person.sessions.map(away), Infinity);
  if (least > SAME_WITHIN_MS) return person;
  const found = person.sessions.findLast((session) => away(session) === least);
  return {
    ...person,
    sessions: person.sessions.map((s) => (s === found ? { ...s, note } : s)),
  };
}

/** What became of the newest session. */
export const withEnd = (
  person: Person,
  end: Pick<PastSession, 'sessionId' | 'repetitions' | 'painAfter' | 'note'>,
  ownRange: OwnRange,
): Person => ({
  ...person,
  ownRange: { ...person.ownRange, ...ownRange },
  sessions: person.sessions.map((session, i) =>
    i === person.sessions.length - 1 ? { ...session, ...end } : session,
  ),
});
