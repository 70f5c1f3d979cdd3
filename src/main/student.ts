#!/usr/bin/env node
import { join } from 'node:path';
import type { PracticeHost } from '../practice/host.ts';
import type { PracticeView } from '../practice/view.ts';
import { type PracticeCounts, weekCounts } from '../coaching/notCounted.ts';
import { countedSessions } from '../practice/person.ts';
import { coachService } from '../sending/coachLink.ts';
import { SessionError } from '../sessions/sessionError.ts';
import type { KeptSessions } from '../streaming/sessionsApi.ts';
import { countedSession } from '../streaming/sessionsViews.ts';
import { askedPlan } from '../streaming/planApi.ts';
import { openKeeping } from './keeping.ts';
import { listenLocally } from './listen.ts';
import { liveSensors } from './liveSensors.ts';
import { planFile, planService } from './planFile.ts';
import { secondScreenHere, switchOnAtStart } from './secondScreen.ts';
import { type PersonStore, personFile } from './personFile.ts';
import { practiceSource, sourceFor } from './practiceSource.ts';
import {
  DEFAULT_PORT,
  STUDENT_HELP,
  SettingsError,
  type StudentSettings,
  readStudentSettings,
} from './settings.ts';
import { buildStudentApp } from './studentApp.ts';
import { keepNote, studentHost } from './studentHost.ts';

const now = (): number => performance.now();

/** `null` where nothing is kept: there is nothing to send then. */
function coachOf(
  { store, onSaved }: KeptSessions,
  view: () => PracticeView,
  watched: () => boolean,
) {
  if (store === null) return null;
  const coach = coachService({
    store,
    watched,
    practising: () => view().stage === 'practice',
    held: () => (view().stage === 'after' ? (view().keeping?.sessionId ?? null) : null),
    now: Date.now,
    say: console.error,
  });
  onSaved?.(coach.wake);
  return coach;
}

/** Of the sessions that are kept; where none are, of what is known of the person. */
async function weekOf({ store }: KeptSessions, person: PersonStore): Promise<PracticeCounts> {
  const sessions =
    store === null ? countedSessions(person.read()) : (await store.list()).map(countedSession);
  return weekCounts(sessions, Date.now());
}

async function run(settings: StudentSettings): Promise<void> {
  const live = liveSensors();
  const first = await practiceSource(settings, live);
  const keeping = await openKeeping({
    root: settings.data,
    date: () => new Date(),
    say: console.error,
  });
  let pages = 0;
  const coach = coachOf(
    keeping.sessions,
    () => host.current().view(),
    () => pages > 0,
  );
  const person = personFile(join(settings.data, 'person.json'), console.error);
  const plans = planService({
    file: planFile(join(settings.data, 'plans.json'), Date.now),
    coach: () => coach?.plan() ?? null,
    week: () => weekOf(keeping.sessions, person),
  });
  const host: PracticeHost = studentHost({
    first,
    ...(settings.replay === null && { sourceFor: sourceFor(settings, live) }),
    store: person,
    plan: () => askedPlan(plans),
    said: keeping.said,
    now,
    date: Date.now,
  });
  keeping.follow(host);
  const screen = secondScreenHere(host, now);
  const app = await buildStudentApp({
    host,
    now,
    desk: live.desk,
    sessions: {
      ...keeping.sessions,
      edited(session) {
        keepNote(person, host, session);
        coach?.wake();
      },
    },
    ...(coach && { coach }),
    plans,
    secondScreen: screen,
    onPages: (open) => (pages = open),
  });
  const close = (): Promise<void> =>
    host
      .stop()
      .then(() => coach?.close())
      .then(() => keeping.close())
      .then(() => app.close())
      .then(() => first.close())
      .then(() => live.stop());
  const address = await listenLocally(app, settings.port, !settings.portGiven).catch(
    async (error: unknown) => {
      await close();
      throw error;
    },
  );
  if (!settings.portGiven && address.port !== DEFAULT_PORT) {
    console.log(`Port ${DEFAULT_PORT} is in use, so this one is used instead.`);
  }
  console.log(`Stillcatch is at ${address.url}  (Ctrl+C ends it)`);
  if (settings.secondScreen) console.log(await switchOnAtStart(screen));
  host.current().start();
  let ending = false;
  const end = (): void => {
    if (ending) process.exit(1);
    ending = true;
    void close().then(() => process.exit(0));
  };
  process.on('SIGINT', end);
  process.on('SIGTERM', end);
}

const exitCodeOf = (error: unknown): number =>
  error instanceof SettingsError ? 2 : error instanceof SessionError ? 3 : 1;

try {
  const settings = readStudentSettings(process.argv.slice(2));
  if (settings === 'help') console.log(STUDENT_HELP);
  else await run(settings);
} catch (error) {
  const text = error instanceof Error ? error.message : String(error);
  console.error(/[.!?]$/.test(text) ? text : `${text}.`);
  process.exit(exitCodeOf(error));
}
