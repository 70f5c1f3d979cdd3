import { count } from './count.ts';
const signed = (text: string): string => (text.startsWith('-') ? `−${text.slice(1)}` : text);

const KINDS = {
  rehearsal: 'a rehearsal',
  ball: 'a ball',
  practiceSwing: 'a practice swing',
  ignored: 'nothing to count',
} as const;
type Kind = keyof typeof KINDS;

/** One session under review. */
export const review = {
  loading: 'Loading the session …',
  failed: 'The session could not be opened.',
  again: 'Retry',
  plan: 'Followed the plan?',
  mixKept: (balls: number, asked: string): string =>
    `Mix: OK. ${balls === 1 ? 'The ball' : `All ${balls} balls`} came after enough rehearsals (${asked}).`,
  mixNotKept: (early: number, balls: number, asked: string): string =>
    `Mix: ${early} of ${count(balls, 'ball')} came too early (${asked}).`,
  ballsNotAsked: (balls: number): string =>
    `Mix: ${count(balls, 'ball')}, but this stage has rehearsals only.`,
  noBalls: (asked: string): string => `No balls (${asked}).`,
  rehearsalsOnly: 'Mix: OK. Rehearsals only, as planned.',
  asked: (rehearsals: number, balls: number): string => `plan: ${rehearsals} to ${balls}`,
  volumeKept: (done: number, most: number): string =>
    `Volume: OK. ${done} of at most ${most} repetitions.`,
  volumeNotKept: (done: number, most: number): string =>
    `Volume: too many. ${done} repetitions, plan: at most ${most}.`,
  weekKept: (done: number, most: number): string =>
    `Week: OK. ${done} of at most ${most} repetitions in the seven days up to this session.`,
  weekNotKept: (done: number, most: number): string =>
    `Week: too many. ${done} repetitions in the seven days up to this session, plan: at most ${most}.`,
  warnings: 'Warnings',
  sensors: {
    title: 'Sensor data',
    rate: (perSecond: string): string => `${perSecond} readings a second`,
    lost: (pct: string): string => `${pct} % lost`,
    gaps: (n: number, s: string): string => (n === 0 ? 'no gap' : `${count(n, 'gap')} (${s} s)`),
    saturated: (n: number): string => `${count(n, 'reading')} over range`,
    clock: (ms: string): string => `clock jitter ${ms} ms`,
  },
  head: {
    title: 'Measures of the session',
    measure: 'Measure',
    target: 'Target',
    rehearsals: 'Rehearsals',
    balls: 'Balls',
    picture: 'Median and middle half',
    n: (n: number): string => count(n, 'repetition'),
    reached: (reached: number, judged: number): string => `${reached} of ${judged} on target`,
    middle: (low: string, high: string): string => `half were between ${low} and ${high}`,
    none: 'none',
    nothing: 'No rehearsals or balls could be measured.',
    few: 'Few repetitions: a median of fewer than five is not reliable.',
    note: 'Value: median. ±: measurement error of one value on people. Much of it is the same in every repetition, so more repetitions do not reduce it. Repetitions with lost data are not included.',
  },
  examples: 'Examples',
  example: {
    typical: 'Typical',
    best: 'Best',
    worst: 'Farthest from target',
  },
  exampleOf: (name: string, index: number): string => `${name}: repetition ${index}`,
  tooFewForExamples: 'Fewer than three scored rehearsals: too few for a typical one.',
  strip: {
    title: 'All repetitions in order',
    hint: 'Arrow keys: move. Enter: open.',
    noted: (text: string): string => `note: ${text}`,
    corrected: (detected: string): string => `corrected by hand, detected as ${detected}`,
    kinds: KINDS,
    name: (index: number, mark: string, at: string): string => `${index}: ${mark}, at ${at}`,
    plus: (notes: readonly string[]): string => notes.map((n) => `; ${n}`).join(''),
  },
  filter: {
    title: 'Show',
    all: 'All',
    one: (mark: string, n: number): string => `${mark} (${n})`,
    marks: {
      passed: 'Rehearsals passed',
      notPassed: 'not passed',
      notScored: 'not scored',
      ball: 'Balls',
      practiceSwing: 'Practice swings',
      ignored: 'Ignored',
    },
    through: (shown: number, all: number): string =>
      `Previous and Next go through ${shown} of ${count(all, 'repetition')} (filter on).`,
    clear: 'Show all',
    shown: (shown: number, all: number): string =>
      shown === all ? `All ${count(all, 'repetition')}` : `${shown} of ${count(all, 'repetition')}`,
    nothing: 'No repetitions match the filter.',
  },
  multiples: {
    title: 'Side by side',
    loading: (n: number): string => `Loading ${count(n, 'repetition')} …`,
    failed: 'The curves could not be had:',
    legend: (time: string, flexion: string, turn: string): string =>
      `Each ${time} around the release (vertical line; for balls and practice swings the fastest turn before impact). Top: flexion, ${flexion}. Bottom: turn, ${turn}. All use the same axes.`,
    typical: (index: number): string => `Grey: repetition ${index}, the typical one.`,
    around: (from: string, to: string): string => `from ${signed(from)} to +${to} s`,
    range: (low: string, high: string): string => `${signed(low)} to ${signed(high)}°`,
  },
  none: 'This session has no repetitions. Practise a little longer, or check on the Sensors page that both sensors were sending data.',
  few: (n: number): string =>
    `Only ${count(n, 'repetition')}: look at ${n === 1 ? 'it' : 'each one'}; medians are not reliable.`,
  repetition: {
    title: (index: number): string => `Repetition ${index}`,
    missing: (index: number): string => `This session has no repetition ${index}.`,
    of: (mark: string, at: string): string => `${mark}, at ${at}`,
    back: 'All repetitions',
    previous: 'Previous',
    next: 'Next',
    keys: 'Left and right: previous and next. Escape: back.',
    curves: 'Curves',
    loading: 'Loading the curves …',
    failed: 'The curves could not be had:',
    empty: 'No complete data for this repetition. There is nothing to draw.',
    names: {
      flexionDeg: 'Flexion',
      turnDeg: 'Turn to the target',
      leanDeg: 'Lean',
      elevationDeg: 'Arm raised (elevation)',
      keptRotationDeg: 'Arm rotation from the top',
    },
    describe: (names: string, from: string, to: string): string =>
      `Curves of ${names} from ${from} to ${to} s around the aligned moment. Use the slider to read values.`,
    event: {
      start: 'Start',
      top: 'Top',
      release: 'Release',
      armStart: 'Arm start',
      catch: 'Catch',
      delivery: 'Delivery',
      impact: 'Impact',
    },
    events: 'Go to',
    scrub: 'Moment',
    play: 'Play',
    stop: 'Stop',
    speed: 'Speed',
    speeds: { quarter: 'quarter', half: 'half', whole: 'real time' },
    stepped: 'Your system is set to reduced motion: playback jumps from moment to moment.',
    time: (s: string): string => `${signed(s)} s`,
    from: {
      rehearsal: 'from the release',
      ball: 'from delivery',
      practiceSwing: 'from delivery',
    },
    value: (deg: string): string => `${signed(deg)}°`,
    noValue: 'no value',
    body: 'Body',
    ghost: 'Dashed: at address',
    noGhost: 'No data at address for this repetition.',
    lost: 'data lost',
    measures: 'Measures',
    know: 'Notes on this repetition',
    cue: 'Cue',
    ballNotJudged: 'Balls are measured, not scored.',
    swingNotJudged: 'Practice swings are listed, not scored and not counted.',
    releaseIs: 'Release means the moment the chest starts. Two sensors cannot see the hand open.',
    catchSure: (clear: boolean): string =>
      clear ? 'Catch clearly seen.' : 'Catch hard to see: its time is less certain.',
    noFlags: 'No problems with this repetition.',
    marked: (found: Kind, said: Kind): string =>
      `Detected as ${KINDS[found]}, corrected by hand to ${KINDS[said]}${
        said === 'ignored' ? '. Its numbers are not included anywhere.' : '.'
      }`,
    lastTimes: 'Accuracy: release and arm start about 25 ms, catch 15 ms.',
  },
  compare: {
    label: 'Compare with',
    none: 'none',
    option: (index: number, mark: string): string => `${index}: ${mark}`,
    title: (here: number, beside: number): string => `${here} and ${beside} compared`,
    legend: (here: number, beside: number): string =>
      `Solid: repetition ${here}. Dashed: repetition ${beside}.`,
    aligned: 'Both are aligned at the release (balls and practice swings at delivery).',
    columns: { measure: 'Measure', difference: 'Difference', read: 'Meaning' },
    clear: 'larger than the measurement error',
    within: 'within the measurement error',
    notBoth: 'not measured in both',
    note: 'This compares one repetition with one other. It cannot show whether the next ones would differ in the same way. ± is the error of one value times the square root of 2.',
    bodies: (beside: number): string => `Dashed: repetition ${beside} at the same moment`,
  },
};
