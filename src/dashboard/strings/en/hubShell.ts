const DAY_MS = 86_400_000;

export const day = (ms: number): string =>
  new Date(ms).toLocaleDateString('en-GB', { dateStyle: 'medium' });

/** With the year only where it is another one than now. */
export const shortDay = (ms: number): string => {
  const year =
    new Date(ms).getFullYear() === new Date().getFullYear() ? {} : { year: 'numeric' as const };
  return new Date(ms).toLocaleDateString('en-GB', { day: 'numeric', month: 'short', ...year });
};

export const moment = (ms: number): string =>
  new Date(ms).toLocaleString('en-GB', { dateStyle: 'medium', timeStyle: 'short' });

/** Whole calendar days between two times, where the reader is. */
function daysBetween(fromMs: number, toMs: number): number {
  const midnight = (ms: number): number => new Date(ms).setHours(0, 0, 0, 0);
  return Math.round((midnight(toMs) - midnight(fromMs)) / DAY_MS);
}

/** A day as people say it. */
export function ago(ms: number, nowMs: number): string {
  const days = daysBetween(ms, nowMs);
  if (days <= 0) return 'today';
  if (days === 1) return 'yesterday';
  return days < 30 ? `${days} days ago` : day(ms);
}

/** Around every page of the hub. */
export const shell = {
  title: (page: string): string => `${page} · Stillcatch`,
  skip: 'Skip to content',
  pages: 'Pages',
  nav: {
    home: { coach: 'Who needs me', student: 'My practice' },
    texts: 'Texts and templates',
    club: 'Club',
    pairing: 'Pair a computer',
    safety: 'Safety',
    help: 'Help',
    account: 'Account',
  },
  demo: 'Demo club',
  demoWhy: 'Invented people; their sessions are simulated.',
  settings: 'More',
  signedInAs: (name: string): string => `Signed in as ${name}`,
  signOut: 'Sign out',
  keyList: {
    student: [['C', 'write a comment']],
    coach: [
      ['/', 'search the students'],
      ['J K', 'next, previous student'],
      ['Enter', 'open the student'],
      ['O', 'open the session of the line'],
      ['N', 'next session to review'],
      ['R', 'mark as reviewed'],
      ['C', 'write a comment'],
      ['L', 'correct a repetition'],
      ['G', 'back to the list'],
    ],
  } as const,
  loading: 'Loading …',
  failed: 'Could not load this page',
  unreachable:
    'Cannot reach the hub. Is it running, and is this device on the network? Your text is safe while this page stays open.',
  again: 'Retry',
  nowhere: 'Page not found',
  nowhereHelp: 'It may have been deleted, or you do not have access.',
  toStart: 'Go to start page',
  cancel: 'Cancel',
  save: 'Save',
  remove: 'Delete',
  day,
  moment,
  ago,
};
