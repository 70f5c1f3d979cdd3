import type { AnalysisOutput, AnalysisSettings } from '../analysis/contract.ts';
import type { WarningId } from '../coaching/judgement.ts';
import { isMark } from '../coaching/marks.ts';
import {
  type WarningAction,
  standingWarnings,
  stepWarnings,
} from '../coaching/standingWarnings.ts';
import type { SessionEvent } from '../sensors/sessionEvent.ts';
import { type CurveColumns, emptyCurve, pushPoint, trimCurve, wantsPoint } from './curve.ts';
import {
  bookMark,
  bookRepetition,
  ledgerView,
  newBook,
  type PracticeBook,
  stripView,
} from './book.ts';
import { type RecentPoses, keepPose, momentsOf, newRecentPoses } from './moments.ts';
import { type PoseView, drawnPose } from './pose.ts';
import {
  type PersonView,
  type PracticeView,
  type SourceView,
  type Stage,
  WARNINGS_KEPT,
} from './view.ts';

export type Section = keyof PracticeView;

/** The view as it is written, and what changed in it since the last hand-over. */
export interface PracticeDraft {
  view: Omit<PracticeView, 'curve'> & { readonly curve: CurveColumns };
  readonly book: PracticeBook;
  /** Pose at the newest stillness that may be an address. */
  stillPose: PoseView | null;
  readonly recent: RecentPoses;
  changed: Set<Section>;
  newPoints: CurveColumns;
}

/** A practice that starts by itself: a demonstration or a recording. */
const NO_GUIDE = { stage: 'practice' } as const;

const UNKNOWN: PersonView = { firstUse: true, painBefore: null, lastSession: null };

export function newDraft(
  practiceId: string,
  settings: AnalysisSettings,
  source: Pick<SourceView, 'kind' | 'simulated'>,
  begin: { readonly stage: Stage; readonly person?: PersonView | undefined } = NO_GUIDE,
): PracticeDraft {
  const book = newBook(settings.plan);
  return {
    book,
    stillPose: null,
    recent: newRecentPoses(),
    changed: new Set(),
    newPoints: emptyCurve(),
    view: {
      practiceId,
      hand: settings.hand,
      plan: settings.plan,
      stage: begin.stage,
      person: begin.person ?? UNKNOWN,
      guide: null,
      ownRange: {},
      source: { kind: source.kind, simulated: source.simulated, state: 'starting', reason: null },
      sensors: [],
      phase: { phase: 'calibrating', sinceS: 0, holdS: 0 },
      calibration: { steps: [], quality: null },
      pose: null,
      addressPose: null,
      curve: emptyCurve(),
      ledger: ledgerView(book),
      strip: [],
      last: null,
      warnings: [],
      keeping: null,
      summary: null,
    },
  };
}

/** Replaces one section and remembers that it changed. */
export function setSection<K extends Section>(
  draft: PracticeDraft,
  key: K,
  value: PracticeDraft['view'][K],
): void {
  draft.view = { ...draft.view, [key]: value };
  draft.changed.add(key);
}

/** Shows the book again after it changed. */
export function showBook(draft: PracticeDraft): void {
  setSection(draft, 'strip', stripView(draft.book));
  setSection(draft, 'ledger', ledgerView(draft.book));
}

function takeRepetition(draft: PracticeDraft, taken: Of<'repetition'>): void {
  const { repetition } = taken;
  bookRepetition(draft.book, taken, momentsOf(draft.recent, repetition));
  showBook(draft);
  setSection(draft, 'last', repetition);
}

const round2 = (value: number): number => Math.round(value * 1e2) / 1e2;

type Of<K extends AnalysisOutput['kind']> = Extract<AnalysisOutput, { kind: K }>;

function takeFrame(draft: PracticeDraft, { frame, angles, keptRotationDeg }: Of<'frame'>): void {
  const { view } = draft;
  const pose = drawnPose(frame);
  keepPose(draft.recent, frame);
  setSection(draft, 'pose', pose);
  if (view.phase.phase === 'address') draft.stillPose = pose;
  // The reference itself is the ghost until the first swing.
  if (view.addressPose === null) setSection(draft, 'addressPose', pose);
  if (!wantsPoint(view.curve, frame.timeS)) return;
  const shown = (deg: number | null): number | null =>
    frame.gap || deg === null ? null : round2(deg);
  const point = {
    timeS: Math.round(frame.timeS * 1e4) / 1e4,
    flexionDeg: shown(angles.flexionDeg),
    turnDeg: shown(angles.turnDeg),
    keptRotationDeg: shown(keptRotationDeg),
  };
  pushPoint(view.curve, point);
  trimCurve(view.curve);
  pushPoint(draft.newPoints, point);
}

function takePhase(draft: PracticeDraft, { phase, atS, holdS }: Of<'phase'>): void {
  const before = draft.view.phase;
  // Only a stillness that a swing follows was an address: bending to tee a ball is still, too.
  if (phase === 'backswing' && draft.stillPose !== null) {
    setSection(draft, 'addressPose', draft.stillPose);
  }
  const sinceS = before.phase === phase ? before.sinceS : atS;
  setSection(draft, 'phase', { phase, sinceS, holdS });
}

export function setWarnings(draft: PracticeDraft, action: WarningAction): void {
  const all = stepWarnings(draft.view.warnings, action);
  if (all !== draft.view.warnings) setSection(draft, 'warnings', all.slice(-WARNINGS_KEPT));
}

/** One output of the analysis into the view. */
export function takeOutput(draft: PracticeDraft, output: AnalysisOutput): void {
  switch (output.kind) {
    case 'frame':
      return takeFrame(draft, output);
    case 'phase':
      return takePhase(draft, output);
    case 'repetition':
      return takeRepetition(draft, output);
    case 'ledger':
      // The book keeps the same ledger and knows what the person corrected.
      return undefined;
    case 'warning':
      return setWarnings(draft, { type: 'raised', warning: output.warning });
    case 'calibration':
      // Measured anew, the ghost comes from the new reference.
      setSection(draft, 'addressPose', null);
      return setSection(draft, 'calibration', {
        ...draft.view.calibration,
        quality: output.quality,
      });
  }
}

const CALIBRATION_STEPS = 12;

/** Corrections into the book; a calibration step that was asked for, so that the screen can say it. */
export function takeEvent(draft: PracticeDraft, event: SessionEvent): void {
  if (isMark(event)) {
    bookMark(draft.book, event);
    showBook(draft);
  }
  if (!/^(calibration-|address-reference)/.test(event.type)) return;
  const steps = [...draft.view.calibration.steps, event].slice(-CALIBRATION_STEPS);
  setSection(draft, 'calibration', { ...draft.view.calibration, steps });
}

/** The person has read a warning; it stays stored. False where none of the kind stands. */
export function acknowledge(draft: PracticeDraft, id: WarningId, atS: number): boolean {
  if (!standingWarnings(draft.view.warnings).some((w) => w.id === id)) return false;
  setWarnings(draft, { type: 'acknowledged', id, atS });
  return true;
}
