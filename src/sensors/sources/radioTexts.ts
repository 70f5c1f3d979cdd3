import { recognise, type SentenceBook } from '../sentence.ts';

// What the radio and the sensors page's service say, by key: for the page, the doctor and the practice alike.

/** What is missing where no sensor can be reached at all. */
export const PROBLEM_TEXTS = {
  'noble-missing': 'The optional Bluetooth part (@abandonware/noble) is not installed.',
  'native-missing': 'The Bluetooth part is installed, but its native code was not built.',
  'no-bluetooth': 'This system has no Bluetooth support (missing in the kernel).',
  'no-adapter': 'No Bluetooth adapter was found.',
  'no-permission': 'Stillcatch is not allowed to use Bluetooth.',
  'not-low-energy': 'The Bluetooth adapter does not support Bluetooth Low Energy.',
  'adapter-off': 'Bluetooth is off.',
  'no-answer': 'The Bluetooth adapter is not responding.',
  'in-use': 'Another Stillcatch on this computer is using the Bluetooth sensors.',
  crashed: 'The Bluetooth part stopped unexpectedly and is restarting.',
} as const satisfies SentenceBook;

/** What to do about it. A sentence that ends in a colon has a command after it. */
export const MEND_TEXTS = {
  install: 'Install it with:',
  'compiler-linux': 'Install a C++ compiler, make and Python 3. On Debian or Ubuntu:',
  'compiler-darwin': 'Install the command line tools:',
  'compiler-win32': 'Install Visual Studio Build Tools with the C++ workload, and Python 3.',
  compiler: 'Install a C++ compiler and Python 3.',
  build: 'Then build it with:',
  kernel: 'Load the Bluetooth support of the kernel with:',
  'kernel-elsewhere':
    'A container, WSL or a virtual machine may have no Bluetooth. Start Stillcatch on the computer itself.',
  adapter: 'Plug in a Bluetooth adapter (4.0 or later) or use a computer that has one built in.',
  'passed-through': 'In a virtual machine the adapter must be passed through.',
  'passed-through-linux':
    'In a virtual machine or container the adapter must be passed through. List the adapters with:',
  'looks-again': 'Stillcatch checks again every 10 seconds.',
  'start-again': 'Then restart Stillcatch.',
  'allow-darwin':
    'Open System Settings, Privacy & Security, Bluetooth, and turn it on for the terminal app you start Stillcatch from.',
  'allow-linux': 'Allow Node to use Bluetooth without root:',
  'allow-win32':
    'Open Settings, Privacy & security, Radios, and let desktop apps control the radios.',
  'on-darwin': 'Turn Bluetooth on in the menu bar or in System Settings.',
  'on-linux': 'Turn Bluetooth on in the desktop settings, or with:',
  'on-win32': 'Turn Bluetooth on in Settings, Bluetooth & devices.',
  'off-and-on': 'Turn Bluetooth off and on, or unplug the adapter and plug it in again.',
  'close-others': 'Close other programs that use Bluetooth sensors.',
  'close-other': 'Close the other one, or use the sensors there.',
  doctor: 'If this continues, turn Bluetooth off and on, and check this computer with:',
} as const satisfies SentenceBook;

/** Why a sensor is not connected, or not any more. */
export const LINK_TEXTS = {
  'connect-timeout': 'No answer within 10 s. Is it on, nearby, and not connected elsewhere?',
  'connect-refused': 'The Bluetooth adapter is busy and refused the connection.',
  'not-seen': 'Not found. Is it on, charged and within a few metres?',
  'services-missing': 'It does not offer the services that this type of sensor needs.',
  'prepare-timeout': 'It stopped responding during setup.',
  'prepare-failed': 'Setup failed.',
  disconnected: 'Connection lost.',
  silent: 'Connected, but no data for 2 s.',
  'adapter-off': 'Bluetooth was turned off.',
  cancelled: 'Cancelled.',
  unassigned: 'No sensor chosen for this position yet. Open Sensors.',
  waits:
    'Found, but not connected: only {most} can be connected at once. Choose it here to connect it.',
} as const satisfies SentenceBook;

/** What the sensors page is told when it asks for something. */
export const DESK_TEXTS = {
  'unknown-command': 'The sensors page sent an unknown request.',
  'not-kept': 'Your choice is lost when Stillcatch closes: cannot write to the file {file}.',
  gone: 'That sensor is no longer available.',
  'both-first': 'Both sensors must be connected first.',
  'too-few-taps': 'Both sensors felt fewer than three taps. Hold them together and tap harder.',
  unlike: 'The two sensors felt different movements. Hold them firmly together.',
  'too-short': 'One of the sensors sent no data.',
} as const satisfies SentenceBook;

/** What a person calls a kind of sensor, where it is more than a name. */
export const KIND_TEXTS = { openProfile: 'Open-profile sensor' } as const satisfies SentenceBook;

export type ProblemKey = keyof typeof PROBLEM_TEXTS;
export type MendKey = keyof typeof MEND_TEXTS;
export type LinkTextKey = keyof typeof LINK_TEXTS;
export type DeskTextKey = keyof typeof DESK_TEXTS;
export type KindTextKey = keyof typeof KIND_TEXTS;

const WITH_DETAIL = { it: '{sentence} ({detail})' } as const;

/** A reason without the system's own words after it, and these; empty where there are none. */
export function reasonParts(reason: string): {
  readonly sentence: string;
  readonly detail: string;
} {
  const { sentence = '', detail = '' } = recognise(WITH_DETAIL, reason)?.values ?? {};
  const known = recognise(LINK_TEXTS, sentence) !== null;
  return known ? { sentence, detail } : { sentence: reason, detail: '' };
}
