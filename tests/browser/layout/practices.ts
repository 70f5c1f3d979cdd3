import { CUE_TEXTS } from '../../../src/coaching/cues.ts';
import type { WarningId } from '../../../src/coaching/judgement.ts';
import { SAFETY_TEXTS } from '../../../src/coaching/safetyTexts.ts';
import {
  CALIBRATION_ORDER,
  KEEPING_TEXTS,
  type PracticeView,
} from '../../../src/streaming/contract.ts';
import type { Phase } from '../../../src/analysis/contract.ts';

type Change = (view: PracticeView) => PracticeView;

const LONGEST: readonly WarningId[] = [
  'pain-now',
  'pain-next-day',
  'missed',
  'own-range',
  'trunk-own-range',
];

const warned =
  (count: number): Change =>
  (view) => ({
    ...view,
    warnings: LONGEST.slice(0, count).map((id) => ({
      id,
      text: SAFETY_TEXTS[id].text.replace('{pain}', '4'),
      atS: 60,
      acknowledgedAtS: null,
    })),
  });

const inPhase =
  (phase: Phase, holdS = 0): Change =>
  (view) => ({ ...view, phase: { phase, sinceS: 60, holdS } });

/** A long session: two rehearsals to a ball, many of each. */
const manyDone: Change = (view) => ({
  ...view,
  strip: Array.from({ length: 60 }, (_, i) => ({
    index: i + 1,
    kind: i % 3 === 2 ? ('ball' as const) : ('rehearsal' as const),
    corrected: i % 7 === 0,
    passed: i % 3 === 2 ? null : i % 2 === 0,
  })),
  ledger: { ...view.ledger, rehearsals: 128, balls: 64, ratio: 2, canUndo: true, next: 'ball' },
});

const said =
  (code: keyof typeof CUE_TEXTS): Change =>
  (view) => {
    const { last } = view;
    if (last?.kind !== 'rehearsal') return view;
    const cue = {
      code: code.replace(/:.*$/, ''),
      text: CUE_TEXTS[code],
    } as typeof last.verdict.cue;
    return { ...view, last: { ...last, verdict: { ...last.verdict, cue } } };
  };

/** The first calibration, at its step `done + 1`. */
const calibrating =
  (done: number): Change =>
  (view) => {
    const { steps } = view.calibration;
    const under = { ...view, calibration: { steps: steps.slice(0, done), quality: null } };
    return inPhase('calibrating')({ ...under, pose: null, addressPose: null });
  };

const silent: Change = (view) => ({
  ...view,
  sensors: view.sensors.map((sensor) => ({ ...sensor, state: 'lost', ageMs: 12_000 })),
});

const notKept: Change = (view) => ({
  ...view,
  keeping: { sessionId: 's', problem: Object.values(KEEPING_TEXTS).sort(byLength)[0] ?? '' },
});

const byLength = (a: string, b: string): number => b.length - a.length;

const all =
  (...changes: readonly Change[]): Change =>
  (view) =>
    changes.reduce((next, change) => change(next), view);

const replayed: Change = (view) => ({ ...view, source: { ...view.source, kind: 'replay' } });

/** What a practice may look like at its fullest. */
export const PRACTICES: Readonly<Record<string, Change>> = {
  calm: all(inPhase('waiting'), said('not-scored:range')),
  'hold, one warning': all(manyDone, inPhase('top', 0.9), warned(1), said('chest-first:together')),
  'let go': all(inPhase('top', 9), said('keep-arm-out')),
  'two warnings': all(manyDone, inPhase('released'), warned(2)),
  'three warnings': all(inPhase('caught'), warned(3)),
  'five warnings': all(manyDone, inPhase('address'), warned(5), said('not-scored:chestLeadMs')),
  'sensors lost': all(manyDone, inPhase('paused'), warned(1), silent),
  ...Object.fromEntries(
    CALIBRATION_ORDER.map((step, done) => [`calibration, ${step}`, calibrating(done)]),
  ),
  'not kept': all(inPhase('backswing'), notKept, replayed),
};
