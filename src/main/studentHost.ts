import { randomUUID } from 'node:crypto';
import * as analysis from '../analysis/analysis.ts';
import { DEFAULT_PLAN, type Plan } from '../coaching/plan.ts';
import { type Stop, type StopId, stopAmong, withStop } from '../practice/stops.ts';
import type { About } from '../practice/about.ts';
import type { Beginning, PracticeHost, PracticeRecord } from '../practice/host.ts';
import { practiceHost } from '../practice/host.ts';
import { type LivePractice, livePractice } from '../practice/livePractice.ts';
import { countsAsPractice } from '../coaching/countsAsPractice.ts';
import {
  type SessionNote,
  personView,
  planFor,
  volumeHistory,
  withCount,
  withEnd,
  withNote,
  withSession,
} from '../practice/person.ts';
import type { Stage } from '../practice/view.ts';
import type { SensorSource } from '../sensors/sources/source.ts';
import type { PersonStore } from './personFile.ts';
import type { PracticeSource } from './practiceSource.ts';

export interface StudentHostOptions {
  readonly first: PracticeSource;
  /** Makes the sensors of a new practice; left out where there is only the first. */
  readonly sourceFor?: (beginning: Beginning) => SensorSource;
  readonly store: PersonStore;
  /** What a coach asks; `null` or left out: the default plan. */
  readonly plan?: () => Plan | null;
  /** Hears what the person says that belongs to the session. */
  readonly said?: (record: PracticeRecord) => void;
  /** Monotonic, ms. */
  readonly now: () => number;
  /** ms since 1970, UTC. */
  readonly date: () => number;
}

function newPractice(
  { store, now, date, plan }: StudentHostOptions,
  source: SensorSource,
  { hand, kind, known }: Pick<PracticeSource, 'hand' | 'kind' | 'known'>,
  sensors: Beginning['sensors'],
): LivePractice {
  const person = store.read();
  const guided = kind === 'guided';
  const asked = plan?.() ?? DEFAULT_PLAN;
  const { calibration } = person;
  const kept = guided && calibration?.hand === hand ? calibration : null;
  const practice = livePractice({
    practiceId: randomUUID(),
    source,
    chain: analysis,
    settings: {
      hand,
      plan: guided ? planFor(asked, person) : asked,
      ...(guided && counts(source) && { history: volumeHistory(person, date()) }),
      ...(known && { known }),
      ...(kept && { known: kept.fits }),
      emitFrames: true,
    },
    now,
    guided,
    idle: kind === 'idle',
    person: { ...personView(person), sensors, ...(kept && { calibratedMs: kept.madeMs }) },
    ...(kept && { knownOf: kept.sensors }),
  });
  if (guided) {
    keepCalibration(store, date, practice);
    keepStops(store, date, practice);
    keepCount(store, practice);
  }
  return practice;
}

/** A calibration that was done in full is there to be re-checked next time, whatever becomes of the practice. */
function keepCalibration(store: PersonStore, date: () => number, practice: LivePractice): void {
  let kept: unknown = null;
  practice.changes.subscribe(({ sections }) => {
    const calibrated = sections.has('calibration') ? practice.calibrated() : null;
    if (calibrated === null || calibrated.fits === kept) return;
    kept = calibrated.fits;
    const { hand } = practice.view();
    store.write({ ...store.read(), calibration: { madeMs: date(), hand, ...calibrated } });
  });
}

const counts = ({ kind, simulated }: Pick<SensorSource, 'kind' | 'simulated'>): boolean =>
  countsAsPractice({ simulated, watched: kind === 'replay' });

/** What was answered about one's health stays answered, whoever practised. */
function confirmHistory(store: PersonStore): void {
  const person = store.read();
  if (!person.historyConfirmed) store.write({ ...person, historyConfirmed: true });
}

/** A stop holds for its day, whatever becomes of the practice or the service. */
function keepStops(store: PersonStore, date: () => number, practice: LivePractice): void {
  let known: StopId | null = null;
  practice.changes.subscribe(({ sections }) => {
    const id = sections.has('warnings') ? stopAmong(practice.view().warnings) : known;
    if (id === null || id === known) return;
    known = id;
    const stop = withStop(store.read().stop, id, date());
    store.write({ ...store.read(), stop });
    practice.tellPerson({ stop });
  });
}

/** Repetitions are kept as they come: a practice that nobody closes counts all the same. */
function keepCount(store: PersonStore, practice: LivePractice): void {
  practice.changes.subscribe(({ sections }) => {
    const { stage, source, ledger } = practice.view();
    if (!sections.has('ledger') || !COUNTING.includes(stage) || !counts(source)) return;
    const person = withCount(store.read(), ledger.rehearsals + ledger.balls);
    store.write(person);
    practice.tellPerson({ lastSession: personView(person).lastSession });
  });
}

/** The safety form is behind, so the newest session kept is this one. */
const COUNTING: readonly Stage[] = ['practice', 'after', 'over'];

function keepStopRead(store: PersonStore): Stop | undefined {
  const { stop } = store.read();
  if (stop === undefined) return undefined;
  const read = { ...stop, read: true };
  store.write({ ...store.read(), stop: read });
  return read;
}

function keep({ store, date }: StudentHostOptions, { practice, command }: PracticeRecord): void {
  const { ledger, ownRange, stage, source, keeping } = practice.view();
  // A red flag ends the form before the history was answered.
  if (!counts(source)) return stage === 'stopped' ? undefined : confirmHistory(store);
  const repetitions = ledger.rehearsals + ledger.balls;
  if (command.type === 'close') {
    const sessionId = keeping?.sessionId ?? null;
    const end = {
      ...(sessionId !== null && { sessionId }),
      repetitions,
      painAfter: command.pain,
      note: command.note,
    };
    const person = withEnd(store.read(), end, ownRange);
    store.write(person);
    practice.tellPerson({ lastSession: personView(person).lastSession });
  } else if (stage !== 'stopped' && command.answers.pain !== null) {
    const painBefore = command.answers.pain;
    const session = { startedMs: date(), repetitions, painBefore, painAfter: null, note: '' };
    store.write(withSession(store.read(), session));
  }
}

/** A note that was edited on its session's page is the same here, and on the pages that are open. */
export function keepNote(store: PersonStore, host: PracticeHost, note: SessionNote): void {
  const person = withNote(store.read(), note);
  if (person === store.read()) return;
  store.write(person);
  const { lastSession } = personView(person);
  host.current().tellPerson({ lastSession });
}

/** What is said of oneself holds until it is said anew. */
function keepAbout({ store }: StudentHostOptions, said: About): About {
  const person = store.read();
  const about = { ...person.about, ...said };
  store.write({ ...person, about });
  return about;
}

/** The practices of one service: the first one, and those that a person begins after it. */
export function studentHost(options: StudentHostOptions): PracticeHost {
  const { first, sourceFor } = options;
  let sensors: Beginning['sensors'] = first.source.kind === 'ble' ? 'bluetooth' : 'demo';
  return practiceHost({
    first: newPractice(options, first.source, first, sensors),
    ...(sourceFor && {
      make: (beginning: Beginning) => {
        const { kind, hand } = beginning;
        if (kind === 'guided') {
          keepAbout(options, { hand });
          sensors = beginning.sensors;
        }
        return newPractice(options, sourceFor(beginning), beginning, sensors);
      },
    }),
    keepStopRead: () => keepStopRead(options.store),
    keepAbout: (said) => keepAbout(options, said),
    keep: (record) => {
      keep(options, record);
      options.said?.(record);
    },
  });
}
