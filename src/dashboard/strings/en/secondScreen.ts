import type { CodeState, PairRefusal } from '../../../streaming/secondScreenContract.ts';

const minutes = (s: number): string =>
  s >= 60 ? `${Math.floor(s / 60)} min ${String(s % 60).padStart(2, '0')} s` : `${s} s`;

/** The page that switches the second screen on, and the second screen itself. */
export const secondScreen = {
  title: 'Second screen',
  lead: 'Prop a phone or a tablet up where you practise: it shows the state, the hold, the verdict and the cue in very large words. It only shows; the sound and every button stay here.',
  loading: 'Asking the service …',
  none: 'This service has no second screen behind it.',
  off: 'It is off: only this computer reaches the practice. It is off again after each start of the service.',
  choose: 'Show it in this network',
  card: (address: string, card: string) => `${address} (${card})`,
  noNetwork:
    'This computer is in no private network just now. Join the Wi-Fi that the other device is in, then look again.',
  look: 'Look again',
  switchOn: 'Switch on',
  switchOff: 'Switch off',
  firewall:
    'If the other device finds nothing: your computer’s firewall may ask whether to let it in; allow private networks only. Guest networks often keep devices apart.',
  honest:
    'The way to the other screen is not encrypted: whoever is in the same network could read along what it shows. That is the practice as it runs: state, hold, verdict, cue, counts and standing warnings; a pain warning names the number you gave. Your name, answers, notes, plan and past sessions are not sent. Use it in a network of your own.',
  unreachable:
    'This computer no longer has the address below. Switch off, and on again with the new one.',
  open: 'On the other device, scan this or type the address',
  qr: (url: string) => `Code to scan: ${url}`,
  codeTitle: 'Then type this code there',
  qrWhy: 'The code to scan holds the address only, so that a picture of it lets nobody in.',
  codeLeft: (s: number) => `Holds for ${minutes(s)}, for one screen.`,
  codeState: {
    waiting: '',
    used: 'This code was used. Another screen needs a new one.',
    expired: 'This code has run out.',
    spent: 'Five wrong codes were typed. If that was not you, somebody else in the network tried.',
  } satisfies Record<CodeState, string>,
  newCode: 'New code',
  screens: 'Screens let in',
  noScreens: 'None yet.',
  screen: (address: string, at: string) => `${address}, since ${at}`,
  time: (ms: number) =>
    new Date(ms).toLocaleTimeString('en', { hour: '2-digit', minute: '2-digit', hour12: false }),
  watching: 'showing now',
  notWatching: 'not connected',
  end: 'End',
  endNamed: (address: string) => `End the screen at ${address}`,
  endAll: 'End all',

  pair: {
    title: 'Second screen',
    lead: 'Type the six digits that the laptop shows under Second screen.',
    code: 'Code',
    go: 'Show the practice',
    looking: 'Looking for the laptop …',
    unreachable: 'The laptop does not answer. It tries again by itself.',
    ended: 'The laptop has ended this screen. A new code lets it in again.',
    refused: {
      'wrong-code': 'This is not the code that the laptop shows.',
      'no-code': 'No code is waiting any more. Ask for a new one at the laptop.',
    } satisfies Record<PairRefusal, string>,
  },

  watch: {
    viewOnly: 'View only. The sound comes from the laptop.',
    lost: 'No connection',
    lostDetail: (s: number) => `Trying again. Nothing heard for ${minutes(s)}.`,
    getReady: 'Get ready',
    atLaptop: (step: string) => `At the laptop: ${step}`,
    afterwards: 'The practice is over. Go on at the laptop.',
    stop: 'Stop',
    stopped: 'Stop for today. Read the warning.',
    paused: 'Nothing is counted. Go on at the laptop.',
    refused: 'The calibration was refused. Read why below; start it again at the laptop.',
    acknowledge: 'Read and confirm it at the laptop.',
    sourceFailed: 'The sensors stopped. Look at the laptop.',
    awake:
      'This browser does not keep the screen awake by itself: choose a long time before it sleeps in the device’s settings.',
    look: 'Look',
  },
};
