import { MEND_TEXTS, type MendKey, PROBLEM_TEXTS, type ProblemKey } from '../radioTexts.ts';
import type { MendStep } from '../deskView.ts';

/** Why there are no Bluetooth sensors at all. */
export type RadioProblemCode = ProblemKey;

export interface RadioProblem {
  readonly code: RadioProblemCode;
  /** What is missing, one sentence. */
  readonly message: string;
  /** What to do about it, step by step, for this operating system. */
  readonly mend: readonly MendStep[];
  /** The system's own words; empty where it gave none. */
  readonly detail: string;
}

type Platform = NodeJS.Platform;
type Advice = readonly MendStep[] | ((platform: Platform) => readonly MendStep[]);

const step = (key: MendKey, run: string | null = null): MendStep => ({
  say: MEND_TEXTS[key],
  run,
});

/** Step by step with the commands, as a terminal shows it. */
export const stepText = ({ say, run }: MendStep): string => (run === null ? say : `${say} ${run}`);

const ALLOW: Partial<Record<Platform, MendStep>> = {
  darwin: step('allow-darwin'),
  linux: step('allow-linux', 'sudo setcap cap_net_raw+eip $(eval readlink -f $(which node))'),
};

const permission = (platform: Platform): readonly MendStep[] => [
  ALLOW[platform] ?? step('allow-win32'),
  step('start-again'),
];

const SWITCH_ON: Partial<Record<Platform, MendStep>> = {
  darwin: step('on-darwin'),
  linux: step('on-linux', 'sudo rfkill unblock bluetooth && bluetoothctl power on'),
};

const switchOn = (platform: Platform): readonly MendStep[] => [
  SWITCH_ON[platform] ?? step('on-win32'),
];

const passedThrough = (platform: Platform): MendStep =>
  platform === 'linux' ? step('passed-through-linux', 'bluetoothctl list') : step('passed-through');

const adapter =
  (after: MendKey) =>
  (platform: Platform): readonly MendStep[] => [
    step('adapter'),
    passedThrough(platform),
    step(after),
  ];

const COMPILER: Partial<Record<Platform, MendStep>> = {
  linux: step('compiler-linux', 'sudo apt install build-essential python3'),
  darwin: step('compiler-darwin', 'xcode-select --install'),
  win32: step('compiler-win32'),
};

const build = (platform: Platform): readonly MendStep[] => [
  COMPILER[platform] ?? step('compiler'),
  step('build', 'npm rebuild @abandonware/bluetooth-hci-socket @abandonware/noble'),
  step('start-again'),
];

const ADVICE: Record<RadioProblemCode, Advice> = {
  'noble-missing': [step('install', 'npm install --include=optional'), step('start-again')],
  'native-missing': build,
  'no-bluetooth': [
    step('kernel', 'sudo modprobe bluetooth'),
    step('kernel-elsewhere'),
    step('start-again'),
  ],
  'no-adapter': adapter('looks-again'),
  'no-permission': permission,
  'not-low-energy': adapter('start-again'),
  'adapter-off': switchOn,
  'no-answer': [step('off-and-on'), step('close-others'), step('looks-again')],
  'in-use': [step('close-other'), step('looks-again')],
  crashed: [step('doctor', 'npx stillcatch doctor')],
};

export function radioProblem(
  code: RadioProblemCode,
  detail = '',
  platform: Platform = process.platform,
): RadioProblem {
  const advice = ADVICE[code];
  const mend = typeof advice === 'function' ? advice(platform) : advice;
  return { code, message: PROBLEM_TEXTS[code], mend, detail };
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
