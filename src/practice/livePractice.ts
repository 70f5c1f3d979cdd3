import { Subject, interval, map, type Observable, type Subscription } from 'rxjs';
import type { AnalysisResult } from '../analysis/result.ts';
import type { KnownFits } from '../body/recheck.ts';
import type { Answer } from '../sensors/clock/asked.ts';
import { recordedEvent, recordedSample } from '../sensors/recorded.ts';
import type { ImuSample, SensorRole } from '../sensors/sample.ts';
import type { SessionEvent } from '../sensors/sessionEvent.ts';
import type { VolumeHistory } from '../coaching/warnings.ts';
import type { SensorLink } from '../sensors/sources/source.ts';
import { type CurveColumns, emptyCurve } from './curve.ts';
import { listenForTaps } from './handsFree.ts';
import { type PracticeCommand, type Refusal, obey } from './obey.ts';
import { type PracticeDraft, type Section, newDraft, setSection } from './reduce.ts';
import type { SensorIdentity } from './person.ts';
import { sensorsOf } from './recheck.ts';
import { type PracticeOptions, type Run, resultOf, sessionNow, takeSignal } from './run.ts';
import type { SourceSignal } from './signal.ts';
import type { KeepingView, PersonView, PracticeView } from './view.ts';

/** What one signal changed. */
export interface PracticeChange {
  /** Host's time at which the signal came in, ms. */
  readonly arrivedMs: number;
  readonly sections: ReadonlySet<Section>;
  readonly points: CurveColumns;
}

export interface LivePractice {
  /** Everything that came in, in order: for a recorder. */
  readonly signals: Observable<SourceSignal>;
  /** One for each signal or command that changed something. */
  readonly changes: Observable<PracticeChange>;
  view(): PracticeView;
  /** Session time now, s; 0 before the first sample. */
  sessionS(): number;
  /** The earlier calibration that may be re-checked; `null` where there is none. */
  readonly known: KnownFits | null;
  /** What was practised before; `null` where that is not known. */
  readonly history: VolumeHistory | null;
  /** What was calibrated in full here, and with which sensors; `null` before that. */
  calibrated(): { readonly fits: KnownFits; readonly sensors: SensorIdentity } | null;
  start(): void;
  obey(command: PracticeCommand): Refusal;
  /** With the guided start: a practice of one's own. */
  readonly guided: boolean;
  /** The screens hear what is now known of the person. */
  tellPerson(change: Partial<PersonView>): void;
  /** The screens hear what becomes of the recording. */
  tellKeeping(keeping: KeepingView): void;
  /** The whole practice's result, once nothing more will come; `null` where the chain gives none. */
  result(sessionId: string): AnalysisResult | null;
  stop(): Promise<void>;
}

/** Sensor ages are told this often, ms. */
const TICK_MS = 500;

/** Hands over what changed and starts counting anew. */
function handOver(draft: PracticeDraft, arrivedMs: number): PracticeChange {
  const change = { arrivedMs, sections: draft.changed, points: draft.newPoints };
  draft.changed = new Set();
  draft.newPoints = emptyCurve();
  return change;
}

/** Numbers come in as they are recorded, so that the recording gives the very result that was seen. */
const listen = (signals: Subject<SourceSignal>, now: () => number) => ({
  samples: (batch: readonly ImuSample[]) =>
    signals.next({ kind: 'samples', atMs: now(), batch: batch.map(recordedSample) }),
  event: (event: SessionEvent) =>
    signals.next({ kind: 'event', atMs: now(), event: recordedEvent(event) }),
  answer: (sensor: SensorRole, answer: Answer) =>
    signals.next({ kind: 'answer', atMs: now(), sensor, answer }),
  link: (link: SensorLink) => signals.next({ kind: 'link', atMs: now(), link }),
  end: (error: string | null) => signals.next({ kind: 'end', atMs: now(), error }),
});

function newRun<State>(
  options: PracticeOptions<State>,
  signals: Subject<SourceSignal>,
): Run<State> {
  const { practiceId, settings, source, chain, now } = options;
  const first = options.guided ? 'safety' : 'practice';
  const begin = { stage: options.idle ? 'idle' : first, person: options.person } as const;
  return {
    options,
    analysis: chain.start(settings),
    draft: newDraft(practiceId, settings, source, begin),
    health: new Map(),
    guide: null,
    taps: null,
    painAtStart: null,
    firstS: null,
    newest: null,
    saidS: 0,
    fits: null,
    post: (event) => signals.next({ kind: 'event', atMs: now(), event: recordedEvent(event) }),
    startSource: () => source.start(listen(signals, now)),
  };
}

/** Joins a source to the analysis and fans out what comes of it. */
export function livePractice<State>(options: PracticeOptions<State>): LivePractice {
  const { now } = options;
  const signals = new Subject<SourceSignal>();
  const changes = new Subject<PracticeChange>();
  const run = newRun(options, signals);
  const subscriptions: Subscription[] = [];
  const step = (signal: SourceSignal): PracticeChange => {
    takeSignal(run, signal);
    if (signal.kind === 'samples') listenForTaps(run, signal.batch);
    return handOver(run.draft, signal.atMs);
  };
  subscriptions.push(signals.pipe(map(step)).subscribe(changes));
  return {
    signals,
    changes,
    view: () => run.draft.view,
    sessionS: () => sessionNow(run),
    known: options.settings.known ?? null,
    history: options.settings.history ?? null,
    calibrated: () => (run.fits === null ? null : { fits: run.fits, sensors: sensorsOf(run) }),
    start: () => {
      if (options.idle) return;
      if (!options.guided) run.startSource();
      const ticks = interval(TICK_MS).pipe(map(() => ({ kind: 'tick' as const, atMs: now() })));
      subscriptions.push(ticks.subscribe((tick) => signals.next(tick)));
    },
    obey: (command) => {
      const refusal = obey(run, command);
      changes.next(handOver(run.draft, now()));
      return refusal;
    },
    guided: options.guided ?? false,
    tellPerson: (change) => {
      setSection(run.draft, 'person', { ...run.draft.view.person, ...change });
      changes.next(handOver(run.draft, now()));
    },
    tellKeeping: (keeping) => {
      setSection(run.draft, 'keeping', keeping);
      changes.next(handOver(run.draft, now()));
    },
    result: (sessionId) => resultOf(run, sessionId),
    stop: async () => {
      await options.source.stop();
      for (const subscription of subscriptions) subscription.unsubscribe();
      changes.complete();
    },
  };
}
