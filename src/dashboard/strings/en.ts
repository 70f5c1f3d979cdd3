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
import { TARGET_BASIS, type Target } from '../../coaching/plan.ts';
import { NOT_A_MEDICAL_DEVICE, OTHERS_COME_FIRST } from '../../coaching/safetyTexts.ts';
import { coach } from './en/coach.ts';
import { names, said } from './en/core.ts';
import { handsFree } from './en/handsFree.ts';
import { help } from './en/help.ts';
import { home } from './en/home.ts';
import { plan } from './en/plan.ts';
import { planPage } from './en/planPage.ts';
import { progress } from './en/progress.ts';
import { ready } from './en/ready.ts';
import { review } from './en/review.ts';
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
  skip: 'Skip to the content',
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
  handsFree,
  help,
  home,
  ready,
  today,
  after,
  sessions,
  sessionNotes,
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
    simulatedWhy: 'No live body: every number below is computed from simulated sensors.',
    replayWhy: 'No live body: every number below is computed from a recording.',
    failed: (reason: string) => `The sensors stopped: ${reason}`,
    starting: 'Waiting for the first samples.',
  },

  connection: {
    connecting: 'Looking for the service on this computer …',
    lost: 'The page has lost the service.',
    lostHelp:
      'It tries again by itself. If nothing comes back, start the service again with "npm start" in the project folder. What you see is the last state.',
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
    ended: 'The end',
    nothing: 'Not yet',
  },
  detail: {
    calibrating: 'Follow the steps; they are spoken.',
    step: (index: number, of: number) => `Step ${index} of ${of}`,
    waiting: 'Take your address and be still.',
    address: 'You are still. Swing to the top when you like.',
    ball: 'The rehearsals are done. One full swing with a ball.',
    backswing: 'Arrive there and be still.',
    hold: (target: string) => `Still at the top until ${target}`,
    letGo: 'Chest down and round first. Let the club fall.',
    released: 'Catch it with the arm turned out.',
    caught: 'Back to the address.',
    paused: 'Nothing is counted. Press P to go on.',
    ended: 'No more samples will come. What was measured stays here.',
    refused: 'The calibration was refused. Read why below and start it again.',
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
    'address-reference': 'Your own address, still for two seconds.',
  } as Record<string, string>,

  hold: {
    label: 'Hold',
    value: (s: string, target: string) => `${s} s of ${target} s`,
    target: (s: string) => `${s} s`,
    noTarget: 'The plan asks for no hold.',
  },

  verdict: {
    title: 'Last repetition',
    none: 'No repetition yet',
    noneDetail: 'The first verdict stands here after the first catch.',
    passed: 'Passed',
    notPassed: 'Not passed',
    notScored: 'Not scored',
    ball: 'Ball',
    practiceSwing: 'Practice swing',
    ignored: 'Ignored',
    ballDetail: 'Measured from the top to delivery, listed without a verdict.',
    practiceSwingDetail: 'Listed, not counted.',
    number: (index: number) => `Repetition ${index}`,
  },

  ledger: {
    title: 'Ledger',
    rehearsals: (n: number) => (n === 1 ? '1 rehearsal' : `${n} rehearsals`),
    balls: (n: number) => (n === 1 ? '1 ball' : `${n} balls`),
    kept: (ratio: string, asked: string) => `${ratio} to 1 kept, ${asked} asked`,
    noRatio: (asked: string) => `${asked} asked`,
    asked: (rehearsals: number, balls: number) => `${rehearsals} to ${balls}`,
    next: ledgerText,
    empty: 'Rehearsals and balls line up here.',
    entry: {
      passed: 'rehearsal passed',
      notPassed: 'rehearsal not passed',
      notScored: 'rehearsal not scored',
      ball: 'ball',
      practiceSwing: 'practice swing',
      ignored: 'ignored',
    },
    legend: 'Filled circle passed, open circle not passed, triangle ball, dash practice swing',
  },

  measures: {
    title: 'Measures of the last repetition',
    none: 'The measures of each repetition stand here with the plan’s targets.',
    in: 'in the target',
    out: 'outside the target',
    info: MEASURE_INFO,
    label: measureLabel,
    value: (key: MeasureKey, value: number | null, target?: Target): string =>
      measureText(key, value, target, VALUE_WORDS),
    fall: (cm: number, unit: FallUnit, measured: boolean) =>
      `The club fell about ${fallText(cm, unit)}: ${
        measured
          ? 'from the free fall that the sensor on the club felt.'
          : 'what a dropped body falls in the time from letting go to the catch; less where the hand slowed it.'
      }`,
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
    basis: `Bracket: target, a ${TARGET_BASIS}.`,
    whisker: 'Whisker: how sure.',
    explain: 'What it is, how sure',
    sure: (text: string) => `How sure: ${text}.`,
    cannotSee: 'It cannot see:',
  },

  body: {
    title: 'Body',
    faceOn: 'Face on',
    downTheLine: 'Down the line',
    ghost: 'Dashed: your address',
    none: 'The figures appear once the calibration is accepted.',
    honest: 'Drawn from the chest and the trail arm. Legs and head are not measured.',
    describe: (view: string, flexion: string, turn: string) =>
      `${view}: chest bent forward ${flexion}, turned ${turn}`,
  },

  curves: {
    title: 'Last 10 seconds',
    flexion: 'Flexion',
    turn: 'Turn to the target',
    kept: 'Arm rotation since the top',
    now: 'now',
    none: 'The curves start once the calibration is accepted.',
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
      retrying: 'trying again',
      ended: 'ended',
    },
    rate: (hz: string, nominal: string) => `${hz} of ${nominal} Hz`,
    rateOnly: (hz: string) => `${hz} Hz`,
    noRate: 'no rate yet',
    lost: (pct: string) => `${pct} % lost`,
    age: (ms: string) => `${ms} ago`,
    battery: (pct: number) => `battery ${pct} %`,
    none: 'No sensor has reported yet.',
    lostSpoken: (name: string) => `${name} sensor lost.`,
    backSpoken: (name: string) => `${name} sensor is back.`,
    silent: (name: string) =>
      `${name}: no readings. Practice goes on and the sensor is looked for again by itself; what you do meanwhile is not scored.`,
    silentFor: (s: number) => `(${s} s)`,
  },

  desk,

  warnings: {
    title: 'Warning',
    acknowledge: 'I have read this',
    stored: 'Stored with the session.',
  },

  sound: {
    label: 'Sound',
    locked: 'Sound on',
    lockedWhy: 'The browser keeps sound off until you press a key or tap.',
    mute: 'Mute',
    unmute: 'Unmute',
    muted: 'Muted',
    volume: 'Volume',
    rate: 'Speech rate',
    captions: 'Spoken',
    noCaption: 'What is spoken also stands here.',
    noVoices: 'This computer has no English voice: tones and captions only.',
    try: 'Hear the tones',
    tone: {
      listening: 'Listening',
      holdReached: 'Hold reached',
      passed: 'Passed',
      notPassed: 'Not passed',
      ballNext: 'Ball is next',
      warning: 'Warning',
      sensorLost: 'Sensor lost',
    },
  },
  spoken: { calibrated: 'Calibrated.', begin: 'Ready. Take your address.' },

  look: {
    settings: 'More',
    fallUnit: 'Fall of the club in',
    units: { cm: 'centimetres', in: 'inches' },
    theme: 'Look',
    system: 'As the system',
    light: 'Light',
    dark: 'Dark',
    far: 'Far view',
    near: 'Near view',
    farWhy: 'Only what reads from 4 m (key F)',
    nearWhy: 'With body, curves and measures (key F)',
    pause: 'Pause',
    resume: 'Resume',
    close: 'Close',
    keys: 'Keys',
    keyList: [
      ['F', 'far or near view'],
      ['P', 'pause or resume'],
      ['M', 'mute or unmute'],
      ['H', 'it hurts: rate a pain'],
      ['R B I', 'the last one was a rehearsal, a ball, nothing'],
      ['U', 'take a correction back'],
      ['E', 'end the practice'],
      ['Enter', 'acknowledge the newest warning'],
    ] as const,
    keysOn: 'Single keys work',
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
          'It knows no safe angle, no load on the back and no diagnosis, and it does not prevent injury.',
          'An upper-arm sensor under-reads rotation; the ranges it warns about are your own, measured by you.',
        ],
      },
    ],
  },

  error: {
    title: 'The page has stopped',
    help: 'Something in the page broke. The service and your recording go on. Reload the page.',
    reload: 'Reload',
    noAnswer: 'The service did not answer. Try again.',
  },
  pain: {
    button: 'Pain',
    title: 'Pain now?',
    paused: 'The practice is paused.',
    send: 'Tell it',
    cancel: 'No pain, go on',
  },
  correct: {
    title: (index: number) => `What was repetition ${index}?`,
    measured: (kind: string) => `It was taken for: ${kind}.`,
    kinds: {
      rehearsal: 'a rehearsal',
      ball: 'a ball',
      practiceSwing: 'a practice swing',
      ignored: 'nothing to count',
    },
    undo: 'Take the last correction back',
    close: 'Leave it',
    hint: 'Tap a sign to correct it.',
  },
  end: {
    button: 'End',
    title: 'End this practice?',
    text: 'What was measured stays. You come to the summary.',
    yes: 'End it',
    no: 'Go on',
  },
  unit: { deg: '°', ms: 'ms', s: 's' },
};
