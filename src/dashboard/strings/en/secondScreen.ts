import type { CodeState, PairRefusal } from '../../../streaming/secondScreenContract.ts';

const minutes = (s: number): string =>
  s >= 60 ? `${Math.floor(s / 60)} min ${String(s % 60).padStart(2, '0')} s` : `${s} s`;

/** The page that switches the second screen on, and the second screen itself. */
export const secondScreen = {
  title: 'Second screen',
  lead: 'Put a phone or tablet where you practise. It shows the current step, the hold, the result and the cue in very large text. It is view only: sound and buttons stay on this computer.',
  loading: 'Loading …',
  none: 'The second screen is not available here.',
  off: 'Off: only this computer shows the practice. It turns off each time Stillcatch restarts.',
  choose: 'Network to use',
  card: (address: string, card: string) => `${address} (${card})`,
  noNetwork:
    'This computer is not on a private network. Join the same Wi-Fi as the other device, then search again.',
  look: 'Search again',
  switchOn: 'Turn on',
  switchOff: 'Turn off',
  firewall:
    'If the other device cannot connect: your computer’s firewall may ask for permission. Allow private networks only. Guest networks often keep devices apart.',
  honest:
    'The connection to the other screen is not encrypted. Anyone on the same network could read what it shows: current step, hold, result, cue, counts and open warnings. A pain warning includes your rating. Your name, answers, notes, plan and past sessions are not sent. Use it on your own network.',
  unreachable: 'This computer’s address has changed. Turn the second screen off and on again.',
  open: 'On the other device, scan this code or type the address',
  qr: (url: string) => `QR code: ${url}`,
  codeTitle: 'Then enter this code there',
  qrWhy: 'The QR code contains only the address, so a photo of it lets nobody in.',
  codeLeft: (s: number) => `Valid for ${minutes(s)}, for one screen.`,
  codeState: {
    waiting: '',
    used: 'This code was used. Get a new one for another screen.',
    expired: 'This code has expired.',
    spent: 'Five wrong codes were entered. If that was not you, someone else on the network tried.',
  } satisfies Record<CodeState, string>,
  newCode: 'New code',
  screens: 'Connected screens',
  noScreens: 'None yet.',
  screen: (address: string, at: string) => `${address}, since ${at}`,
  time: (ms: number) =>
    new Date(ms).toLocaleTimeString('en', { hour: '2-digit', minute: '2-digit', hour12: false }),
  watching: 'connected',
  notWatching: 'not connected',
  end: 'Disconnect',
  endNamed: (address: string) => `Disconnect the screen at ${address}`,
  endAll: 'Disconnect all',

  pair: {
    title: 'Second screen',
    lead: 'Enter the six digits that the laptop shows under Second screen.',
    code: 'Code',
    go: 'Connect',
    looking: 'Connecting to the laptop …',
    unreachable: 'No answer from the laptop. Retrying automatically.',
    ended: 'The laptop disconnected this screen. Enter a new code to connect again.',
    refused: {
      'wrong-code': 'Wrong code. Enter the code that the laptop shows.',
      'no-code': 'The code is no longer valid. Get a new one on the laptop.',
    } satisfies Record<PairRefusal, string>,
  },

  watch: {
    viewOnly: 'View only. The sound comes from the laptop.',
    lost: 'No connection',
    lostDetail: (s: number) => `Reconnecting. No data for ${minutes(s)}.`,
    getReady: 'Get ready',
    idle: 'No practice is running. Start one at the laptop.',
    atLaptop: (step: string) => `At the laptop: ${step}`,
    afterwards: 'The practice is over. Continue at the laptop.',
    stop: 'Stop',
    stopped: 'Stop for today. Read the warning.',
    paused: 'Nothing is counted. Resume at the laptop.',
    refused: 'Calibration failed. See the reason below, then start again at the laptop.',
    acknowledge: 'Confirm it at the laptop.',
    sourceFailed: 'The sensors stopped. Check the laptop.',
    awake:
      'This browser cannot keep the screen on. Set a long screen timeout in the device’s settings.',
    look: 'Theme',
  },
};
