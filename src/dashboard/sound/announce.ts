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
  readonly kind: 'step' | 'listening' | 'hold' | 'cue' | 'ledger' | 'warning' | 'sensor';
  readonly tone: ToneName | null;
  readonly words: string | null;
}

const only = (
  kind: Announcement['kind'],
  tone: ToneName | null,
  words: string | null,
): Announcement[] => [{ kind, tone, words }];

function steps(before: PracticeView, after: PracticeView): Announcement[] {
  if (before.calibration === after.calibration) return [];
  const quality = after.calibration.quality;
  if (quality !== null && quality !== before.calibration.quality) {
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

/** Exactly one cue for a rehearsal: only where its number is a new one. */
function cues(before: PracticeView, after: PracticeView): Announcement[] {
  const { last } = after;
  if (last === null || last.kind !== 'rehearsal') return [];
  if (before.strip.some((entry) => entry.index === last.index)) return [];
  const mark = markOf({ kind: 'rehearsal', passed: last.verdict.passed });
  const tone = mark === 'passed' || mark === 'notPassed' ? mark : null;
  return only('cue', tone, t.said.cue(last.verdict.cue));
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

function warnings(before: PracticeView, after: PracticeView): Announcement[] {
  if (before.warnings === after.warnings) return [];
  const known = before.warnings.map((w) => `${w.id} ${w.atS}`);
  return after.warnings
    .filter((w) => !known.includes(`${w.id} ${w.atS}`))
    .flatMap((w) => only('warning', 'warning', t.said.warning(w)));
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

/** What is to be said because the view changed. Nothing where another practice began: its past is not news. */
export function announcements(
  before: PracticeView | null,
  after: PracticeView,
): readonly Announcement[] {
  if (before === null || before.practiceId !== after.practiceId || before === after) return [];
  return [warnings, sensors, steps, guided, stages, pauses, phases, cues, ledgers].flatMap((part) =>
    part(before, after),
  );
}
