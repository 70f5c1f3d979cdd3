import type { WarningId } from '../coaching/judgement.ts';
import { type CorrectedKind, canUndo } from '../coaching/ledger.ts';
import { markOf, undoMark } from '../coaching/marks.ts';
import { type PainSign, SAFETY_TEXTS } from '../coaching/safetyTexts.ts';
import { painWarning } from '../coaching/warnings.ts';
import { fill } from '../sensors/sentence.ts';
import { summaryView } from './book.ts';
import { skipStep } from './guide/guide.ts';
import { REFUSALS } from './refusals.ts';
import { acknowledge, setSection, setWarnings } from './reduce.ts';
import {
  type Run,
  beginPart,
  beginStage,
  endPractice,
  isOver,
  saidNow,
  sessionNow,
  setStage,
  showGuide,
  takeGuideOutput,
  tellSensors,
} from './run.ts';
import { createDoubleTap } from '../swings/doubleTap.ts';
import { pauseOrResume } from './pausing.ts';
import { beginRecheck } from './recheck.ts';
import { type SafetyAnswers, judgeSafety } from './safety.ts';
import { sensorProblems } from './sensorCheck.ts';
import type { Stage } from './view.ts';

/** What a person can ask of a practice. */
export type PracticeCommand =
  | { readonly type: 'acknowledge'; readonly id: WarningId }
  | { readonly type: 'correct'; readonly index: number; readonly kind: CorrectedKind }
  | { readonly type: 'undo' | 'pause' | 'resume' }
  /** A double tap on the chest sensor pauses and resumes from now on, or no longer. */
  | { readonly type: 'double-tap'; readonly on: boolean }
  | { readonly type: 'pain'; readonly rating: number; readonly signs: readonly PainSign[] }
  | { readonly type: 'safety'; readonly answers: SafetyAnswers }
  /** The step under way is done, is to be left out, or is to be done once more. */
  | { readonly type: 'next' | 'skip' | 'again' }
  /** Instead of a whole calibration: is the kept one still true? */
  | { readonly type: 'recheck' }
  | { readonly type: 'finish' }
  | {
      readonly type: 'close';
      readonly pain: number;
      readonly signs: readonly PainSign[];
      readonly note: string;
    };

/** Why it was not done, in a sentence; `null` where it was. */
export type Refusal = string | null;

const refuseUnless = (done: boolean, why: string): Refusal => (done ? null : why);

function postPain<S>(run: Run<S>, value: number, signs: readonly PainSign[], onsetS: number): void {
  run.post({ type: 'pain', value, onsetS, durationS: 0, ...(signs.length > 0 && { signs }) });
}

/** A pain that ends the session ends it at once, whether or not the sensors still send. */
function ratePain<S>(run: Run<S>, rating: number, signs: readonly PainSign[]): void {
  const atS = saidNow(run);
  postPain(run, rating, signs, atS);
  const warning = painWarning({ rating, signs, atStart: null, atS });
  if (warning === null || !SAFETY_TEXTS[warning.id].endsSession) return;
  setWarnings(run.draft, { type: 'raised', warning });
  if (!isOver(run.draft.view)) endPractice(run, 'after');
}

function takeSafety<S>(run: Run<S>, answers: SafetyAnswers): Refusal {
  if (run.draft.view.stage !== 'safety') return REFUSALS['safety-done'];
  const outcome = judgeSafety(answers, run.draft.view.person.painBefore);
  if (outcome.kind === 'missing') return outcome.warning.text;
  if (outcome.kind === 'no-rating') return REFUSALS['pain-first'];
  for (const warning of outcome.warnings) setWarnings(run.draft, { type: 'raised', warning });
  run.painAtStart = answers.pain;
  if (answers.pain !== null) postPain(run, answers.pain, answers.signs, 0);
  if (outcome.kind === 'stop') endPractice(run, 'stopped');
  else beginStage(run, 'strap');
  return null;
}

function goOn<S>(run: Run<S>): Refusal {
  const { stage } = run.draft.view;
  if (stage === 'strap') beginStage(run, 'check');
  else if (stage === 'calibrate' && run.guide?.part === 'recheck') beginStage(run, 'calibrate');
  else if (stage === 'check') {
    tellSensors(run, run.options.now());
    if (sensorProblems(run.draft.view.sensors).length > 0) return REFUSALS['sensors-first'];
    beginStage(run, 'calibrate');
  } else if (stage === 'range') beginPart(run, 'range');
  else return REFUSALS['nothing-to-go-on'];
  return null;
}

function compareWithKept<S>(run: Run<S>): Refusal {
  const { stage } = run.draft.view;
  if (stage !== 'check') return REFUSALS['recheck-later'];
  tellSensors(run, run.options.now());
  if (sensorProblems(run.draft.view.sensors).length > 0) return REFUSALS['sensors-first'];
  const refusal = beginRecheck(run);
  if (refusal === null) setStage(run, 'calibrate');
  return refusal;
}

function leaveOut<S>(run: Run<S>): Refusal {
  const { stage } = run.draft.view;
  if (stage !== 'range') return REFUSALS['not-left-out'];
  if (run.guide === null) beginStage(run, 'address');
  else skipStep(run.guide, (output) => takeGuideOutput(run, output));
  showGuide(run);
  return null;
}

const REPEATABLE: readonly Stage[] = ['calibrate', 'range', 'address', 'practice'];

/** Once more: the part under way from its start; from the practice, the whole calibration. */
function again<S>(run: Run<S>): Refusal {
  const { stage } = run.draft.view;
  if (!REPEATABLE.includes(stage)) return REFUSALS['nothing-to-repeat'];
  if (stage === 'range') beginPart(run, 'range');
  else if (stage === 'calibrate' && run.guide?.part === 'recheck') beginPart(run, 'recheck');
  else if (stage === 'address') beginPart(run, 'address');
  else {
    setSection(run.draft, 'calibration', { steps: [], quality: null });
    beginStage(run, 'calibrate');
  }
  return null;
}

function finish<S>(run: Run<S>): Refusal {
  if (run.draft.view.stage !== 'practice') return REFUSALS['no-practice'];
  endPractice(run, 'after');
  return null;
}

/** Corrections go into the recording, and from there into the book. */
function correct<S>(run: Run<S>, index: number, kind: CorrectedKind): Refusal {
  if (isOver(run.draft.view)) return REFUSALS['is-over'];
  const repetition = run.draft.book.repetitions.get(index);
  if (repetition === undefined) return fill(REFUSALS['no-repetition'], { index });
  run.post(markOf(repetition, kind, saidNow(run)));
  return null;
}

function undo<S>(run: Run<S>): Refusal {
  if (isOver(run.draft.view)) return REFUSALS['is-over'];
  if (!canUndo(run.draft.book.ledger)) return REFUSALS['nothing-to-undo'];
  run.post(undoMark(saidNow(run)));
  return null;
}

/** Does what was asked, or says why not. */
export function obey<S>(run: Run<S>, command: PracticeCommand): Refusal {
  // What a page may set before anything runs is no question to a practice.
  if (run.draft.view.stage === 'idle' && command.type !== 'double-tap')
    return REFUSALS['no-practice'];
  switch (command.type) {
    case 'acknowledge':
      return refuseUnless(
        acknowledge(run.draft, command.id, sessionNow(run)),
        REFUSALS['warning-gone'],
      );
    case 'correct':
      return correct(run, command.index, command.kind);
    case 'undo':
      return undo(run);
    case 'pause':
    case 'resume':
      return pauseOrResume(run, command.type);
    case 'double-tap':
      run.taps = command.on ? createDoubleTap() : null;
      return null;
    case 'pain':
      ratePain(run, command.rating, command.signs);
      return null;
    case 'safety':
      return takeSafety(run, command.answers);
    case 'next':
      return goOn(run);
    case 'recheck':
      return compareWithKept(run);
    case 'skip':
      return leaveOut(run);
    case 'again':
      return again(run);
    case 'finish':
      return finish(run);
    case 'close':
      return close(run, command.pain, command.signs);
  }
}

function close<S>(run: Run<S>, pain: number, signs: readonly PainSign[]): Refusal {
  const { draft } = run;
  if (draft.view.stage !== 'after') return REFUSALS['nothing-to-close'];
  // Told of the practice as a whole: it stands at the recording's end.
  const atS = Math.max(run.newest?.timeS ?? 0, run.saidS);
  const warning = painWarning({ rating: pain, signs, atStart: run.painAtStart, atS });
  if (warning !== null) {
    setWarnings(draft, { type: 'raised', warning });
    const durationS = draft.view.summary?.durationS ?? 0;
    setSection(draft, 'summary', summaryView(draft.book, draft.view.warnings, durationS));
  }
  postPain(run, pain, signs, atS);
  setSection(draft, 'stage', 'over');
  return null;
}
