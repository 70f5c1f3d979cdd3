import type { NeedCode } from '../../../coaching/attention.ts';
import { count } from './count.ts';
import { ago, shortDay } from './hubShell.ts';

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
    mix: 'Mix not kept',
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
  keys: 'J and K walk, Enter opens the student, O the session, N the next session to review; / searches.',
  practised: 'Last practice:',
  last: (ms: number | null, nowMs: number): string => (ms === null ? 'never' : ago(ms, nowMs)),
  lastAndWeek: (ms: number | null, rehearsals: number, balls: number, nowMs: number): string =>
    `Last practice: ${ms === null ? 'never' : ago(ms, nowMs)}. In 7 days: ${
      rehearsals + balls === 0
        ? 'nothing'
        : `${count(rehearsals, 'rehearsal')}, ${count(balls, 'ball')}`
    }.`,
  on: (ms: number): string => `${shortDay(ms)}:`,
  quoted: (text: string): string => `“${text}”`,
  also: (need: string, text: string): string => `Also ${need}: ${text}`,
  open: 'Open session',
  answer: 'Answer',
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
    why: 'It stays first in your list until a later session is free of pain, or until you close it here. Later pain opens it again. The student can read the reason in their export.',
    reason: 'Why it is dealt with',
    go: 'Close it',
    session: 'To the session',
    history: 'Closed pain',
    line: (upToMs: number, by: string, atMs: number): string =>
      `Sessions up to ${shortDay(upToMs)}, closed by ${by} on ${shortDay(atMs)}:`,
    reopened: (ms: number): string => `Opened again ${shortDay(ms)}.`,
    reopen: 'Open again',
    reopenOf: (reason: string): string => `Open again: ${reason.slice(0, 40)}`,
  },
  nothingFound: 'Nobody fits. Change the name or the filter.',
  everyone: 'Show everyone',
  invite: {
    open: 'Invite a student',
    title: 'Invite a student',
    name: { student: "Student's name", coach: "Coach's name" },
    nameWhy: 'It can be changed on joining.',
    go: 'Make the invitation',
    ready: (name: string): string => `Give this to ${name}`,
    once: 'The link opens once and is shown only now. Send it yourself, or let it be scanned.',
    link: 'Link',
    scan: 'Link of the invitation, to scan',
    done: 'Done',
    another: 'Invite another',
  },
  empty: {
    title: 'No student yet',
    text: 'Invite the first: you get a link and a code to scan. Once the student has joined and paired a computer, each practice arrives here by itself.',
    mail: 'A student without an account? A session that came by mail (.zip) opens in your own Stillcatch under Sessions.',
  },
};
