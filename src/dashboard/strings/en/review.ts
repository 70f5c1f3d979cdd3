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
  loading: 'Opening the session.',
  failed: 'The session could not be opened.',
  again: 'Try again',
  plan: 'Plan kept?',
  mixKept: (balls: number, asked: string): string =>
    `Mix kept: ${balls === 1 ? 'the ball' : `all ${balls} balls`} came after enough rehearsals (${asked}).`,
  mixNotKept: (early: number, balls: number, asked: string): string =>
    `Mix not kept: ${early} of ${count(balls, 'ball')} came too early (${asked}).`,
  ballsNotAsked: (balls: number): string =>
    `Mix not kept: ${count(balls, 'ball')} in a stage of rehearsals only.`,
  noBalls: (asked: string): string => `No ball was hit (${asked}).`,
  rehearsalsOnly: 'Rehearsals only, as asked.',
  asked: (rehearsals: number, balls: number): string => `${rehearsals} to ${balls} asked`,
  volumeKept: (done: number, most: number): string =>
    `Volume kept: ${done} of at most ${most} repetitions.`,
  volumeNotKept: (done: number, most: number): string =>
    `Volume not kept: ${done} repetitions, at most ${most} asked.`,
  weekKept: (done: number, most: number): string =>
    `Week kept: ${done} of at most ${most} in the seven days up to it.`,
  weekNotKept: (done: number, most: number): string =>
    `Week not kept: ${done} in the seven days up to it, at most ${most} asked.`,
  warnings: 'Warnings',
  sensors: {
    title: 'How well the sensors did',
    rate: (perSecond: string): string => `${perSecond} readings a second`,
    lost: (pct: string): string => `${pct} % lost`,
    gaps: (n: number, s: string): string => (n === 0 ? 'no gap' : `${count(n, 'gap')} (${s} s)`),
    saturated: (n: number): string => `${count(n, 'reading')} at the end of the range`,
    clock: (ms: string): string => `clock steady to ${ms} ms`,
  },
  head: {
    title: 'Measures of the session',
    measure: 'Measure',
    target: 'Target',
    rehearsals: 'Rehearsals',
    balls: 'Balls',
    picture: 'Median and middle half',
    n: (n: number): string => `n ${n}`,
    reached: (reached: number, judged: number): string => `${reached} of ${judged} in the target`,
    middle: (low: string, high: string): string => `middle half ${low} to ${high}`,
    none: 'none',
    nothing: 'No rehearsal and no ball could be measured.',
    few: 'Few repetitions: a median of fewer than five says little.',
    note: 'Value: median. ±: how sure one value is on people; much of it is the same in every repetition, so more repetitions do not make it smaller. Repetitions with lost samples are left out.',
  },
  examples: 'Look at',
  example: {
    typical: 'Typical',
    best: 'Best',
    worst: 'Worst',
  },
  exampleOf: (name: string, index: number): string => `${name}: repetition ${index}`,
  tooFewForExamples: 'Fewer than three scored rehearsals: none stands for the session.',
  strip: {
    title: 'All repetitions in time',
    hint: 'Arrow keys walk, Enter opens.',
    noted: (text: string): string => `noted: ${text}`,
    corrected: (detected: string): string => `set by hand, found as ${detected}`,
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
      `The neighbours are ${shown} of ${count(all, 'repetition')}: those that the filter shows.`,
    clear: 'Show all',
    shown: (shown: number, all: number): string =>
      shown === all ? `All ${count(all, 'repetition')}` : `${shown} of ${count(all, 'repetition')}`,
    nothing: 'No repetition is of the chosen kinds.',
  },
  multiples: {
    title: 'Side by side',
    loading: (n: number): string => `Drawing ${count(n, 'repetition')} …`,
    failed: 'The curves could not be had:',
    legend: (time: string, flexion: string, turn: string): string =>
      `Each ${time} around the release (upright line; for balls and practice swings the fastest turn before impact). Above: flexion, ${flexion}. Below: turn, ${turn}. The same axes in all.`,
    typical: (index: number): string => `Grey: repetition ${index}, the typical one.`,
    around: (from: string, to: string): string => `from ${signed(from)} to +${to} s`,
    range: (low: string, high: string): string => `${signed(low)} to ${signed(high)}°`,
  },
  none: 'The session has no repetition. Practise a little longer, or look at the sensors page whether both sensors streamed.',
  few: (n: number): string =>
    `Only ${count(n, 'repetition')}: look at ${n === 1 ? 'it' : 'each'}, and do not compare medians.`,
  repetition: {
    title: (index: number): string => `Repetition ${index}`,
    missing: (index: number): string => `The session has no repetition ${index}.`,
    of: (mark: string, at: string): string => `${mark}, at ${at}`,
    back: 'All repetitions',
    previous: 'Previous',
    next: 'Next',
    keys: 'Left and right go to the neighbours, Escape goes back.',
    curves: 'Curves',
    loading: 'Fetching the curves …',
    failed: 'The curves could not be had:',
    empty: 'No sample of this repetition is whole: there is nothing to draw.',
    names: {
      flexionDeg: 'Flexion',
      turnDeg: 'Turn to the target',
      leanDeg: 'Lean',
      elevationDeg: 'Arm raised (elevation)',
      keptRotationDeg: 'Arm turned out since the top',
    },
    describe: (names: string, from: string, to: string): string =>
      `Curves of ${names} from ${from} to ${to} s around the alignment; read the values with the scrubber`,
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
    stepped: 'Your system asks for less motion: play goes from moment to moment.',
    time: (s: string): string => `${signed(s)} s`,
    from: {
      rehearsal: 'from the release',
      ball: 'from delivery',
      practiceSwing: 'from delivery',
    },
    value: (deg: string): string => `${signed(deg)}°`,
    noValue: 'no value',
    body: 'Body',
    ghost: 'Dashed: the address',
    noGhost: 'The address of this repetition was lost.',
    lost: 'samples lost',
    honest: 'Drawn from the chest and the trail arm. Legs and head are not measured.',
    measures: 'Measures',
    know: 'What to know about it',
    cue: 'Cue',
    ballNotJudged: 'Balls are measured beside the targets, not judged.',
    swingNotJudged: 'Practice swings are listed, not judged and not counted.',
    releaseIs: 'The release is the start of the chest: two sensors do not see the hand open.',
    catchSure: (of1: string): string =>
      `How far the shock of the catch stands out of the signal: ${of1} of 1.`,
    noFlags: 'Nothing disturbed this repetition.',
    marked: (found: Kind, said: Kind): string =>
      `Found as ${KINDS[found]}, set by hand as ${KINDS[said]}${
        said === 'ignored'
          ? ': its numbers are left out of all that is summed up.'
          : ' and measured as that.'
      }`,
    lastTimes: 'Release and arm start are sure to about 25 ms, the catch to 15 ms.',
  },
  compare: {
    label: 'Compare with',
    none: 'no other',
    option: (index: number, mark: string): string => `${index}: ${mark}`,
    title: (here: number, beside: number): string => `${here} against ${beside}`,
    legend: (here: number, beside: number): string =>
      `Solid: repetition ${here}. Dashed: repetition ${beside}.`,
    aligned: 'Both stand at the release (balls and practice swings at delivery).',
    columns: { measure: 'Measure', difference: 'Difference', read: 'Reading' },
    clear: 'larger than the uncertainty',
    within: 'within the uncertainty',
    notBoth: 'not taken in both',
    note: 'One repetition against one (n 1 and 1): whether the next ones would differ the same way, this cannot say. ± is the root of 2 times what one value is sure to.',
    bodies: (beside: number): string => `Dashed: repetition ${beside} at the same moment`,
  },
};
