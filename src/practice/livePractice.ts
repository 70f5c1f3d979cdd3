import { Subject, interval, map, type Observable, type Subscription } from 'rxjs';
import type { AnalysisSettings } from '../analysis/contract.ts';
import type { WarningId } from '../coaching/judgement.ts';
import type { CorrectedKind } from '../coaching/ledger.ts';
import type { ImuSample } from '../sensors/sample.ts';
import type { SessionEvent } from '../sensors/sessionEvent.ts';
import type { SensorLink, SensorSource } from '../sensors/sources/source.ts';
import { bookCorrection, bookUndo } from './book.ts';
import type { AnalysisChain } from './chain.ts';
import { type CurveColumns, emptyCurve } from './curve.ts';
import { type SensorHealth, newHealth, noteSamples, sensorView } from './health.ts';
import {
  type PracticeDraft,
  type Section,
  acknowledge,
  newDraft,
  setSection,
  showBook,
  takeEvent,
  takeOutput,
} from './reduce.ts';
import type { PracticeView } from './view.ts';

/** What a source said, with the host's time of arrival; a recorder can keep it. */
export type SourceSignal =
  | { readonly kind: 'samples'; readonly atMs: number; readonly batch: readonly ImuSample[] }
  | { readonly kind: 'event'; readonly atMs: number; readonly event: SessionEvent }
  | { readonly kind: 'link'; readonly atMs: number; readonly link: SensorLink }
  | { readonly kind: 'end'; readonly atMs: number; readonly error: string | null }
  | { readonly kind: 'tick'; readonly atMs: number };

/** What one signal changed. */
export interface PracticeChange {
  /** Host's time at which the signal came in, ms. */
  readonly arrivedMs: number;
  readonly sections: ReadonlySet<Section>;
  readonly points: CurveColumns;
}

export interface PracticeOptions<State> {
  readonly practiceId: string;
  readonly source: SensorSource;
  readonly chain: AnalysisChain<State>;
  readonly settings: AnalysisSettings;
  /** Monotonic host clock, ms. */
  readonly now: () => number;
}

export interface LivePractice {
  /** Everything that came in, in order: for a recorder. */
  readonly signals: Observable<SourceSignal>;
  /** One for each signal that changed something. */
  readonly changes: Observable<PracticeChange>;
  view(): PracticeView;
  start(): void;
  /** An event made by the person (a mark, a pain rating, pause): goes the same way as a source's own. */
  mark(event: Pick<SessionEvent, 'type' | 'value'>): void;
  /** False where no such warning stands. */
  acknowledge(id: WarningId): boolean;
  /** Says what a repetition was; false where no repetition has that number. */
  correct(index: number, kind: CorrectedKind): boolean;
  /** Takes the newest correction back; false where there is none. */
  undo(): boolean;
  stop(): Promise<void>;
}

/** Sensor ages are told this often, ms. */
const TICK_MS = 500;

interface Run<State> {
  readonly options: PracticeOptions<State>;
  readonly analysis: State;
  readonly draft: PracticeDraft;
  readonly health: Map<string, SensorHealth>;
  /** Newest session time and when it came. */
  newest: { readonly timeS: number; readonly atMs: number } | null;
}

function healthOf<S>(run: Run<S>, sensor: SensorLink['sensor']): SensorHealth {
  const known = run.health.get(sensor) ?? newHealth(sensor);
  run.health.set(sensor, known);
  return known;
}

function tellSensors<S>(run: Run<S>, nowMs: number): void {
  const sensors = [...run.health.values()].map((h) => sensorView(h, nowMs));
  setSection(run.draft, 'sensors', sensors);
}

function takeSamples<S>(run: Run<S>, signal: Extract<SourceSignal, { kind: 'samples' }>): void {
  const newest = signal.batch.at(-1);
  if (newest === undefined) return;
  noteSamples(healthOf(run, newest.sensor), signal.batch, signal.atMs);
  run.newest = { timeS: newest.timeS, atMs: signal.atMs };
  const { source } = run.draft.view;
  if (source.state === 'starting') {
    setSection(run.draft, 'source', { ...source, state: 'running' });
  }
  for (const sample of signal.batch) {
    run.options.chain.step(run.analysis, { kind: 'sample', sample }, (o) =>
      takeOutput(run.draft, o),
    );
  }
}

function takeEnd<S>(run: Run<S>, error: string | null): void {
  run.options.chain.finish(run.analysis, (o) => takeOutput(run.draft, o));
  const state = error === null ? 'ended' : 'failed';
  setSection(run.draft, 'source', { ...run.draft.view.source, state, reason: error });
}

function takeSignal<S>(run: Run<S>, signal: SourceSignal): void {
  switch (signal.kind) {
    case 'samples':
      return takeSamples(run, signal);
    case 'event':
      takeEvent(run.draft, signal.event);
      return run.options.chain.step(run.analysis, signal, (o) => takeOutput(run.draft, o));
    case 'link':
      healthOf(run, signal.link.sensor).link = signal.link;
      return tellSensors(run, signal.atMs);
    case 'end':
      return takeEnd(run, signal.error);
    case 'tick':
      return tellSensors(run, signal.atMs);
  }
}

/** Hands over what changed and starts counting anew. */
function handOver(draft: PracticeDraft, arrivedMs: number): PracticeChange {
  const change = { arrivedMs, sections: draft.changed, points: draft.newPoints };
  draft.changed = new Set();
  draft.newPoints = emptyCurve();
  return change;
}

const listen = (signals: Subject<SourceSignal>, now: () => number) => ({
  samples: (batch: readonly ImuSample[]) => signals.next({ kind: 'samples', atMs: now(), batch }),
  event: (event: SessionEvent) => signals.next({ kind: 'event', atMs: now(), event }),
  link: (link: SensorLink) => signals.next({ kind: 'link', atMs: now(), link }),
  end: (error: string | null) => signals.next({ kind: 'end', atMs: now(), error }),
});

const sessionNow = <S>(run: Run<S>): number =>
  run.newest === null
    ? 0
    : run.newest.timeS + Math.max(0, run.options.now() - run.newest.atMs) / 1000;

/** Joins a source to the analysis and fans out what comes of it. */
export function livePractice<State>(options: PracticeOptions<State>): LivePractice {
  const { source, chain, settings, now } = options;
  const run: Run<State> = {
    options,
    analysis: chain.start(settings),
    draft: newDraft(options.practiceId, settings, source),
    health: new Map(),
    newest: null,
  };
  const signals = new Subject<SourceSignal>();
  const changes = new Subject<PracticeChange>();
  const subscriptions: Subscription[] = [];
  const step = (signal: SourceSignal): PracticeChange => {
    takeSignal(run, signal);
    return handOver(run.draft, signal.atMs);
  };
  subscriptions.push(signals.pipe(map(step)).subscribe(changes));
  const tellIf = (changed: boolean): boolean => {
    if (changed) changes.next(handOver(run.draft, now()));
    return changed;
  };
  const tellBookIf = (changed: boolean): boolean => {
    if (changed) showBook(run.draft);
    return tellIf(changed);
  };
  return {
    signals,
    changes,
    view: () => run.draft.view,
    start: () => {
      source.start(listen(signals, now));
      const ticks = interval(TICK_MS).pipe(map(() => ({ kind: 'tick' as const, atMs: now() })));
      subscriptions.push(ticks.subscribe((tick) => signals.next(tick)));
    },
    mark: ({ type, value }) => {
      const event = { type, value, onsetS: sessionNow(run), durationS: 0 };
      signals.next({ kind: 'event', atMs: now(), event });
    },
    acknowledge: (id) => tellIf(acknowledge(run.draft, id, sessionNow(run))),
    correct: (index, kind) => tellBookIf(bookCorrection(run.draft.book, index, kind)),
    undo: () => tellBookIf(bookUndo(run.draft.book)),
    stop: async () => {
      await source.stop();
      for (const subscription of subscriptions) subscription.unsubscribe();
      changes.complete();
    },
  };
}
