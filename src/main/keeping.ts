import type { PracticeHost, PracticeRecord } from '../practice/host.ts';
import { KEEPING_TEXTS } from '../practice/keepingTexts.ts';
import type { LivePractice } from '../practice/livePractice.ts';
import { fill } from '../sensors/sentence.ts';
import { SessionError } from '../sessions/sessionError.ts';
import { type SessionStore, openStore } from '../sessions/store/store.ts';
import type { KeptSessions } from '../streaming/sessionsApi.ts';
import { PracticeRecorder } from './recorder.ts';

export interface KeepingOptions {
  /** Data folder. */
  readonly root: string;
  readonly date: () => Date;
  /** For the terminal. */
  readonly say: (sentence: string) => void;
  /** A demonstration begins anew after so long, session s. */
  readonly mostDemoS?: number;
}

/** Keeps the practices of one service. */
export interface Keeping {
  readonly sessions: KeptSessions;
  /** Records every practice that comes; those of a recording that is played are left out. */
  follow(host: PracticeHost): void;
  /** What the person said before and after a practice. */
  said(record: PracticeRecord): void;
  /** Ends what is being recorded and gives the folder back. */
  close(): Promise<void>;
}

/** Simulated practices that are kept; older ones go. */
const DEMOS_KEPT = 5;
const MOST_DEMO_S = 30 * 60;
/** What was deleted can be brought back for so long. */
const UNDO_MS = 30 * 86_400_000;

/** Opens the data folder; where that fails practice goes on without, and everybody is told why. */
export async function openKeeping(options: KeepingOptions): Promise<Keeping> {
  const { root } = options;
  try {
    const store = await openStore(root);
    return keepingIn(store, options);
  } catch (error) {
    if (!(error instanceof SessionError)) throw error;
    const problem = fill(KEEPING_TEXTS['none-kept'], { why: error.message });
    options.say(problem);
    return keepingNothing(root, problem);
  }
}

const isRecorded = (practice: LivePractice): boolean => practice.view().source.kind !== 'replay';
/** A simulated student who practises by himself, without end. */
const isEndless = (practice: LivePractice): boolean =>
  practice.view().source.simulated && practice.view().stage === 'practice';

function keepingNothing(folder: string, problem: string): Keeping {
  return {
    sessions: { store: null, problem, folder },
    follow: (host) =>
      void host.practices.subscribe((practice) => {
        if (isRecorded(practice)) practice.tellKeeping({ sessionId: null, problem });
      }),
    said: () => undefined,
    close: () => Promise.resolve(),
  };
}

function keepingIn(store: SessionStore, options: KeepingOptions): Keeping {
  const { root, date, say } = options;
  const recorders = new Map<LivePractice, PracticeRecorder>();
  const hearers = new Set<(id: string) => void>();
  const saved = (id: string): void => hearers.forEach((hear) => hear(id));
  let closing = false;
  const complain = (error: unknown): void => {
    if (!closing) say(`The data folder: ${error instanceof Error ? error.message : String(error)}`);
  };
  store.repaired.forEach(say);
  void tidy(store, date().getTime() - UNDO_MS, say).catch(complain);
  const record = (host: PracticeHost, practice: LivePractice): void => {
    for (const [other, recorder] of recorders)
      void recorder
        .end()
        .then(() => recorders.delete(other))
        .then(() => trimDemos(store))
        .catch(complain);
    if (!isRecorded(practice)) return;
    const full = {
      mostS: options.mostDemoS ?? MOST_DEMO_S,
      tell: () => beginAnew(host, practice),
    };
    const endless = isEndless(practice) ? { full } : {};
    recorders.set(practice, new PracticeRecorder({ store, practice, date, saved, ...endless }));
  };
  return {
    sessions: { store, problem: null, folder: root, onSaved: (hear) => void hearers.add(hear) },
    follow: (host) => void host.practices.subscribe((practice) => record(host, practice)),
    said: ({ practice, command }) =>
      recorders
        .get(practice)
        ?.note(
          command.type === 'close'
            ? { painAfter: command.pain, note: command.note }
            : { painBefore: command.answers.pain },
        ),
    async close() {
      closing = true;
      for (const recorder of recorders.values()) await recorder.close();
      await trimDemos(store).catch(() => undefined);
      await store.close();
    },
  };
}

async function tidy(store: SessionStore, beforeMs: number, say: (s: string) => void) {
  await store.purge(beforeMs);
  await store.recover((id, problem) =>
    say(
      problem === null
        ? `The interrupted session ${id} was recovered.`
        : `The interrupted session ${id} could not be measured: ${problem}.`,
    ),
  );
  await trimDemos(store);
}

function beginAnew(host: PracticeHost, practice: LivePractice): void {
  if (host.current() !== practice) return;
  host.obey({ type: 'begin', kind: 'demo', hand: practice.view().hand, sensors: 'demo' });
}

/** What this service recorded begins with its date; what was imported stays. */
const RECORDED_HERE = /^\d/;

async function trimDemos(store: SessionStore): Promise<void> {
  const demos = (await store.list()).filter(
    (s) => s.simulated && s.state !== 'running' && RECORDED_HERE.test(s.id),
  );
  for (const { id } of demos.slice(DEMOS_KEPT)) await store.discard(id);
}
