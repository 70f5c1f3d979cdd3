import { catchTimeS } from '../../swings/repetition.ts';
import { isHalfDone, isPraised } from '../../coaching/sessionCount.ts';
import { standingWarnings } from '../../coaching/standingWarnings.ts';
import type { Arrival } from '../feed/state.ts';
import {
  CALIBRATION_ORDER,
  type PracticeView,
  type SensorView,
  stepsDone,
} from '../../streaming/contract.ts';
import { markOf } from '../practice/kind.ts';
import { sided } from '../strings/sided.ts';
import { t } from '../strings/strings.ts';
import type { ToneName } from './tones.ts';

/** Something to sound and to say: first the tone, then the words. */
export interface Announcement {
  readonly kind:
    'step' | 'listening' | 'hold' | 'cue' | 'ledger' | 'rest' | 'warning' | 'sensor' | 'connection';
  readonly tone: ToneName | null;
  readonly words: string | null;
  /** It is true, and of use, for so much longer, ms; `null`: until it was said. */
  readonly withinMs: number | null;
}

/** What was announced of a practice already. Written in place. */
export interface Announced {
  /** Number of the newest rehearsal whose verdict was due. */
  verdict: number;
  readonly warnings: Set<string>;
  rest: boolean;
}

export const nothingAnnounced = (): Announced => ({
  verdict: 0,
  warnings: new Set(),
  rest: false,
});

/** A verdict is spoken within this time of its catch or not at all, ms. */
export const SPOKEN_WITHIN_MS = 3000;
/** What is told by a message that came so much too late is past, ms. */
const LATE_MS = 500;

/** For how long others than verdicts are worth saying, ms. A step holds until another one replaces it. */
const WITHIN_MS: Readonly<Record<Exclude<Announcement['kind'], 'cue'>, number | null>> = {
  step: null,
  warning: null,
  connection: null,
  listening: 300,
  hold: 300,
  ledger: 8000,
  sensor: 8000,
  rest: 20_000,
};

export const announcement = (
  kind: Exclude<Announcement['kind'], 'cue'>,
  tone: ToneName | null,
  words: string | null,
): Announcement => ({ kind, tone, words, withinMs: WITHIN_MS[kind] });

const only = (...args: Parameters<typeof announcement>): Announcement[] => [announcement(...args)];

/** Sections come as new objects with every message, whether they changed or not. */
const isSame = (a: unknown, b: unknown): boolean =>
  a === b || JSON.stringify(a) === JSON.stringify(b);

function steps(before: PracticeView, after: PracticeView): Announcement[] {
  if (before.calibration === after.calibration) return [];
  const quality = after.calibration.quality;
  if (quality !== null && !isSame(quality, before.calibration.quality)) {
    const problem = quality.problems.find((p) => p.refuses);
    if (problem !== undefined) {
      const isCheck = after.guide?.part === 'recheck';
      const begin = isCheck ? t.ready.recheck.spokenRefused : t.ready.calibrate.spokenAgain;
      return only('step', 'notPassed', `${begin} ${t.said.calibration(problem)}`);
    }
    const words = after.stage === 'practice' ? t.spoken.calibrated : t.ready.range.spoken;
    return only('step', 'passed', words);
  }
  if (after.stage !== 'practice') return [];
  const done = stepsDone(after.calibration);
  const next = CALIBRATION_ORDER[done];
  if (next === undefined || done === stepsDone(before.calibration)) return [];
  return only(
    'step',
    'listening',
    sided(`${t.step[next] ?? ''}. ${t.stepDetail[next] ?? ''}`, after.hand),
  );
}

/** The guided start: each step as it is asked, a tick for each movement seen, help where nothing comes. */
function guided(before: PracticeView, after: PracticeView): Announcement[] {
  const { guide } = after;
  if (guide === null || guide === before.guide) return [];
  const s = t.ready.guide;
  const isNew = before.guide?.step !== guide.step || before.guide.part !== guide.part;
  const askedAgain = guide.status === 'asked' && before.guide?.status !== 'asked';
  if (isNew || askedAgain) {
    return only(
      'step',
      'listening',
      sided(`${s.word[guide.step]}. ${s.detail[guide.step]}`, after.hand),
    );
  }
  if (guide.count > (before.guide?.count ?? 0)) return only('listening', 'listening', null);
  const { status } = guide;
  const needsHelp = status === 'slow' || status === 'swapped';
  return needsHelp && status !== before.guide?.status ? only('step', null, s[status]) : [];
}

function stages(before: PracticeView, after: PracticeView): Announcement[] {
  const begins = before.stage === 'address' && after.stage === 'practice';
  return begins ? only('step', 'passed', t.spoken.begin) : [];
}

/** However it was asked for: who stands at 4 m has to hear it. */
function pauses(before: PracticeView, after: PracticeView): Announcement[] {
  if (after.stage !== 'practice') return [];
  const [was, is] = [before, after].map(({ phase }) => phase.phase === 'paused');
  if (was === is) return [];
  return only('step', 'listening', is ? t.handsFree.paused : t.handsFree.resumed);
}

function phases(before: PracticeView, after: PracticeView): Announcement[] {
  const target = after.plan.targets.holdS?.min;
  const { phase, holdS } = after.phase;
  if (phase === 'address' && before.phase.phase === 'waiting') {
    return only('listening', 'listening', null);
  }
  const heldBefore = before.phase.phase === 'top' ? before.phase.holdS : 0;
  const reached = target !== undefined && phase === 'top' && holdS >= target;
  return reached && heldBefore < target ? only('hold', 'holdReached', null) : [];
}

/** At most one cue for a rehearsal, and only as long as it is fresh by the service's clock. A pass that is nothing new needs no words. */
function verdict(
  { last, ledger }: PracticeView,
  arrival: Arrival,
  done: Announced,
): Announcement[] {
  if (last === null || last.index <= done.verdict) return [];
  done.verdict = last.index;
  if (last.kind !== 'rehearsal') return [];
  const ageMs = 1000 * (arrival.sessionS - catchTimeS(last)) + arrival.lateMs;
  if (ageMs >= SPOKEN_WITHIN_MS) return [];
  const { passed, cue } = last.verdict;
  const mark = markOf({ kind: 'rehearsal', passed });
  const tone = mark === 'passed' || mark === 'notPassed' ? mark : null;
  const isToneEnough = passed === true && !isPraised(ledger, ledger);
  const words = isToneEnough ? null : (praised(passed, ledger) ?? t.said.cue(cue));
  return [{ kind: 'cue', tone, words, withinMs: SPOKEN_WITHIN_MS - ageMs }];
}

/** A row is praised by its length. */
const praised = (passed: boolean | null, { inARow }: PracticeView['ledger']): string | null =>
  passed === true && inARow > 1 ? t.count.rowSpoken(inARow) : null;

function rest({ ledger }: PracticeView, done: Announced): Announcement[] {
  if (done.rest || !isHalfDone(ledger)) return [];
  done.rest = true;
  return only('rest', null, t.count.restSpoken);
}

function ledgers(before: PracticeView, after: PracticeView): Announcement[] {
  const { ledger } = after;
  if (before.ledger === ledger) return [];
  if (ledger.ballTooEarly && ledger.balls > before.ledger.balls) {
    return only('ledger', null, t.ledger.next(ledger));
  }
  const nowDue = ledger.next === 'ball' && before.ledger.next === 'rehearsal';
  return nowDue ? only('ledger', 'ballNext', t.ledger.next(ledger)) : [];
}

/** Each that was not announced yet, and is new or stands. */
function warnings(
  { warnings: all }: PracticeView,
  isNews: boolean,
  done: Announced,
): Announcement[] {
  const keyOf = ({ id, atS }: (typeof all)[number]): string => `${id} ${atS}`;
  const due = (isNews ? all : standingWarnings(all)).filter((w) => !done.warnings.has(keyOf(w)));
  for (const w of all) done.warnings.add(keyOf(w));
  return due.flatMap((w) => only('warning', 'warning', t.said.warning(w)));
}

const isLost = ({ state }: SensorView): boolean => state === 'lost' || state === 'retrying';

function sensors(before: PracticeView, after: PracticeView): Announcement[] {
  if (before.sensors === after.sensors) return [];
  return after.sensors.flatMap((now) => {
    const was = before.sensors.find((s) => s.sensor === now.sensor);
    if (was === undefined || isLost(was) === isLost(now)) return [];
    const name = t.sensors[now.sensor];
    if (isLost(now)) return only('sensor', 'sensorLost', t.sensors.lostSpoken(name));
    return now.state === 'streaming' ? only('sensor', 'listening', t.sensors.backSpoken(name)) : [];
  });
}

const CHANGES = [sensors, steps, guided, stages, pauses, phases, ledgers] as const;

/** A page that joins a practice takes its past as known; a warning that stands is told to whoever practises. */
function joined(view: PracticeView, done: Announced): readonly Announcement[] {
  done.verdict = view.last?.index ?? 0;
  done.rest = isHalfDone(view.ledger);
  const standing = warnings(view, false, done);
  return view.stage === 'practice' ? standing : [];
}

/**
 * What is to be said because of a message. A snapshot is no news by itself, nor is what comes too late: of them only
 * warnings and a fresh verdict are said.
 * @param before `null`: the page has just come to this practice
 * @param done written in place
 */
export function announcements(
  before: PracticeView | null,
  after: PracticeView,
  arrival: Arrival,
  done: Announced,
): readonly Announcement[] {
  if (before === null) return joined(after, done);
  const isNews = arrival.kind === 'batch' && arrival.lateMs < LATE_MS;
  const always = [
    ...warnings(after, arrival.kind === 'batch', done),
    ...verdict(after, arrival, done),
  ];
  if (!isNews) return always;
  const changes = CHANGES.flatMap((part) => part(before, after));
  return [...always, ...changes, ...rest(after, done)];
}
