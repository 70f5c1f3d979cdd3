/** Why there are no Bluetooth sensors at all. */
export type RadioProblemCode =
  | 'noble-missing'
  | 'native-missing'
  | 'no-bluetooth'
  | 'no-adapter'
  | 'no-permission'
  | 'not-low-energy'
  | 'adapter-off'
  | 'no-answer'
  | 'in-use'
  | 'crashed';

export interface RadioProblem {
  readonly code: RadioProblemCode;
  /** What is missing, one sentence. */
  readonly message: string;
  /** What to do about it, step by step, for this operating system. */
  readonly mend: readonly string[];
  /** The system's own words; empty where it gave none. */
  readonly detail: string;
}

type Platform = NodeJS.Platform;
type Advice = readonly string[] | ((platform: Platform) => readonly string[]);

const permission = (platform: Platform): readonly string[] => {
  if (platform === 'darwin')
    return [
      'Open System Settings, Privacy & Security, Bluetooth, and switch it on for the terminal program you start Stillcatch from.',
      'Then start Stillcatch again.',
    ];
  if (platform === 'linux')
    return [
      'Allow Node to use Bluetooth without being root: sudo setcap cap_net_raw+eip $(eval readlink -f $(which node))',
      'Then start Stillcatch again.',
    ];
  return [
    'Settings, Privacy & security, Radios: let desktop apps control radios. Then start again.',
  ];
};

const switchOn = (platform: Platform): readonly string[] => {
  if (platform === 'darwin') return ['Switch Bluetooth on in the menu bar or in System Settings.'];
  if (platform === 'linux')
    return [
      'Switch Bluetooth on in the desktop settings, or: sudo rfkill unblock bluetooth && sudo hciconfig hci0 up',
    ];
  return ['Switch Bluetooth on in Settings, Bluetooth & devices.'];
};

const adapter = (platform: Platform): readonly string[] => [
  'Plug in a Bluetooth adapter (4.0 or later) or use a computer that has one built in.',
  platform === 'linux'
    ? 'In a virtual machine or container the adapter must be passed through; see it with: hciconfig -a'
    : 'In a virtual machine the adapter must be passed through.',
];

const build = (platform: Platform): readonly string[] => {
  const tools: Partial<Record<Platform, string>> = {
    linux:
      'Install a C++ compiler, make and Python 3 (Debian, Ubuntu: sudo apt install build-essential python3).',
    darwin: 'Install the command line tools: xcode-select --install',
    win32: 'Install Visual Studio Build Tools with the C++ workload and Python 3.',
  };
  return [
    tools[platform] ?? 'Install a C++ compiler and Python 3.',
    'Then: npm rebuild @abandonware/bluetooth-hci-socket @abandonware/noble',
  ];
};

const ADVICE: Record<RadioProblemCode, readonly [message: string, mend: Advice]> = {
  'noble-missing': [
    'The optional Bluetooth part (@abandonware/noble) is not installed.',
    ['Install it with: npm install --include=optional'],
  ],
  'native-missing': ['The Bluetooth part is installed, but its native code was not built.', build],
  'no-bluetooth': [
    'This system has no Bluetooth support (no such socket family in the kernel).',
    adapter,
  ],
  'no-adapter': ['No Bluetooth adapter was found.', adapter],
  'no-permission': ['Stillcatch is not allowed to use Bluetooth.', permission],
  'not-low-energy': ['The Bluetooth adapter does not know Bluetooth Low Energy.', adapter],
  'adapter-off': ['Bluetooth is switched off.', switchOn],
  'no-answer': [
    'The Bluetooth adapter does not answer.',
    [
      'Switch Bluetooth off and on, or unplug the adapter and plug it in again.',
      'Close other programs that use Bluetooth sensors.',
    ],
  ],
  'in-use': [
    'Another Stillcatch on this computer is using the Bluetooth sensors.',
    ['Close the other one, then press "Search" again.'],
  ],
  crashed: [
    'The Bluetooth part stopped unexpectedly; it is being started again.',
    ['If this goes on: switch Bluetooth off and on, and run: stillcatch doctor'],
  ],
};

export function radioProblem(
  code: RadioProblemCode,
  detail = '',
  platform: Platform = process.platform,
): RadioProblem {
  const [message, advice] = ADVICE[code];
  const mend = typeof advice === 'function' ? advice(platform) : advice;
  return { code, message, mend, detail };
}

const BY_ERRNO: Record<string, RadioProblemCode> = {
  EAFNOSUPPORT: 'no-bluetooth',
  EPROTONOSUPPORT: 'no-bluetooth',
  ENODEV: 'no-adapter',
  ENOENT: 'no-adapter',
  EPERM: 'no-permission',
  EACCES: 'no-permission',
  ENETDOWN: 'adapter-off',
  EBUSY: 'no-answer',
};

const isNobleItself = (text: string): boolean => /Cannot find (module|package).*noble'/.test(text);

/** What an error on loading or opening noble means. */
export function problemOf(error: unknown): RadioProblemCode {
  const { code = '', message = '' } = error as { code?: string; message?: string };
  const errno = /\bE[A-Z]{3,}\b/.exec(`${code} ${message}`)?.[0] ?? '';
  const byErrno = BY_ERRNO[errno];
  if (byErrno) return byErrno;
  const missing = code === 'MODULE_NOT_FOUND' || code === 'ERR_MODULE_NOT_FOUND';
  if (missing) return isNobleItself(message) ? 'noble-missing' : 'native-missing';
  if (/bindings file|native build|dlopen|ERR_DLOPEN/i.test(`${code} ${message}`))
    return 'native-missing';
  return /No such device/i.test(message) ? 'no-adapter' : 'no-answer';
}

/** What noble's adapter state means; `null` for a working or not yet known one. */
export function problemOfState(state: string): RadioProblemCode | null {
  const codes: Record<string, RadioProblemCode> = {
    poweredOff: 'adapter-off',
    unauthorized: 'no-permission',
    unsupported: 'not-low-energy',
    resetting: 'no-answer',
  };
  return codes[state] ?? null;
}
