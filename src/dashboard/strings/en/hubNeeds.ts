import type { NeedCode } from '../../../coaching/attention.ts';
import { count } from './count.ts';
import { ago } from './hubShell.ts';

/** The coach's start: who needs a look and why. */
export const needs = {
  title: 'Who needs me',
  lead: (needing: number, all: number): string =>
    needing === 0
      ? `None of ${count(all, 'student')} needs a look now.`
      : `${needing} of ${count(all, 'student')} ${needing === 1 ? 'needs' : 'need'} a look.`,
  order: 'Pain and warnings come first, then sessions nobody looked at, then plans not kept.',
  names: {
    pain: 'Pain',
    warning: 'Warning',
    unreviewed: 'To review',
    unanswered: 'Not answered',
    mix: 'Mix not kept',
    volume: 'Volume',
    'no-practice': 'No practice',
    drift: 'Off target',
    none: 'All well',
  } satisfies Record<NeedCode, string>,
  filter: 'Show',
  all: 'All',
  search: 'Search by name',
  list: 'Students',
  keys: 'J and K walk, Enter opens, N goes to the next session to review, / searches.',
  week: (rehearsals: number, balls: number): string =>
    rehearsals + balls === 0
      ? 'nothing in 7 days'
      : `${count(rehearsals, 'rehearsal')}, ${count(balls, 'ball')} in 7 days`,
  last: (ms: number | null, nowMs: number): string =>
    ms === null ? 'has not practised yet' : `practised ${ago(ms, nowMs)}`,
  toReview: (n: number): string => (n === 1 ? 'Review 1 session' : `Review ${n} sessions`),
  reviewOf: (name: string): string => `next session of ${name}`,
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
