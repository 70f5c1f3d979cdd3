const when = new Intl.DateTimeFormat('en-GB', { dateStyle: 'medium', timeStyle: 'short' });
const dateOf = (ms: number): string => when.format(new Date(ms));

/** The connection with a coach. */
export const coach = {
  title: 'Coach',
  /** A sentence of the connection. */
  said: (sentence: string): string => sentence,
  loading: 'Asking the service …',
  lead: 'Connect this computer with your coach’s hub: your coach sees your practices, writes to you and sets your plan. Everything works without it, too.',
  date: dateOf,
  connect: {
    title: 'Connect with your coach',
    hubUrl: 'Address of the hub',
    code: 'Pairing code',
    codeWhy: 'From your own page on the hub, good for one computer and a few minutes.',
    machine: 'What this computer is called there',
    machineValue: 'My computer',
    go: 'Connect',
    plain: 'Go on without encryption',
  },
  connected: (coachName: string, club: string): string =>
    `Connected with ${coachName}${club === '' ? '' : ` of ${club}`}`,
  as: (student: string, machine: string, hubUrl: string): string =>
    `As ${student}, from “${machine}”, to ${hubUrl}.`,
  contact: (ms: number | null): string =>
    ms === null ? 'Nothing has been fetched yet.' : `Last contact: ${dateOf(ms)}.`,
  nextTry: (ms: number): string => `Tried again by itself at ${dateOf(ms)}.`,
  disconnect: 'Disconnect',
  disconnectWhy:
    'Sending stops and the hub forgets this computer. What was sent stays there until your coach or you delete it there.',
  consent: {
    title: 'What is sent',
    what: (coachName: string): string =>
      `With your consent each practice goes to ${coachName} when it has ended: the sensors’ recording, what was measured of it, your note, and the pain you rated. Nothing else, and to nobody else.`,
    older: 'Sessions from before today too',
    agree: 'I agree, send my practices',
    agreed: (ms: number, older: boolean): string =>
      `You agreed on ${dateOf(ms)}${older ? ', for older sessions too' : ', for sessions from then on'}.`,
    not: 'You have not agreed: nothing is sent.',
    stop: 'Stop sending',
    stopWhy: 'What was sent stays at the hub until your coach or you delete it there.',
  },
  sending: {
    title: 'Sessions',
    none: 'There are no sessions yet.',
    states: {
      sent: 'sent',
      sending: 'on its way',
      waiting: 'waits to be sent',
      refused: 'not taken',
      kept: 'stays here',
    },
    share: (share: number): string => `${Math.round(share * 100)} %`,
    simulated: 'simulated',
    counts: (sent: number, all: number): string => `${sent} of ${all} are with your coach.`,
  },
  plan: {
    title: 'Your plan',
    none: 'Your coach has set no plan yet; the usual one stands.',
    from: (by: string, ms: number): string =>
      `By ${by}, since ${dateOf(ms)}. It counts from your next practice.`,
    first: 'The first plan.',
    next: (ms: number): string => `Another plan begins on ${dateOf(ms)}:`,
  },
  threads: {
    title: 'What was written',
    none: 'Nothing yet.',
    session: (ms: number): string => `Session of ${dateOf(ms)}`,
    reviewed: (ms: number): string => `Looked at by your coach on ${dateOf(ms)}.`,
    repetition: (index: number): string => `Repetition ${index}`,
    me: 'You',
    waiting: 'on its way',
    answer: 'Your answer',
    send: 'Answer',
  },
  wrote: (n: number): string =>
    n === 1 ? 'Your coach wrote to you.' : `Your coach wrote ${n} things to you.`,
};
