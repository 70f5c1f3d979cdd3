import { degrees, wrapPi } from '../../../math/angle.ts';
import type { SessionEvent } from '../../sessionEvent.ts';
import {
  type Device,
  type Packet,
  type SimulatedSample,
  createDevice,
  nextSampleS,
  takeSample,
} from './device.ts';
import { TAKE_UP_S } from './channel.ts';
import { figureAt, segmentsOf, sensorSite } from './figure.ts';
import {
  type SegmentState,
  armAnglesOf,
  flexionOf,
  lateralOf,
  leanOf,
  turnOf,
} from './measures.ts';
import { type CalibrationMotionFault, calibrate } from './motions/calibration.ts';
import { distract } from './motions/distractors.ts';
import { hitBall, practiceSwing } from './motions/fullSwing.ts';
import { rehearse } from './motions/rehearsal.ts';
import { type SimulationOptions, checkOptions } from './options.ts';
import { SIMULATED_SENSORS } from './worn.ts';
import { type Scene, createScene } from './scene.ts';
import { forgetScoreBefore } from './score.ts';
import { type ScriptToken, parseScript } from './script.ts';
import type { TruthDistractor, TruthRepetition } from './truth.ts';

/** What happens in a session, in the order in which the host learns of it. */
export type SimulationItem =
  | { readonly kind: 'packet'; readonly timeS: number; readonly packet: Packet }
  /** Once the step is over, when its duration is known. */
  | { readonly kind: 'event'; readonly timeS: number; readonly event: SessionEvent }
  | { readonly kind: 'repetition'; readonly timeS: number; readonly repetition: TruthRepetition }
  | { readonly kind: 'distractor'; readonly timeS: number; readonly distractor: TruthDistractor };

/** Exact angles of the simulated body, deg; a left-handed golfer's as a right-handed one's. */
interface TruthAngles {
  readonly flexionDeg: number;
  readonly lateralDeg: number;
  readonly leanDeg: number;
  /** Relative to the middle of the address reference. */
  readonly turnDeg: number;
  readonly planeDeg: number;
  readonly elevationDeg: number;
  readonly externalRotationDeg: number;
}

interface SessionTruth {
  readonly repetitions: readonly TruthRepetition[];
  readonly distractors: readonly TruthDistractor[];
  segments(trueTimeS: number): SegmentState;
  angles(trueTimeS: number): TruthAngles;
}

export interface SimulatedSession {
  readonly hand: 'left' | 'right';
  readonly seed: number;
  readonly durationS: number;
  /** In order of arrival. */
  readonly packets: readonly Packet[];
  /** Those that arrived, per sensor label, oldest first. */
  readonly samples: Readonly<Record<'chest' | 'trailArm', readonly SimulatedSample[]>>;
  readonly events: readonly SessionEvent[];
  readonly truth: SessionTruth;
}

const MOTION_FAULTS: readonly string[] = ['moving-while-still', 'wobbly-bow', 'wobbly-raise'];

function calibrationOf(scene: Scene, options: SimulationOptions): void {
  if (options.calibration === 'none') {
    scene.nowS = 1;
    return;
  }
  const fault = options.calibrationFault ?? '';
  calibrate(scene, {
    repetitions: options.calibrationRepetitions ?? 3,
    short: options.calibration === 'short',
    fault: MOTION_FAULTS.includes(fault) ? (fault as CalibrationMotionFault) : null,
  });
}

/** A movement of its own, beside those that a script can name. */
export type Movement = (scene: Scene) => void;

export function play(scene: Scene, token: ScriptToken | Movement): void {
  if (typeof token === 'function') return token(scene);
  if (token.kind === 'rehearsal') rehearse(scene, token.fault);
  else if (token.kind === 'ball') hitBall(scene, token.carryOver);
  else if (token.kind === 'practiceSwing') practiceSwing(scene);
  else distract(scene, token.kind, token.seconds);
}

/** Takes out of an ordered list what is over by `untilS`. */
function takeOver<T>(list: T[], endOf: (item: T) => number, untilS: number): T[] {
  const n = list.findIndex((item) => endOf(item) > untilS);
  return list.splice(0, n < 0 ? list.length : n);
}

/** Events and truths of the plan that are over by `untilS`, oldest first; taken out of the scene. */
function takePast(scene: Scene, untilS: number): SimulationItem[] {
  const eventEnd = (e: SessionEvent): number => e.onsetS + e.durationS;
  const endOf = (x: { readonly endS: number }): number => x.endS;
  const past: SimulationItem[] = [
    ...takeOver(scene.events, eventEnd, untilS).map(
      (event) => ({ kind: 'event', timeS: eventEnd(event), event }) as const,
    ),
    ...takeOver(scene.repetitions, endOf, untilS).map(
      (repetition) => ({ kind: 'repetition', timeS: repetition.endS, repetition }) as const,
    ),
    ...takeOver(scene.distractors, endOf, untilS).map(
      (distractor) => ({ kind: 'distractor', timeS: distractor.endS, distractor }) as const,
    ),
  ];
  return past.sort((a, b) => a.timeS - b.timeS);
}

/** All packets up to where the scene is planned, in order of arrival, with what is known by then. */
function* samplePlanned(scene: Scene, devices: readonly Device[], waiting: Packet[]) {
  for (;;) {
    const device = devices.reduce((a, b) => (nextSampleS(b) < nextSampleS(a) ? b : a));
    const atS = nextSampleS(device);
    // What follows may still be planned, and the body takes it up a little before its time.
    if (atS > scene.nowS - TAKE_UP_S) return;
    const packet = takeSample(device, (t) =>
      sensorSite(scene.golfer.build, scene.score, device.sensor, t),
    );
    if (packet) {
      waiting.push(packet);
      waiting.sort((a, b) => a.arrivalTimeS - b.arrivalTimeS);
    }
    // Nothing taken later can arrive before now.
    while (waiting[0] && waiting[0].arrivalTimeS <= atS) {
      const next = waiting.shift() as Packet;
      yield* takePast(scene, next.arrivalTimeS);
      yield { kind: 'packet', timeS: next.arrivalTimeS, packet: next } satisfies SimulationItem;
    }
  }
}

function* rest(scene: Scene, waiting: readonly Packet[]): Generator<SimulationItem> {
  for (const packet of waiting) {
    yield* takePast(scene, packet.arrivalTimeS);
    yield { kind: 'packet', timeS: packet.arrivalTimeS, packet };
  }
  yield* takePast(scene, Infinity);
}

/**
 * A session as a stream: memory stays flat however long `tokens` goes on, unless `keep` asks for the
 * whole score (truth at any time).
 */
export function* streamScene(
  scene: Scene,
  options: SimulationOptions,
  tokens: Iterable<ScriptToken | Movement>,
  keep = false,
): Generator<SimulationItem> {
  calibrationOf(scene, options);
  const firstStand = scene.events[0];
  const turnedOverS = firstStand ? firstStand.onsetS + firstStand.durationS + 0.3 : 0;
  const worn = options.club ? ([...SIMULATED_SENSORS, 'club'] as const) : SIMULATED_SENSORS;
  const devices = worn.map((s) => createDevice(s, options, turnedOverS));
  const waiting: Packet[] = [];
  yield* samplePlanned(scene, devices, waiting);
  for (const token of tokens) {
    play(scene, token);
    yield* samplePlanned(scene, devices, waiting);
    if (!keep) forgetScoreBefore(scene.score, scene.nowS - TAKE_UP_S);
  }
  scene.nowS += 1.5;
  yield* samplePlanned(scene, devices, waiting);
  yield* rest(scene, waiting);
}

/**
 * The items of one session, made as they are asked for.
 * @throws ScriptError, RangeError on bad options.
 */
export function streamSession(options: SimulationOptions): Generator<SimulationItem> {
  checkOptions(options);
  const tokens = parseScript(options.script ?? '');
  return streamScene(createScene(options.seed, options.unrest), options, tokens);
}

function anglesOf(s: SegmentState, addressTurn: number): TruthAngles {
  const arm = armAnglesOf(s);
  return {
    flexionDeg: degrees(flexionOf(s.thorax)),
    lateralDeg: degrees(lateralOf(s.thorax)),
    leanDeg: degrees(leanOf(s.thorax)),
    turnDeg: degrees(wrapPi(turnOf(s.thorax) - addressTurn)),
    planeDeg: degrees(arm.plane),
    elevationDeg: degrees(arm.elevation),
    externalRotationDeg: degrees(arm.externalRotation),
  };
}

/**
 * A whole session in memory, the same for the same options.
 * @throws ScriptError where the script cannot be played, RangeError where an option is out of range.
 */
export function simulateSession(options: SimulationOptions): SimulatedSession {
  checkOptions(options);
  const scene = createScene(options.seed, options.unrest);
  const packets: Packet[] = [];
  const events: SessionEvent[] = [];
  const repetitions: TruthRepetition[] = [];
  const distractors: TruthDistractor[] = [];
  const tokens = parseScript(options.script ?? '');
  for (const item of streamScene(scene, options, tokens, true)) {
    if (item.kind === 'packet') packets.push(item.packet);
    else if (item.kind === 'event') events.push(item.event);
    else if (item.kind === 'repetition') repetitions.push(item.repetition);
    else distractors.push(item.distractor);
  }
  const of = (sensor: 'chest' | 'trailArm'): SimulatedSample[] =>
    packets.filter((p) => p.sensor === sensor).flatMap((p) => p.samples);
  const segments = (timeS: number): SegmentState =>
    segmentsOf(figureAt(scene.golfer.build, scene.score, timeS));
  return {
    hand: options.hand ?? 'right',
    seed: options.seed,
    durationS: scene.nowS,
    packets,
    samples: { chest: of('chest'), trailArm: of('trailArm') },
    events,
    truth: {
      repetitions,
      distractors,
      segments,
      angles: (timeS) => anglesOf(segments(timeS), scene.addressTurn),
    },
  };
}
