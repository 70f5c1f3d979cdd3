import type { NeedCode } from '../../../coaching/attention.ts';
import { unknownSessions } from '../../../coaching/notCounted.ts';
import type { StudentRow } from '../../../streaming/hubContract/students.ts';
import { count } from './count.ts';
import { ago, shortDay } from './hubShell.ts';

type Practised = Pick<
  StudentRow,
  'lastPracticeMs' | 'simulatedSessions' | 'weekRehearsals' | 'weekBalls' | 'weekNotCounted'
>;

function last({ lastPracticeMs, simulatedSessions }: Practised, nowMs: number): string {
  if (lastPracticeMs !== null) return ago(lastPracticeMs, nowMs);
  return simulatedSessions > 0 ? 'only simulated' : 'never';
}

function weekText({ weekRehearsals, weekBalls, weekNotCounted }: Practised): string {
  if (weekRehearsals + weekBalls > 0)
    return `${count(weekRehearsals, 'rehearsal')}, ${count(weekBalls, 'ball')}`;
  return unknownSessions(weekNotCounted) > 0 ? 'not counted yet' : 'nothing';
}

/** The coach's start: who needs a look and why. */
export const needs = {
  title: 'Who needs me',
  lead: (needing: number, all: number): string =>
    needing === 0
      ? `None of ${count(all, 'student')} needs you now.`
      : `${needing} of ${count(all, 'student')} ${needing === 1 ? 'needs' : 'need'} you.`,
  groups: { coach: 'Need you', small: 'Small things', well: 'All well' },
  names: {
    pain: 'Pain',
    warning: 'Warning',
    unreviewed: 'To review',
    unanswered: 'Question',
    mix: 'Mix',
    volume: 'Volume',
    'no-practice': 'No practice',
    drift: 'Off target',
    'seen-warning': 'Seen warning',
    none: 'All well',
  } satisfies Record<NeedCode, string>,
  filter: 'Show',
  all: 'All',
  search: 'Search by name',
  list: 'Students',
  keys: 'J and K: move. Enter: open student. O: open session. N: next to review. /: search.',
  practised: 'Last practice:',
  last,
  lastAndWeek: (s: Practised, nowMs: number): string =>
    `Last practice: ${last(s, nowMs)}. In 7 days: ${weekText(s)}.`,
  on: (ms: number): string => `${shortDay(ms)}:`,
  quoted: (text: string): string => `“${text}”`,
  also: (need: string, text: string): string => `Also ${need}: ${text}`,
  open: 'Open session',
  answer: 'Reply',
  toReview: (n: number): string => `Review ${n}`,
  calm: {
    mark: (n: number): string => `Mark ${count(n, 'calm session')} as reviewed`,
    why: 'Sessions without pain, warning or question, of students with nothing open.',
    done: (n: number): string => `${count(n, 'session')} marked as reviewed.`,
    undo: 'Undo',
  },
  pain: {
    open: 'Open pain',
    close: 'Close with a reason',
    title: (name: string): string => `Close the pain of ${name}?`,
    why: 'It stays first in your list until a later session is free of pain, or until you close it here. New pain reopens it. The student can read the reason in their export.',
    reason: 'Reason',
    go: 'Close',
    session: 'Open session',
    history: 'Closed pain',
    line: (upToMs: number, by: string, atMs: number): string =>
      `Sessions up to ${shortDay(upToMs)}, closed by ${by} on ${shortDay(atMs)}:`,
    reopened: (ms: number): string => `Reopened ${shortDay(ms)}.`,
    reopen: 'Reopen',
    reopenOf: (reason: string): string => `Reopen: ${reason.slice(0, 40)}`,
  },
  nothingFound: 'No matches. Change the name or the filter.',
  everyone: 'Show everyone',
  invite: {
    open: 'Invite a student',
    title: 'Invite a student',
    name: { student: "Student's name", coach: "Coach's name" },
    nameWhy: 'Can be changed when joining.',
    go: 'Create invitation',
    ready: (name: string): string => `Send this to ${name}`,
    once: 'The link works once and is shown only now. Send it yourself, or have it scanned.',
    reach: {
      'this-computer': {
        what: 'This link opens on this computer only.',
        mend: 'For students elsewhere, stop the hub and start it with its address on the internet (--url https://…), or, for your own network, with --host and --url. Then make a new invitation.',
      },
      'own-network': {
        what: 'This link opens in your own network only.',
        mend: 'For students elsewhere, stop the hub and start it with its address on the internet (--url https://…). Then make a new invitation.',
      },
    },
    link: 'Link',
    scan: 'QR code of the invitation link',
    done: 'Done',
    another: 'Invite another',
  },
  empty: {
    title: 'No students yet',
    text: 'Invite your first student: you get a link and a QR code. Once the student has joined and paired a computer, each practice arrives here automatically.',
    mail: 'A student without an account? A session that came by mail (.zip) opens in your own Stillcatch under Sessions.',
  },
};
