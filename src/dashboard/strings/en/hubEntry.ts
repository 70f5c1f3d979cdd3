import { moment } from './hubShell.ts';

/** Ways in: the first coach, signing in, an invitation, the own account, pairing. */
export const entry = {
  clubName: 'Club or coaching name',
  name: 'Your name',
  nameWhy: {
    coach: 'Your students and colleagues see this name.',
    student: 'Your coach sees this name.',
  },
  login: 'Sign-in name',
  loginWhy: 'Letters, digits, dots and dashes. Not shown to others.',
  password: 'Password',
  passwordWhy: 'At least 10 characters. Several words make a good password.',
  showPassword: 'Show',
  hand: { title: 'Plays', right: 'right-handed', left: 'left-handed' },
  setup: {
    title: 'Set up this hub',
    lead: 'You are the first person here and become the owner: a coach with students who also manages the club.',
    code: 'One-time code',
    codeWhy: 'Shown in the terminal where the hub was started.',
    go: 'Set up hub',
  },
  signIn: {
    title: 'Sign in',
    lead: 'For coaches and students of this hub.',
    go: 'Sign in',
    forgot:
      'Forgot your password? Ask your coach or the person who runs the hub for a new invitation.',
  },
  invitation: {
    title: (club: string): string => `Welcome to ${club}`,
    coach: (by: string): string => `${by} invites you as a coach of this club.`,
    student: (by: string): string => `${by} invites you as a student.`,
    expires: (ms: number): string => `The invitation can be used once, until ${moment(ms)}.`,
    gone: 'This invitation is no longer valid',
    goneHelp:
      'It was used, has expired or was withdrawn. Ask your coach for a new one. If you have already joined, sign in.',
    sentTitle: 'What your coach sees',
    sent: [
      'Nothing until you pair your own computer and turn on sending there.',
      'Then, after each practice: the recording of both sensors, the measures, your pain ratings and your note.',
      'No pictures, sound or location. Films only if you or your coach attach one.',
      'Only your coach sees it, not other coaches or students.',
      'You can turn off sending at any time, export everything, and ask your coach to permanently delete everything.',
    ],
    agree: 'I have read what is sent and the safety note above',
    go: 'Join',
    signedIn: (name: string): string =>
      `You are signed in as ${name}. Joining creates a new account and signs you in with it.`,
  },
  account: {
    title: 'Your account',
    facts: (login: string, role: string): string => `Sign-in name: ${login} · ${role}`,
    role: { owner: 'owner and coach', coach: 'coach', student: 'student' },
    password: 'Change password',
    current: 'Current password',
    next: 'New password',
    change: 'Change password',
    changed: 'Password changed. All other browsers were signed out.',
    elsewhere: 'Other browsers',
    elsewhereWhy: 'Still signed in on another computer?',
    out: 'Sign out everywhere else',
    outDone: 'All other browsers were signed out.',
  },
  pairing: {
    title: 'Pair your computer',
    lead: 'Once your practice computer is paired, it sends your sessions automatically.',
    steps: [
      'On that computer, open Stillcatch and go to Coach.',
      'Enter the address and the code below.',
      'Choose there whether sessions may be sent. You can change this at any time.',
    ],
    make: 'Create code',
    another: 'Create another code',
    code: 'Code',
    hub: 'Hub address',
    until: (ms: number): string => `Can be used once, until ${moment(ms)}.`,
    qr: 'QR code of the hub address',
    copy: 'Copy',
    copied: 'Copied',
  },
};
