import { ledgerText } from '../../coaching/ledger.ts';
import { MEASURE_INFO, type MeasureKey } from '../../coaching/measureInfo.ts';
import {
  type Usual,
  comparisonTexts,
  differenceText,
  pairTexts,
} from '../../coaching/differenceText.ts';
import {
  ENGLISH,
  type FallUnit,
  fallText,
  measureLabel,
  measureText,
  percentText,
  targetText,
} from '../../coaching/measureText.ts';
import { type Changed, changeShown } from '../../coaching/sinceLast.ts';
import { TARGET_BASIS, type Target } from '../../coaching/plan.ts';
import { NOT_A_MEDICAL_DEVICE, OTHERS_COME_FIRST } from '../../coaching/safetyTexts.ts';
import { coach } from './en/coach.ts';
import { counts } from './en/counts.ts';
import { names, said } from './en/core.ts';
import { drafts } from './en/drafts.ts';
import { figure } from './en/figure.ts';
import { handsFree } from './en/handsFree.ts';
import { help } from './en/help.ts';
import { home } from './en/home.ts';
import { plan } from './en/plan.ts';
import { planPage } from './en/planPage.ts';
import { count as sessionCount, interrupted } from './en/underWay.ts';
import { progress } from './en/progress.ts';
import { ready } from './en/ready.ts';
import { review } from './en/review.ts';
import { safetyForm, stop } from './en/stop.ts';
import { sessionNotes } from './en/sessionNotes.ts';
import { sessions } from './en/sessions.ts';
import { secondScreen } from './en/secondScreen.ts';
import { settings } from './en/settings.ts';
import { after, today } from './en/today.ts';
import { desk } from './en/desk.ts';
import { localeWriting } from './locale.ts';

const { tag, decimal, written, day, weekday, dayAndTime } = localeWriting('en-GB');
const VALUE_WORDS = { ...ENGLISH, number: written };

/** Every text a person reads, in English. Another language is another file of this shape. */
export const en = {
  product: 'Stillcatch',
  locale: tag,
  decimal,
  written,
  date: { day, weekday, dayAndTime },
  said,
  names,
  /** Of a right-handed and of a left-handed player, for `sided`. */
  sides: {
    right: { trail: 'right', lead: 'left' },
    left: { trail: 'left', lead: 'right' },
  },
  skip: 'Skip to content',
  nav: {
    label: 'Pages',
    today: 'Today',
    ready: 'Get ready',
    after: 'After',
    practice: 'Practice',
    sessions: 'Sessions',
    progress: 'Progress',
    plan: 'Plan',
    coach: 'Coach',
    sensors: 'Sensors',
    screen: 'Second screen',
    safety: 'Safety',
    help: 'Help',
  },

  coach,
  counts,
  drafts,
  figure,
  handsFree,
  help,
  home,
  ready,
  today,
  after,
  sessions,
  sessionNotes,
  safetyForm,
  stop,
  review,
  progress,
  plan,
  planPage,
  secondScreen,
  settings,

  caution: {
    short: NOT_A_MEDICAL_DEVICE,
    rest: OTHERS_COME_FIRST,
    more: 'Read the safety page',
  },

  source: {
    synthetic: 'Simulated student',
    replay: 'Recorded session',
    simulatedWhy: 'Nobody is moving: every number below comes from simulated sensors.',
    replayWhy: 'Nobody is moving: every number below comes from a recording.',
    failed: (reason: string) => `The sensors stopped: ${reason}`,
    starting: 'Waiting for the first readings.',
  },

  count: sessionCount,
  interrupted,

  connection: {
    connecting: 'Connecting to Stillcatch on this computer …',
    lost: 'Connection lost.',
    lostHelp:
      'Reconnecting automatically. If it does not come back, restart Stillcatch with "npm start" in the project folder. This page shows the last data it received.',
    last: 'Last state',
    backSpoken: 'Connected again.',
    age: (s: number) => `${s} s old`,
    sensor: 'no connection',
  },

  state: {
    now: 'Now',
    calibrating: 'Calibration',
    waiting: 'Address',
    address: 'To the top',
    ball: 'Hit a ball',
    backswing: 'To the top',
    hold: (s: string) => `Hold ${s}`,
    letGo: 'Let go',
    released: 'Catch',
    caught: 'Caught',
    paused: 'Paused',
    ended: 'Finished',
    nothing: 'Not yet',
  },
  detail: {
    calibrating: 'Follow the steps; they are spoken.',
    step: (index: number, of: number) => `Step ${index} of ${of}`,
    waiting: 'Take your address and hold still.',
    address: 'You are still. Swing to the top when you are ready.',
    ball: 'The rehearsals are done. One full swing with a ball.',
    backswing: 'Stop there and hold still.',
    hold: (target: string) => `Hold still at the top for ${target}`,
    letGo: 'Chest first: turn and bend. Let the club fall.',
    released: 'Catch it with your arm still rotated outward.',
    caught: 'Go back to address.',
    paused: 'Nothing is counted. Press P to resume.',
    ended: 'The practice is over. Your results stay here.',
    refused: 'Calibration failed. See the reason below, then start again.',
  },
  step: {
    'calibration-stand': 'Stand still',
    'calibration-bow': 'Bow 3 times',
    'calibration-armRaise': 'Raise arm',
    'address-reference': 'Address',
  } as Record<string, string>,
  stepDetail: {
    'calibration-stand': 'Upright, arms hanging.',
    'calibration-bow': 'Three slow bows from the hips.',
    'calibration-armRaise': 'Trail arm straight, forward to shoulder height, three times.',
    'address-reference': 'Your usual address. Hold still for two seconds.',
  } as Record<string, string>,

  hold: {
    label: 'Hold',
    value: (s: string, target: string) => `${s} of ${target} s`,
    target: (s: string) => `${s} s`,
    noTarget: 'Your plan has no hold time.',
  },

  verdict: {
    title: 'Last repetition',
    none: 'No repetition yet',
    noneDetail: 'Your first result appears here.',
    passed: 'Passed',
    notPassed: 'Not passed',
    notScored: 'Not scored',
    ball: 'Ball',
    practiceSwing: 'Practice swing',
    ignored: 'Ignored',
    ballDetail: 'Ball recorded.',
    practiceSwingDetail: 'Recorded, not counted.',
    number: (index: number) => `Repetition ${index}`,
  },

  ledger: {
    title: 'Count',
    rehearsals: (n: number) => (n === 1 ? '1 rehearsal' : `${n} rehearsals`),
    balls: (n: number) => (n === 1 ? '1 ball' : `${n} balls`),
    kept: (ratio: string, asked: string) => `${ratio} rehearsals per ball (plan: ${asked})`,
    noRatio: (asked: string) => `Plan: ${asked}`,
    asked: (rehearsals: number, balls: number) => `${rehearsals} to ${balls}`,
    next: ledgerText,
    empty: 'Your rehearsals and balls appear here.',
    entry: {
      passed: 'rehearsal passed',
      notPassed: 'rehearsal not passed',
      notScored: 'rehearsal not scored',
      ball: 'ball',
      practiceSwing: 'practice swing',
      ignored: 'ignored',
    },
    legend: 'Filled circle: passed. Open circle: not passed. Triangle: ball. Dash: practice swing.',
  },

  measures: {
    title: 'Measures of the last repetition',
    none: 'The measures of each repetition appear here, next to the plan’s targets.',
    in: 'on target',
    out: 'off target',
    info: MEASURE_INFO,
    label: measureLabel,
    value: (key: MeasureKey, value: number | null, target?: Target): string =>
      measureText(key, value, target, VALUE_WORDS),
    fall: (cm: number, unit: FallUnit, measured: boolean) =>
      `The club fell about ${fallText(cm, unit)}: ${
        measured
          ? 'from the free fall that the club sensor measured.'
          : 'how far a dropped object falls in the time from release to catch; less if the hand slowed it.'
      }`,
    change: (change: Changed) => changeShown(change, VALUE_WORDS),
    difference: (key: MeasureKey, difference: number): string =>
      differenceText(key, difference, VALUE_WORDS),
    pair: (key: MeasureKey, here: number | null, beside: number | null) =>
      pairTexts(key, here, beside, VALUE_WORDS),
    compared: (
      key: MeasureKey,
      earlier: Usual | null,
      later: Usual | null,
      interval: { readonly low: number; readonly high: number } | null,
    ) => comparisonTexts(key, earlier, later, interval, VALUE_WORDS),
    percent: (ratio: number, edges: readonly number[]): string =>
      percentText(ratio, edges, VALUE_WORDS),
    target: (key: MeasureKey, target: Target): string => targetText(key, target, VALUE_WORDS),
    noTarget: 'no target',
    missedCatch: 'missed',
    plusMinus: (key: MeasureKey, amount: number) =>
      `±${amount}${MEASURE_INFO[key].unit === '°' ? '°' : ` ${MEASURE_INFO[key].unit}`}`,
    basis: `Bracket: target (${TARGET_BASIS}).`,
    whisker: 'Line: measurement error.',
    explain: 'About this measure',
    sure: (text: string) => `Accuracy: ${text}.`,
    cannotSee: 'Not measured:',
  },

  body: {
    title: 'Body',
    faceOn: 'Face on',
    downTheLine: 'Down the line',
    ghost: 'Dashed: your address',
    none: 'The figures appear after calibration.',
    describe: (view: string, flexion: string, turn: string) =>
      `${view}: chest bent forward ${flexion}, turned ${turn}`,
  },

  curves: {
    title: 'Last 10 seconds',
    flexion: 'Flexion',
    turn: 'Turn to the target',
    kept: 'Arm rotation from the top',
    now: 'now',
    none: 'The curves start after calibration.',
    describe: 'Three curves over the last ten seconds: flexion, turn and arm rotation, in degrees',
  },

  sensors: {
    title: 'Sensors',
    chest: 'Chest',
    trailArm: 'Trail arm',
    club: 'Club',
    state: {
      searching: 'searching',
      found: 'found',
      connecting: 'connecting',
      preparing: 'preparing',
      streaming: 'streaming',
      lost: 'lost',
      retrying: 'reconnecting',
      ended: 'ended',
    },
    rate: (hz: string, nominal: string) => `${hz} of ${nominal} Hz`,
    rateOnly: (hz: string) => `${hz} Hz`,
    noRate: 'no data yet',
    lost: (pct: string) => `${pct} % lost`,
    age: (ms: string) => `${ms} ago`,
    battery: (pct: number) => `battery ${pct} %`,
    none: 'No sensor is sending data yet.',
    lostSpoken: (name: string) => `${name} sensor lost.`,
    backSpoken: (name: string) => `${name} sensor is back.`,
    silent: (name: string) =>
      `${name}: no data. Your practice continues and the sensor reconnects automatically. Repetitions are not scored until then.`,
    silentFor: (s: number) => `(${s} s)`,
  },

  desk,

  warnings: {
    title: 'Warning',
    acknowledge: 'I have read this',
    stored: 'Saved with the session.',
  },

  sound: {
    label: 'Sound',
    locked: 'Sound on',
    lockedWhy: 'Your browser blocks sound until you press a key or tap.',
    mute: 'Mute',
    unmute: 'Unmute',
    muted: 'Muted',
    volume: 'Volume',
    rate: 'Speech rate',
    captions: 'Spoken',
    noCaption: 'Spoken text also appears here.',
    noVoices: 'This computer has no English voice. You get tones and captions only.',
    try: 'Play the tones',
    tone: {
      listening: 'Listening',
      holdReached: 'Hold reached',
      passed: 'Passed',
      notPassed: 'Not passed',
      ballNext: 'Ball is next',
      warning: 'Warning',
      sensorLost: 'Sensor lost',
      connectionLost: 'Connection lost',
    },
  },
  spoken: { calibrated: 'Calibrated.', begin: 'Ready. Take your address.' },

  look: {
    settings: 'More',
    fallUnit: 'Club drop in',
    units: { cm: 'centimetres', in: 'inches' },
    theme: 'Theme',
    system: 'Match system',
    light: 'Light',
    dark: 'Dark',
    far: 'Far view',
    near: 'Near view',
    farWhy: 'Large text you can read from 4 m (key F)',
    nearWhy: 'With body, curves and measures (key F)',
    pause: 'Pause',
    resume: 'Resume',
    close: 'Close',
    keys: 'Shortcuts',
    keyList: [
      ['F', 'far or near view'],
      ['P', 'pause or resume'],
      ['M', 'mute or unmute'],
      ['H', 'it hurts: rate your pain'],
      ['R B I', 'the last one was a rehearsal, a ball, nothing'],
      ['U', 'undo a correction'],
      ['E', 'end the practice'],
      ['Enter', 'acknowledge the newest warning, wherever the focus is'],
    ] as const,
    keysOn: 'Shortcuts on',
  },

  safety: {
    title: 'Safety',
    parts: [
      {
        title: 'Before each session',
        items: [
          'Clear 3 m around you. No children, pets or onlookers.',
          'Closed shoes, soft floor, nothing breakable, enough ceiling.',
          'Start with a short or padded club.',
          'Warm up for at least 10 minutes first. It may lower injury risk.',
        ],
      },
      {
        title: 'Ask a licensed professional before this drill if you have or had',
        items: [
          'a dislocation, shoulder instability or shoulder surgery',
          'back surgery or osteoporosis',
          'a recent injury',
          'or if you are pregnant',
        ],
      },
      {
        title: 'Pain',
        items: [
          'At 4 or 5 of 10, or 2 more than at the start: stop for today. If it is still there tomorrow, see a licensed health professional.',
          'Over 5, or sharp, locking, giving way or numb: stop now and get advice from a licensed health professional before you practise again.',
          'Not settled by the next day: rest or halve the repetitions; ask a licensed professional if it lasts.',
        ],
      },
      {
        title: 'Seek medical help now',
        items: [
          'Leg weakness, numbness in the saddle area, a change of bladder or bowel',
          'Fever with back pain, chest pain, after a major fall or blow',
          'A deformed or numb arm',
        ],
      },
      {
        title: 'What this tool does not do',
        items: [
          'It cannot tell you a safe angle or the load on your back, it makes no diagnosis, and it does not prevent injury.',
          'A sensor on the upper arm shows less rotation than there is. The ranges it warns about are your own, measured by you.',
        ],
      },
    ],
  },

  error: {
    title: 'Something went wrong',
    help: 'This page stopped working. Your practice and its recording continue. Reload the page.',
    reload: 'Reload',
    noAnswer: 'No answer from Stillcatch. Try again.',
  },
  pain: {
    button: 'Pain',
    title: 'Pain now?',
    paused: 'Practice paused.',
    send: 'Save',
    cancel: 'No pain, resume',
  },
  correct: {
    title: (index: number) => `What was repetition ${index}?`,
    measured: (kind: string) => `Detected as ${kind}.`,
    kinds: {
      rehearsal: 'a rehearsal',
      ball: 'a ball',
      practiceSwing: 'a practice swing',
      ignored: 'nothing to count',
    },
    undo: 'Undo the last correction',
    close: 'Cancel',
    hint: 'Tap a mark to correct it.',
  },
  end: {
    button: 'End',
    title: 'End this practice?',
    text: 'Your results are saved. Next you see the summary.',
    yes: 'End it',
    no: 'Continue',
  },
  unit: { deg: '°', ms: 'ms', s: 's' },
};
