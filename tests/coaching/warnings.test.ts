import { describe, expect, it } from 'vitest';
import type { SafetyWarning, WarningId } from '../../src/coaching/judgement.ts';
import type { OwnRange } from '../../src/coaching/plan.ts';
import { ownRangeWarning, startOwnRange } from '../../src/coaching/ownRangeWarning.ts';
import {
  NOT_A_MEDICAL_DEVICE,
  OTHERS_COME_FIRST,
  RED_FLAGS,
  SAFETY_TEXTS,
} from '../../src/coaching/safetyTexts.ts';
import {
  standingWarnings,
  stepWarnings,
  type KeptWarning,
} from '../../src/coaching/standingWarnings.ts';
import {
  missedWarning,
  NO_HISTORY,
  painNextDayWarning,
  painWarning,
  startWarnings,
  volumeWarning,
  warningOf,
} from '../../src/coaching/warnings.ts';
import type { JointAngles } from '../../src/body/segments.ts';
import { rehearsal } from './repetitions.ts';

const ids = (warnings: readonly SafetyWarning[]): WarningId[] => warnings.map((w) => w.id);
const pain = (
  rating: number,
  atStart: number | null = null,
  signs: Parameters<typeof painWarning>[0]['signs'] = [],
) => painWarning({ rating, atStart, signs, atS: 60 });

// Bands: pain-monitoring model (Thomee 1997; Silbernagel 2007), from memory.
describe('pain', () => {
  it.each([
    [0, null, undefined],
    [3, null, undefined],
    [3, 2, undefined],
    [3, 1, 'pain-now'],
    [2, 0, 'pain-now'],
    [4, 4, 'pain-now'],
    [5, null, 'pain-now'],
    [6, 6, 'pain-high'],
    [10, null, 'pain-high'],
  ])('rated %d after %s at the start gives %s', (rating, atStart, id) => {
    expect(pain(rating, atStart)?.id).toBe(id);
  });

  it('names the rating', () => {
    expect(pain(4)?.text).toBe(
      'You rated your pain 4 of 10. Stop for today. If it is still there tomorrow, see a licensed health professional.',
    );
  });

  it.each(['sharp', 'locking', 'giving way', 'numb'] as const)(
    'that is %s ends the session at any rating',
    (sign) => {
      expect(pain(1, 1, [sign])?.id).toBe('pain-high');
      expect(SAFETY_TEXTS['pain-high'].endsSession).toBe(true);
    },
  );

  it('above the baseline next time has not settled', () => {
    expect(painNextDayWarning(3, 2)?.text).toMatch(/not settled\. Rest or halve/);
    expect(painNextDayWarning(2, 2)).toBeNull();
    expect(painNextDayWarning(5, null)).toBeNull();
  });
});

describe('before the start', () => {
  it('asks for club and space each session, history at first use, and a warm-up', () => {
    const none = { clubConfirmed: false, historyConfirmed: false, warmedUp: false, redFlag: false };
    expect(ids(startWarnings(none))).toEqual(['history', 'club', 'warm-up']);
    expect(
      startWarnings({
        clubConfirmed: true,
        historyConfirmed: true,
        warmedUp: true,
        redFlag: false,
      }),
    ).toEqual([]);
  });

  it('puts a sign that can need urgent care first', () => {
    const checks = { clubConfirmed: false, historyConfirmed: true, warmedUp: true, redFlag: true };
    expect(ids(startWarnings(checks))).toEqual(['red-flag', 'club']);
    expect(RED_FLAGS).toHaveLength(7);
  });
});

describe('volume', () => {
  const plan = { volume: { perSession: 60, perWeek: 200 } };
  const warnedAt = (history = NO_HISTORY, most = 250): number[] =>
    Array.from({ length: most }, (_, i) => i + 1).filter((n) => volumeWarning(n, history, plan, n));

  it("warns once, at the repetition over the plan's session", () => {
    expect(warnedAt()).toEqual([61]);
  });

  it("warns over the plan's week", () => {
    expect(warnedAt({ thisWeek: 180, weeksBefore: [] })).toEqual([21]);
  });

  it('warns over one and a half times the own four-week mean', () => {
    expect(warnedAt({ thisWeek: 50, weeksBefore: [40, 40, 40, 40] })).toEqual([11]);
  });

  it('warns at the first repetition when the limit was passed before', () => {
    expect(warnedAt({ thisWeek: 300, weeksBefore: [] })).toEqual([1]);
  });

  it.each([[[40, 40, 40]], [[0, 0, 0, 0]]])('knows no usual from weeks of %j', (weeksBefore) => {
    expect(warnedAt({ thisWeek: 0, weeksBefore })).toEqual([61]);
  });
});

describe('missed catches', () => {
  /** `x` missed, `o` caught, `?` not scored. */
  const warns = (letters: string): boolean =>
    missedWarning(
      [...letters].map((l) =>
        rehearsal({ flags: l === 'x' ? ['landed'] : l === '?' ? ['gap'] : [] }),
      ),
    ) !== null;

  it.each([
    ['x', false],
    ['xx', true],
    ['xooox', true],
    ['xoooox', false],
    ['xxo', false],
    ['oxx?', false],
    ['x?????x', true],
    ['', false],
  ])('in %s: warns %s', (letters, expected) => {
    expect(warns(letters)).toBe(expected);
  });
});

const angles = (a: Partial<JointAngles>): JointAngles => ({
  flexionDeg: 30,
  lateralDeg: 0,
  leanDeg: 30,
  turnDeg: 0,
  elevationDeg: 80,
  planeDeg: 30,
  externalRotationDeg: 40,
  valid: true,
  ...a,
});

function excursions(own: OwnRange, curve: Partial<JointAngles>[]): string[] {
  const state = startOwnRange();
  const plan = { ownRange: own };
  return curve.flatMap((a, i) =>
    ownRangeWarning(state, angles(a), i, plan).map((w) => `${w.id}@${w.atS}`),
  );
}
const rotations = (list: (number | null)[]) =>
  list.map((externalRotationDeg) => ({ externalRotationDeg }));

describe('the own comfortable range', () => {
  it('never warns when none was measured', () => {
    expect(excursions({}, [{ externalRotationDeg: 170, flexionDeg: 140, lateralDeg: 80 }])).toEqual(
      [],
    );
  });

  it('warns within 10 degrees of the own end of external rotation', () => {
    expect(excursions({ externalRotationDeg: 90 }, rotations([79, 80, 81]))).toEqual([
      'own-range@2',
    ]);
  });

  it('warns once for one excursion that trembles about the limit, and again for the next', () => {
    const curve = rotations([81, 79, 82, 78, 81, null, 85, 74, 81]);
    expect(excursions({ externalRotationDeg: 90 }, curve)).toEqual(['own-range@0', 'own-range@8']);
  });

  it('says nothing about the arm below 60 degrees of elevation', () => {
    const low = { elevationDeg: 60, externalRotationDeg: 100 };
    expect(excursions({ externalRotationDeg: 90 }, [low])).toEqual([]);
    expect(excursions({ externalRotationDeg: 90 }, [{ ...low, elevationDeg: 61 }])).toEqual([
      'own-range@0',
    ]);
  });

  it('starts afresh after the arm came down', () => {
    const up = { externalRotationDeg: 85 };
    const down = { elevationDeg: 20, externalRotationDeg: null };
    expect(excursions({ externalRotationDeg: 90 }, [up, down, up])).toEqual([
      'own-range@0',
      'own-range@2',
    ]);
  });

  it('warns when the trunk is more than 5 degrees beyond, forward or to either side', () => {
    const own = { flexionDeg: 60, lateralTrailDeg: 30, lateralLeadDeg: 25 };
    expect(excursions(own, [{ flexionDeg: 65 }, { flexionDeg: 65.1 }])).toEqual([
      'trunk-own-range@1',
    ]);
    expect(excursions(own, [{ lateralDeg: 36 }])).toEqual(['trunk-own-range@0']);
    expect(excursions(own, [{ lateralDeg: -29 }, { lateralDeg: -31 }])).toEqual([
      'trunk-own-range@1',
    ]);
  });

  it('is not moved by numbers that are not finite', () => {
    const nan = { flexionDeg: NaN, elevationDeg: NaN, externalRotationDeg: NaN };
    expect(
      excursions({ externalRotationDeg: 90, flexionDeg: 60 }, [nan, { externalRotationDeg: NaN }]),
    ).toEqual([]);
  });
});

describe('standing warnings', () => {
  const raise = (kept: readonly KeptWarning[], id: WarningId, atS: number) =>
    stepWarnings(kept, { type: 'raised', warning: warningOf(id, atS) });

  it('stay until acknowledged, and are kept', () => {
    const one = raise(raise([], 'missed', 5), 'missed', 9);
    expect(standingWarnings(one)).toHaveLength(1);
    const seen = stepWarnings(one, { type: 'acknowledged', id: 'missed', atS: 12 });
    expect(standingWarnings(seen)).toEqual([]);
    expect(seen).toEqual([{ ...warningOf('missed', 5), acknowledgedAtS: 12 }]);
    expect(standingWarnings(raise(seen, 'missed', 20))).toHaveLength(1);
  });

  it('are acknowledged one by one', () => {
    const two = raise(raise([], 'missed', 5), 'volume', 6);
    const left = standingWarnings(
      stepWarnings(two, { type: 'acknowledged', id: 'missed', atS: 7 }),
    );
    expect(ids(left)).toEqual(['volume']);
  });
});

// Each text keeps the meaning that the safety design gives it; these are the parts that carry it.
describe('the wording of warnings', () => {
  it.each<[WarningId, RegExp[]]>([
    [
      'club',
      [/3 m/, /children, pets or onlookers/, /closed shoes/i, /ceiling/, /short or padded club/],
    ],
    [
      'history',
      [
        /dislocation/i,
        /back surgery/,
        /osteoporosis/,
        /pregnancy/,
        /ask a licensed professional before/,
      ],
    ],
    ['warm-up', [/10 minutes/, /may lower/]],
    ['pain-now', [/\{pain\} of 10/, /stop for today/i, /licensed health professional/]],
    [
      'pain-high',
      [/stop now/i, /licensed health professional before you practise again/, /session ends/],
    ],
    ['pain-next-day', [/not settled/, /rest or halve/i, /licensed professional/]],
    ['red-flag', [/urgent care/, /seek medical help now/]],
    ['own-range', [/you measured as comfortable/, /do not force/i]],
    ['trunk-own-range', [/trunk/, /you measured as comfortable/, /do not force/i]],
    ['volume', [/more than your usual/, /overuse/]],
    ['missed', [/two of the last five/i, /catch it earlier or use a lighter club/i]],
  ])('%s says what it must', (id, parts) => {
    for (const part of parts) expect(SAFETY_TEXTS[id].text).toMatch(part);
    expect(SAFETY_TEXTS[id].evidence).not.toBe('');
  });

  it('promises no safety, gives no safe angle and makes no diagnosis', () => {
    const all = [
      ...Object.values(SAFETY_TEXTS).map((t) => t.text),
      NOT_A_MEDICAL_DEVICE,
      OTHERS_COME_FIRST,
    ].join(' ');
    expect(all).not.toMatch(/prevent|\bsafe\b|diagnos|degrees|°|guarantee/i);
  });

  it('defers to local rules and licensed professionals', () => {
    expect(OTHERS_COME_FIRST).toMatch(
      /Stop on pain.*local rules.*range's or club's rules.*licensed health professional.*first/,
    );
    expect(NOT_A_MEDICAL_DEVICE).toMatch(/not a medical device.*not injury risk/);
  });
});
