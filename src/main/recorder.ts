import { setTimeout as pause } from 'node:timers/promises';
import type { AnalysisResult } from '../analysis/result.ts';
import { saidBefore } from '../coaching/warnings.ts';
import { KEEPING_TEXTS, type KeepingKey } from '../practice/keepingTexts.ts';
import type { LivePractice } from '../practice/livePractice.ts';
import type { SensorView, Stage } from '../practice/view.ts';
import { fill } from '../sensors/sentence.ts';
import type { SensorRole } from '../sensors/sample.ts';
import { type TrackHeader, sessionId } from '../sessions/header.ts';
import type { PracticeNotes } from '../sessions/practiceNotes.ts';
import type { Recording } from '../sessions/store/recording.ts';
import type { SessionStore } from '../sessions/store/store.ts';
import type { SessionWriter, WriterStatus } from '../sessions/write/sessionWriter.ts';

type Signal = Parameters<Parameters<LivePractice['signals']['subscribe']>[0] & object>[0];

export interface RecorderOptions {
  readonly store: SessionStore;
  readonly practice: LivePractice;
  readonly date: () => Date;
  /** Told once the recording holds `mostS` of session time. */
  readonly full?: { readonly mostS: number; readonly tell: () => void };
  /** Told the session's id once it is kept whole, and when more was said of it; not while the service closes. */
  readonly saved?: (id: string) => void;
  /** How long to wait before a disk that refused is tried again, ms. */
  readonly retryMs?: number;
}

/** Never a name: the recording format asks for letters and digits. */
const SUBJECT = 'student';
const RETRY_MS = 5000;
const RESTORED_MS = 60_000;
const OVER: readonly Stage[] = ['after', 'over', 'stopped'];

const told = (key: KeepingKey, why: string): string => fill(KEEPING_TEXTS[key], { why });

const wordsOf = (error: unknown): string => (error instanceof Error ? error.message : 'unknown');

/** Writes one practice as a session while it runs. Nothing here makes the practice wait or fail. */
export class PracticeRecorder {
  readonly #options: RecorderOptions;
  readonly #unsubscribe: () => void;
  readonly #closing = new AbortController();
  #begun: Promise<Recording | null> | null = null;
  #writer: SessionWriter | null = null;
  /** What came before the files were made. */
  #waiting: Signal[] = [];
  #notes: Partial<PracticeNotes> = {};
  #ended: Promise<void> | null = null;
  /** What was said after the end, one thing after the other. */
  #later: Promise<void> = Promise.resolve();
  /** In the list, with its result. */
  #savedId: string | null = null;
  #full = false;

  constructor(options: RecorderOptions) {
    this.#options = options;
    const { practice } = options;
    const signals = practice.signals.subscribe((signal) => this.#take(signal));
    const changes = practice.changes.subscribe(({ sections }) => {
      if (sections.has('plan')) void this.#replan();
      // The signal that ends a practice is still to be written.
      if (sections.has('stage') && this.#isOver()) queueMicrotask(() => void this.end());
    });
    this.#unsubscribe = () => {
      signals.unsubscribe();
      changes.unsubscribe();
    };
  }

  /** What the person said of it. */
  note(notes: Partial<PracticeNotes>): void {
    this.#notes = { ...this.#notes, ...notes };
    void this.#ended?.then(async () => {
      if (this.#savedId === null) return;
      await this.#options.store
        .annotate(this.#savedId, notes)
        .catch((error: unknown) => this.#tell(told('note', wordsOf(error))));
    });
  }

  /** Ends the session. Fulfilled when it is saved, or cannot be; a full disk is tried again until `close`. */
  end(): Promise<void> {
    return (this.#ended ??= this.#end());
  }

  /** Ends the session with one last try. */
  close(): Promise<void> {
    this.#closing.abort();
    return this.end()
      .then(() => this.#later)
      .finally(this.#unsubscribe);
  }

  /** The recording is analysed again by the plan that stands beside it. */
  async #replan(): Promise<void> {
    const recording = await this.#begun;
    await recording
      ?.replan(this.#options.practice.view().plan)
      .catch((error: unknown) => this.#tell(told('plan', wordsOf(error))));
  }

  #isOver(): boolean {
    return OVER.includes(this.#options.practice.view().stage);
  }

  #take(signal: Signal): void {
    if (this.#ended !== null) return this.#takeLate(signal);
    if (signal.kind === 'end') return void this.end();
    if (signal.kind === 'link' || signal.kind === 'tick') return;
    if (signal.kind === 'samples') {
      this.#begun ??= this.#begin();
      this.#watchLength(signal.batch.at(-1)?.timeS ?? 0);
    }
    if (this.#writer === null) this.#waiting.push(signal);
    else write(this.#writer, signal);
  }

  /** What is said once the sensors are silent or the practice is over, marks and pain, belongs to it all the same. */
  #takeLate(signal: Signal): void {
    if (signal.kind !== 'event') return;
    const { event } = signal;
    const { store, practice, saved } = this.#options;
    this.#later = Promise.all([this.#ended, this.#later]).then(async () => {
      const id = this.#savedId;
      const analysis = practice.result(sessionId(SUBJECT, id ?? ''));
      if (id === null || analysis === null) return;
      await store
        .tellLater(id, event, analysis)
        .catch((error: unknown) =>
          this.#tell(told(event.type === 'pain' ? 'pain' : 'note', wordsOf(error))),
        );
      saved?.(id);
    });
  }

  #watchLength(timeS: number): void {
    const { full } = this.#options;
    if (this.#full || full === undefined || timeS < full.mostS) return;
    this.#full = true;
    queueMicrotask(full.tell);
  }

  async #begin(): Promise<Recording | null> {
    const { store, practice, date } = this.#options;
    const { hand, source, plan, sensors, warnings } = practice.view();
    try {
      const recording = await store.begin({
        subject: SUBJECT,
        hand,
        name: source.simulated ? 'Simulated practice' : 'Practice',
        simulated: source.simulated,
        plan,
        ...(practice.known !== null && { known: practice.known }),
        before: { history: practice.history, warnings: saidBefore(warnings) },
        startedAt: date(),
        painBefore: this.#notes.painBefore ?? null,
        tracks: tracksOf(sensors),
        onStatus: (status) => this.#hear(status),
      });
      this.#writer = recording.writer;
      for (const signal of this.#waiting.splice(0)) write(recording.writer, signal);
      practice.tellKeeping({ sessionId: recording.id, problem: null });
      return recording;
    } catch (error) {
      this.#unsubscribe();
      this.#waiting = [];
      this.#tell(told('not-kept', wordsOf(error)));
      return null;
    }
  }

  #hear({ ok, reason }: WriterStatus): void {
    if (ok) this.#tellRestored();
    else this.#tell(told('waits', reason));
  }

  #tell(problem: string | null, restored?: string): void {
    const { practice } = this.#options;
    const { keeping } = practice.view();
    practice.tellKeeping({
      sessionId: keeping?.sessionId ?? null,
      problem,
      ...(restored !== undefined && { restored }),
    });
  }

  /** What waited in memory is on the disk. */
  #tellRestored(): void {
    this.#tell(null, KEEPING_TEXTS.restored);
    const forget = (): void => {
      if (this.#options.practice.view().keeping?.restored !== undefined) this.#tell(null);
    };
    setTimeout(forget, RESTORED_MS).unref();
  }

  async #end(): Promise<void> {
    const recording = await this.#begun;
    if (recording === null) return;
    const { practice, store } = this.#options;
    const analysis = practice.result(sessionId(SUBJECT, recording.id));
    const { simulated } = practice.view().source;
    if (analysis === null || (simulated && analysis.repetitions.length === 0)) {
      await recording.writer.close().catch(() => undefined);
      // A demonstration that was left before its first repetition is nothing to look at.
      if (analysis !== null) await store.discard(recording.id).catch(() => undefined);
    } else if (await this.#save(recording, analysis)) {
      this.#savedId = recording.id;
      if (!this.#closing.signal.aborted) this.#options.saved?.(recording.id);
    }
  }

  async #save(recording: Recording, analysis: AnalysisResult): Promise<boolean> {
    const { signal } = this.#closing;
    const { practice, retryMs = RETRY_MS } = this.#options;
    for (;;) {
      try {
        await recording.finish(analysis, this.#notes);
        if ((practice.view().keeping?.problem ?? null) !== null) this.#tellRestored();
        return true;
      } catch (error) {
        this.#tell(told('tried-again', wordsOf(error)));
        if (signal.aborted) return false;
        await pause(retryMs, undefined, { signal, ref: false }).catch(() => undefined);
      }
    }
  }
}

function write(writer: SessionWriter, signal: Signal): void {
  if (signal.kind === 'event') writer.event(signal.event);
  if (signal.kind === 'answer') writer.answer(signal.sensor, signal.answer);
  if (signal.kind === 'samples') for (const sample of signal.batch) writer.sample(sample);
}

const tracksOf = (
  sensors: readonly SensorView[],
): Partial<Record<SensorRole, Partial<TrackHeader>>> =>
  Object.fromEntries(
    sensors.map(({ sensor, name, nominalRateHz }) => [
      sensor,
      { device: name, samplingHz: nominalRateHz },
    ]),
  );
