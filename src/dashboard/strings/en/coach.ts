const when = new Intl.DateTimeFormat('en-GB', { dateStyle: 'medium', timeStyle: 'short' });
const dateOf = (ms: number): string => when.format(new Date(ms));

/** The connection with a coach. */
export const coach = {
  title: 'Coach',
  /** A sentence of the connection. */
  said: (sentence: string): string => sentence,
  loading: 'Loading …',
  lead: 'Connect this computer to your coach’s hub. Your coach can then see your practices, write to you and set your plan. Everything also works without a coach.',
  date: dateOf,
  connect: {
    title: 'Connect to your coach',
    hubUrl: 'Hub address',
    code: 'Pairing code',
    codeWhy:
      'You find it on your own page on the hub. It works for one computer and a few minutes.',
    machine: 'Name of this computer',
    machineValue: 'My computer',
    go: 'Connect',
    plain: 'Connect without encryption',
  },
  connected: (coachName: string, club: string): string =>
    `Connected to ${coachName}${club === '' ? '' : `, ${club}`}`,
  as: (student: string, machine: string, hubUrl: string): string =>
    `You: ${student}. This computer: “${machine}”. Hub: ${hubUrl}.`,
  contact: (ms: number | null): string =>
    ms === null ? 'No contact yet.' : `Last contact: ${dateOf(ms)}.`,
  nextTry: (ms: number): string => `Next automatic attempt: ${dateOf(ms)}.`,
  disconnect: 'Disconnect',
  disconnectWhy:
    'Sending stops and the hub removes this computer. What you sent stays on the hub until you or your coach delete it there.',
  consent: {
    title: 'What is sent',
    what: (coachName: string): string =>
      `If you agree, each practice is sent to ${coachName} when it ends: the sensor recording, the measures, your note and your pain rating. Nothing else, and to nobody else.`,
    older: 'Also send sessions from before today',
    agree: 'I agree, send my practices',
    agreed: (ms: number, older: boolean): string =>
      `You agreed on ${dateOf(ms)}${older ? ', including older sessions' : ', for sessions from then on'}.`,
    not: 'You have not agreed. Nothing is sent.',
    stop: 'Stop sending',
    stopWhy: 'What you sent stays on the hub until you or your coach delete it there.',
  },
  sending: {
    title: 'Sessions',
    none: 'No sessions yet.',
    states: {
      sent: 'sent',
      sending: 'sending',
      waiting: 'waiting',
      refused: 'refused',
      kept: 'not shared',
    },
    share: (share: number): string => `${Math.round(share * 100)} %`,
    simulated: 'simulated',
    counts: (sent: number, all: number): string => `${sent} of ${all} sent to your coach.`,
  },
  plan: {
    title: 'Your plan',
    none: 'Your coach has not set a plan yet. The standard plan applies.',
    from: (by: string, ms: number): string =>
      `By ${by}, since ${dateOf(ms)}. It applies from your next practice.`,
    first: 'The first plan.',
    next: (ms: number): string => `A new plan starts on ${dateOf(ms)}:`,
  },
  threads: {
    title: 'Messages',
    none: 'No messages yet.',
    session: (ms: number): string => `Session of ${dateOf(ms)}`,
    reviewed: (ms: number): string => `Your coach reviewed it on ${dateOf(ms)}.`,
    repetition: (index: number): string => `Repetition ${index}`,
    onNote: 'on your note',
    me: 'You',
    waiting: 'sending',
    answer: 'Your reply',
    send: 'Reply',
  },
  wrote: (n: number): string =>
    n === 1 ? 'New message from your coach.' : `${n} new messages from your coach.`,
};
