import { DEFAULT_PLAN, type Plan } from '../../coaching/plan.ts';

/** One practice of the demo club, as the simulator is asked for it. */
export interface DemoSession {
  readonly daysAgo: number;
  /** For `parseScript`. */
  readonly script: string;
  readonly painBefore?: number;
  readonly painAfter?: number;
  readonly note?: string;
  /** What the golfer's rehearsals centre on in this session, deg; else the golfer's own. */
  readonly keptRotationDeg?: number;
  readonly said?: readonly {
    readonly by: 'coach' | 'student';
    readonly text: string;
    /** The repetition that it is about. */
    readonly repetition?: number;
  }[];
}

export interface DemoStory {
  readonly login: string;
  readonly name: string;
  readonly hand: 'left' | 'right';
  readonly coach: 0 | 1;
  readonly joinedDaysAgo: number;
  /** Oldest first. */
  readonly plans: readonly { readonly daysAgo: number; readonly plan: Plan }[];
  readonly lessons: readonly { readonly daysAgo: number; readonly text: string }[];
  readonly sessions: readonly DemoSession[];
  /** The student's paired computer; without one, sessions come by mail. */
  readonly machine?: { readonly name: string; readonly seenHoursAgo: number };
  /** The coach has looked at all that is older. */
  readonly reviewedDaysAgo: number;
}

/** All invented. */
export const DEMO_COACHES = [
  { login: 'ines', name: 'Ines Harrow (demo)', role: 'owner' },
  { login: 'piet', name: 'Piet Amberley (demo)', role: 'coach' },
] as const;

/** Ready texts: title and sentence. */
export const DEMO_TEXTS = [
  ['Longer hold', 'Wait at the top until you hear the tick, then let go.'],
  ['Chest first', 'Let the chest start. The arm follows by itself.'],
] as const;

const HALF_YEAR = 182;
const PLAN: Plan = { ...DEFAULT_PLAN, volume: { perSession: 20, perWeek: 40 } };
const LONGER_HOLD: Plan = {
  ...PLAN,
  name: 'Longer hold',
  targets: { ...PLAN.targets, holdS: { min: 1.2 } },
};
const MOVEMENT: Plan = { ...PLAN, name: 'Movement first', stage: 'movement' };

/** Thirteen months: a year can be compared, and what was before it. */
const THIRTEEN_MONTHS = 396;
/** The same weeks a year ago are practised weekly, so that they can be compared. */
const YEAR_AGO = [357, 400] as const;

/** Days from one practice to the next, so many days ago: less often the longer ago, which keeps the club quick to fill. */
function apartDays(daysAgo: number): number {
  if (daysAgo <= 56) return 3.5;
  if (daysAgo <= HALF_YEAR) return 7;
  return daysAgo >= YEAR_AGO[0] && daysAgo <= YEAR_AGO[1] ? 7 : 21;
}

/** Practices from `from` to `to` days ago, oldest first; `share` runs from 0 to 1. */
function weekly(
  from: number,
  to: number,
  script: (share: number, at: number) => string,
): DemoSession[] {
  const days: number[] = [];
  for (let d = from; d >= to; d -= apartDays(d)) days.push(d);
  return days.map((d, i) => ({
    daysAgo: Math.round(d),
    script: script(i / Math.max(1, days.length - 1), i),
  }));
}

/** Six rehearsals, of which a part has the fault, and three balls. */
function mixed(fault: string, faulty: number, carry: number, at: number): string {
  const r = (i: number): string => ((i * 5 + at) % 6 < faulty * 6 ? `r:${fault}` : 'r');
  const b = `b:${carry.toFixed(2)}`;
  return `${r(0)} ${r(1)} ${b} ${r(2)} ${r(3)} ${b} ${r(4)} ${r(5)} ${b}`;
}

/** The arm keeps turned out until the last sessions, and from then on a little less each time. */
const DRIFTING = 9.5;
const drifting = (sessions: readonly DemoSession[]): readonly DemoSession[] =>
  sessions.map((s, i) => {
    const late = Math.max(0, 1 - (sessions.length - 1 - i) / DRIFTING);
    return { ...s, keptRotationDeg: -6 - 18 * late };
  });

const change = (
  sessions: readonly DemoSession[],
  fromEnd: number,
  more: Partial<DemoSession>,
): readonly DemoSession[] =>
  sessions.map((s, i) => (i === sessions.length - fromEnd ? { ...s, ...more } : s));

const first = (daysAgo: number, plan = PLAN): DemoStory['plans'] => [{ daysAgo, plan }];

export const DEMO_STORIES: readonly DemoStory[] = [
  {
    login: 'mara',
    name: 'Mara Ellery (demo)',
    hand: 'right',
    coach: 0,
    joinedDaysAgo: THIRTEEN_MONTHS,
    plans: first(THIRTEEN_MONTHS),
    lessons: [120, 60, 20].map((daysAgo) => ({ daysAgo, text: 'Lesson by video: hold and turn.' })),
    sessions: change(
      weekly(THIRTEEN_MONTHS - 2, 2, (x, i) =>
        mixed('short-hold', 0.7 * (1 - x), 0.4 + 0.5 * x, i),
      ),
      3,
      {
        said: [
          { by: 'coach', text: 'The hold is quiet now. Keep this pace.', repetition: 2 },
          { by: 'student', text: 'Thank you, it feels easier.' },
          { by: 'coach', text: 'Good. Same again next week.' },
          { by: 'student', text: 'May I hit a few more balls on Sunday?' },
        ],
      },
    ),
    machine: { name: 'Garage laptop', seenHoursAgo: 5 },
    reviewedDaysAgo: 1,
  },
  {
    login: 'oren',
    name: 'Oren Fallow (demo)',
    hand: 'left',
    coach: 0,
    joinedDaysAgo: THIRTEEN_MONTHS,
    plans: first(THIRTEEN_MONTHS),
    lessons: [{ daysAgo: 90, text: 'Chest before arm, slowly, without a club.' }],
    sessions: drifting(
      weekly(THIRTEEN_MONTHS - 3, 1, (x, i) => mixed('arms-first', 1 - x, 0.5 + 0.3 * x, i)),
    ),
    machine: { name: 'Tablet in the shed', seenHoursAgo: 20 },
    reviewedDaysAgo: 0.5,
  },
  {
    login: 'tilda',
    name: 'Tilda Rowe (demo)',
    hand: 'right',
    coach: 0,
    joinedDaysAgo: 150,
    plans: first(150),
    lessons: [],
    sessions: change(
      weekly(148, 3, () => 'r b b b r b b r b'),
      1,
      {
        said: [{ by: 'student', text: 'Is it bad to hit more balls when it goes well?' }],
      },
    ),
    reviewedDaysAgo: 14,
  },
  {
    login: 'jonas',
    name: 'Jonas Quill (demo)',
    hand: 'right',
    coach: 0,
    joinedDaysAgo: 160,
    plans: first(160),
    lessons: [{ daysAgo: 40, text: 'Shorter swings this month.' }],
    sessions: change(
      weekly(158, 2, (_x, i) => mixed('losing-lean', 0.3, 0.6, i)),
      1,
      {
        painBefore: 2,
        painAfter: 6,
        note: 'Lower back was sore towards the end.',
      },
    ),
    machine: { name: 'Kitchen laptop', seenHoursAgo: 30 },
    reviewedDaysAgo: 5,
  },
  {
    login: 'wanda',
    name: 'Wanda Thorne (demo)',
    hand: 'left',
    coach: 0,
    joinedDaysAgo: HALF_YEAR,
    plans: first(HALF_YEAR),
    lessons: [{ daysAgo: 100, text: 'First look at the catch.' }],
    sessions: weekly(HALF_YEAR - 1, 41, (_x, i) => mixed('missed-catch', 0.2, 0.6, i)),
    machine: { name: 'Old laptop', seenHoursAgo: 41 * 24 },
    reviewedDaysAgo: 30,
  },
  {
    login: 'edvin',
    name: 'Edvin Marsh (demo)',
    hand: 'right',
    coach: 1,
    joinedDaysAgo: THIRTEEN_MONTHS,
    plans: [
      { daysAgo: THIRTEEN_MONTHS, plan: PLAN },
      { daysAgo: 77, plan: LONGER_HOLD },
    ],
    lessons: [{ daysAgo: 77, text: 'New plan: a longer hold.' }],
    sessions: weekly(THIRTEEN_MONTHS - 2, 2, (x, i) =>
      mixed('short-hold', x < 0.55 ? 0.8 : 0.1, 0.6, i),
    ),
    machine: { name: 'Club laptop', seenHoursAgo: 3 },
    reviewedDaysAgo: 1,
  },
  {
    login: 'lio',
    name: 'Lio Carrow (demo)',
    hand: 'right',
    coach: 1,
    joinedDaysAgo: 30,
    plans: first(30, MOVEMENT),
    lessons: [],
    sessions: [
      { daysAgo: 9, script: 'r r r:losing-rotation' },
      { daysAgo: 4, script: 'r r:short-hold' },
    ],
    reviewedDaysAgo: 0,
  },
  {
    login: 'nele',
    name: 'Nele Abbott (demo)',
    hand: 'right',
    coach: 0,
    joinedDaysAgo: 3,
    plans: first(3, MOVEMENT),
    lessons: [],
    sessions: [{ daysAgo: 1, script: 'r:short-hold r r:arms-first r r' }],
    reviewedDaysAgo: 0,
  },
];
