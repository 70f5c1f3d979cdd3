import type { AnalysisInput, AnalysisOutput, AnalysisSettings } from '../analysis/contract.ts';
import { type AnalysisResult, withSaid } from '../analysis/result.ts';
import type { KnownFits } from '../body/recheck.ts';
import type { DoubleTapState } from '../swings/doubleTap.ts';
import type { OwnRange } from '../coaching/plan.ts';
import { SAFETY_TEXTS } from '../coaching/safetyTexts.ts';
import { saidBefore } from '../coaching/warnings.ts';
import type { SessionEvent } from '../sensors/sessionEvent.ts';
import type { SensorLink, SensorSource } from '../sensors/sources/source.ts';
import { summaryView } from './book.ts';
import type { AnalysisChain } from './chain.ts';
import {
  type GuideOutput,
  type GuideState,
  guideView,
  startGuide,
  stepGuide,
  stepGuideAngles,
} from './guide/guide.ts';
import type { GuidePart } from './guide/steps.ts';
import { type SensorHealth, newHealth, noteSamples, sensorView } from './health.ts';
import { type PracticeDraft, setSection, takeEvent, takeOutput } from './reduce.ts';
import type { SignalOf, SourceSignal } from './signal.ts';
import type { SensorIdentity } from './person.ts';
import type { PersonView, Stage } from './view.ts';

export interface PracticeOptions<State> {
  readonly practiceId: string;
  readonly source: SensorSource;
  readonly chain: AnalysisChain<State>;
  readonly settings: AnalysisSettings;
  /** Monotonic host clock, ms. */
  readonly now: () => number;
  /** With the guided start; else the source starts at once and brings its own calibration. */
  readonly guided?: boolean;
  /** Nobody has begun it: the source never starts and nothing can be asked of it. */
  readonly idle?: boolean;
  readonly person?: PersonView;
  /** Whose earlier calibration `settings.known` is. */
  readonly knownOf?: SensorIdentity;
}

/** A practice under way; written in place by the functions below. */
export interface Run<State> {
  readonly options: PracticeOptions<State>;
  readonly analysis: State;
  readonly draft: PracticeDraft;
  readonly health: Map<string, SensorHealth>;
  guide: GuideState | null;
  /** Listens for double taps; `null` where nobody asked for that. */
  taps: DoubleTapState | null;
  /** The newest calibration that was done in full and accepted. */
  fits: KnownFits | null;
  /** Pain that was told before the session, 0-10. */
  painAtStart: number | null;
  /** Session time of the first sample. */
  firstS: number | null;
  /** Newest session time and when it came. */
  newest: { readonly timeS: number; readonly atMs: number } | null;
  /** Session s of the newest thing a person said. */
  saidS: number;
  /** Hands an event of the guide or the person in, as if the source had said it. */
  readonly post: (event: SessionEvent) => void;
  readonly startSource: () => void;
}

export const sessionNow = <S>(run: Run<S>): number =>
  run.newest === null
    ? 0
    : run.newest.timeS + Math.max(0, run.options.now() - run.newest.atMs) / 1000;

/** Session s for what a person says, to the ms: no two at once and never back, so that their order is kept. */
export function saidNow<S>(run: Run<S>): number {
  const nowS = Math.max(sessionNow(run), run.saidS + 0.001);
  run.saidS = Math.ceil(nowS * 1000 - 1e-6) / 1000;
  return run.saidS;
}

export function setStage<S>(run: Run<S>, stage: Stage): void {
  setSection(run.draft, 'stage', stage);
}

/** Begins a part of the guided start, from its first step. */
export function beginPart<S>(run: Run<S>, part: GuidePart): void {
  run.guide = startGuide(part, (output) => takeGuideOutput(run, output));
  showGuide(run);
}

export function endPart<S>(run: Run<S>): void {
  run.guide = null;
  setSection(run.draft, 'guide', null);
}

export function showGuide<S>(run: Run<S>): void {
  if (run.guide === null) return;
  const next = guideView(run.guide);
  // Stepped with every sample, told only where it changed.
  if (JSON.stringify(next) !== JSON.stringify(run.draft.view.guide)) {
    setSection(run.draft, 'guide', next);
  }
}

export function takeGuideOutput<S>(run: Run<S>, output: GuideOutput): void {
  switch (output.kind) {
    case 'ask':
      return run.options.source.ask?.(output.step);
    case 'event':
      return run.post(output.event);
    case 'range':
      return takeRange(run, { ...run.draft.view.ownRange, ...output.range });
    case 'partDone':
      return partDone(run, output.part);
  }
}

/** What was measured as comfortable counts from now on. */
function takeRange<S>(run: Run<S>, ownRange: OwnRange): void {
  const plan = {
    ...run.draft.view.plan,
    ownRange: { ...run.draft.view.plan.ownRange, ...ownRange },
  };
  setSection(run.draft, 'ownRange', ownRange);
  setSection(run.draft, 'plan', plan);
  run.options.chain.replan?.(run.analysis, plan);
}

function partDone<S>(run: Run<S>, part: GuidePart): void {
  if (part === 'range') beginStage(run, 'address');
  if (part === 'address') beginStage(run, 'practice');
}

/** Enters a stage and begins what belongs to it. */
export function beginStage<S>(run: Run<S>, stage: Stage): void {
  setStage(run, stage);
  if (stage === 'check') run.startSource();
  if (stage === 'calibrate' || stage === 'address') beginPart(run, stage);
  else endPart(run);
  if (stage === 'practice') run.options.source.ask?.('practise');
}

/** Ends the practice: what was measured is summed up, nothing more is taken. */
export function endPractice<S>(run: Run<S>, stage: 'after' | 'stopped'): void {
  const { draft } = run;
  feedFinish(run);
  const durationS = Math.max(0, (run.newest?.timeS ?? 0) - (run.firstS ?? 0));
  setSection(draft, 'summary', summaryView(draft.book, draft.view.warnings, durationS));
  beginStage(run, stage);
  void run.options.source.stop();
}

export const isOver = ({ stage }: { readonly stage: Stage }): boolean =>
  stage === 'after' || stage === 'over' || stage === 'stopped';

function takeAnalysis<S>(run: Run<S>, output: AnalysisOutput): void {
  takeOutput(run.draft, output);
  if (output.kind === 'frame' && run.guide !== null) {
    stepGuideAngles(run.guide, output.frame.timeS, output.angles, (o) => takeGuideOutput(run, o));
  }
  if (output.kind === 'calibration') {
    const { fits } = output;
    if (fits !== null && fits !== run.options.settings.known) run.fits = fits;
    judgeCalibration(run, output.quality.accepted);
  }
  if (output.kind === 'warning' && SAFETY_TEXTS[output.warning.id].endsSession) {
    endPractice(run, 'after');
  }
}

/** An accepted calibration leads on; a refused one waits for the person to do it again. */
function judgeCalibration<S>(run: Run<S>, accepted: boolean): void {
  const { guide } = run;
  if (run.draft.view.stage !== 'calibrate' || guide?.status !== 'done') return;
  if (accepted) beginStage(run, 'range');
}

function feed<S>(run: Run<S>, input: AnalysisInput): void {
  if (isOver(run.draft.view)) return;
  const { chain } = run.options;
  chain.step(run.analysis, input, (output) => takeAnalysis(run, output));
}

function feedFinish<S>(run: Run<S>): void {
  run.options.chain.finish(run.analysis, (output) => takeOutput(run.draft, output));
}

/**
 * The result of the whole practice with all warnings, those too that were told before its start;
 * `null` where the chain gives none. Afterwards only what is said later may be fed.
 */
export function resultOf<S>(run: Run<S>, sessionId: string): AnalysisResult | null {
  const { chain } = run.options;
  if (chain.result === undefined) return null;
  feedFinish(run);
  return withSaid(chain.result(run.analysis, sessionId), saidBefore(run.draft.view.warnings));
}

function healthOf<S>(run: Run<S>, sensor: SensorLink['sensor']): SensorHealth {
  const known = run.health.get(sensor) ?? newHealth(sensor);
  run.health.set(sensor, known);
  return known;
}

/** Says anew how well the sensors are. */
export function tellSensors<S>(run: Run<S>, nowMs: number): void {
  const sensors = [...run.health.values()].map((h) => sensorView(h, nowMs));
  setSection(run.draft, 'sensors', sensors);
}

function takeSamples<S>(run: Run<S>, { batch, atMs }: SignalOf<'samples'>): void {
  const newest = batch.at(-1);
  if (newest === undefined) return;
  noteSamples(healthOf(run, newest.sensor), batch, atMs);
  run.newest = { timeS: newest.timeS, atMs };
  run.firstS ??= newest.timeS;
  const { source } = run.draft.view;
  if (source.state === 'starting') {
    setSection(run.draft, 'source', { ...source, state: 'running' });
  }
  for (const sample of batch) {
    feed(run, { kind: 'sample', sample });
    if (run.guide !== null) stepGuide(run.guide, sample, (o) => takeGuideOutput(run, o));
  }
  showGuide(run);
}

function takeEnd<S>(run: Run<S>, error: string | null): void {
  feedFinish(run);
  const state = error === null ? 'ended' : 'failed';
  setSection(run.draft, 'source', { ...run.draft.view.source, state, reason: error });
}

/** Pain that is told once the practice is over belongs to its result all the same. */
function takeLate<S>(run: Run<S>, signal: SourceSignal): void {
  if (signal.kind !== 'event' || signal.event.type !== 'pain') return;
  run.options.chain.step(run.analysis, signal, (output) => takeOutput(run.draft, output));
}

/** Takes one signal into the run. */
export function takeSignal<S>(run: Run<S>, signal: SourceSignal): void {
  if (isOver(run.draft.view)) return takeLate(run, signal);
  switch (signal.kind) {
    case 'samples':
      return takeSamples(run, signal);
    case 'event':
      takeEvent(run.draft, signal.event);
      return feed(run, signal);
    case 'answer':
      // Only the recording has a use for it: the source's clock has heard it already.
      return;
    case 'link':
      healthOf(run, signal.link.sensor).link = signal.link;
      return tellSensors(run, signal.atMs);
    case 'end':
      return takeEnd(run, signal.error);
    case 'tick':
      return tellSensors(run, signal.atMs);
  }
}
