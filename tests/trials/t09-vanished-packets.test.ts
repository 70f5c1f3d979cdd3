// capacitor-community/bluetooth-le#424: packets vanish while the link stays up.
import { beforeAll, describe, expect, it } from 'vitest';
import { finish, start, step } from '../../src/analysis/analysis.ts';
import { DEFAULT_PLAN } from '../../src/coaching/plan.ts';
import type { JudgedRepetition } from '../../src/coaching/judgement.ts';
import { createStream, streamHealth, takePacket } from '../../src/sensors/clock/stream.ts';
import { openProfileDecoder } from '../../src/sensors/decode/openProfile.ts';
import type { ImuSample } from '../../src/sensors/sample.ts';
import {
  type SimulatedSession,
  simulateSession,
} from '../../src/sensors/sources/synthetic/index.ts';
import { openPacket } from '../sensors/decode/bytes.ts';

const decoder = openProfileDecoder({
  rateHz: 104,
  fullScale: { accG: 16, gyroDegPerS: 2000 },
  role: 0,
  hardware: '',
  firmware: '',
});
const ACC = 32768 / (16 * 9.80665);
const GYRO = 32768 / ((2000 * Math.PI) / 180);
const count = (v: number): number => Math.max(-32768, Math.min(32767, Math.round(v)));
const countsOf = ({ acc, gyro }: ImuSample): number[] =>
  [acc.x * ACC, acc.y * ACC, acc.z * ACC, gyro.x * GYRO, gyro.y * GYRO, gyro.z * GYRO].map(count);

/** The session's samples as packets of the open profile; those that `vanishes` says never arrive. */
function received(
  sensor: 'chest' | 'trailArm',
  samples: readonly ImuSample[],
  vanishes: (s: ImuSample) => boolean,
) {
  const stream = createStream(sensor, decoder.format);
  const out = samples.flatMap((s, k) => {
    const us = Math.round((s.deviceTimeS ?? 0) * 1e6) % 2 ** 32;
    const bytes = openPacket({ sequence: k % 2 ** 16, us, counts: [countsOf(s)] });
    if (vanishes(s)) return [];
    return decoder
      .decode(null, bytes)
      .flatMap((packet) => takePacket(stream, packet, s.arrivalTimeS ?? 0));
  });
  return { out, health: streamHealth(stream, out.at(-1)?.timeS ?? 0) };
}

function analyse(session: SimulatedSession, lost: { fromS: number; toS: number }) {
  const vanishes = (s: ImuSample): boolean => s.timeS > lost.fromS && s.timeS < lost.toS;
  const chest = received('chest', session.samples.chest, () => false);
  const arm = received('trailArm', session.samples.trailArm, vanishes);
  const state = start({ hand: session.hand, plan: DEFAULT_PLAN, emitFrames: false });
  const repetitions: JudgedRepetition[] = [];
  const emit = (o: Parameters<Parameters<typeof step>[2]>[0]): void => {
    if (o.kind === 'repetition') repetitions.push(o.repetition);
  };
  session.events.forEach((event) => step(state, { kind: 'event', event }, emit));
  const all = [...chest.out, ...arm.out].sort((a, b) => a.timeS - b.timeS);
  all.forEach((sample) => step(state, { kind: 'sample', sample }, emit));
  finish(state, emit);
  return { repetitions, health: arm.health };
}

const verdicts = (repetitions: readonly JudgedRepetition[]): (boolean | null | undefined)[] =>
  repetitions.map((r) => (r.kind === 'rehearsal' ? r.verdict.passed : undefined));
const withGap = (repetitions: readonly JudgedRepetition[]): boolean[] =>
  repetitions.map((r) => r.flags.includes('gap'));

describe('packets that vanish while the link stays up', () => {
  let session: SimulatedSession;
  let middle: number;
  beforeAll(() => {
    const radio = { lostShare: 0 };
    session = simulateSession({ seed: 21, script: 'r r r', rateHz: 104, radio });
    const second = session.truth.repetitions[1];
    middle = second?.kind === 'rehearsal' ? second.chestOnsetS : NaN;
  });

  it('without a loss all three rehearsals are scored', () => {
    const { repetitions } = analyse(session, { fromS: 0, toS: 0 });
    expect(verdicts(repetitions)).toEqual([true, true, true]);
    expect(withGap(repetitions)).toEqual([false, false, false]);
  });

  it('0.3 s lost at the release: counted, the repetition flagged and not scored, the one before as it was', () => {
    const { repetitions, health } = analyse(session, { fromS: middle, toS: middle + 0.3 });
    expect(verdicts(repetitions).slice(0, 2)).toEqual([true, null]);
    expect(withGap(repetitions)).toEqual([false, true, false]);
    expect((health.lostPct / 100) * session.samples.trailArm.length).toBeCloseTo(0.3 * 104, -1);
  });

  // Known fault: the arm's heading is off after a gap in mid-movement, and the next still address draws it back too
  // slowly, so that the chest's lead of the next repetition is read 97 ms short.
  it('0.3 s lost at the release does not fail the good repetition after it', () => {
    const { repetitions } = analyse(session, { fromS: middle, toS: middle + 0.3 });
    expect(verdicts(repetitions)[2]).not.toBe(false);
  });

  it('two samples lost are bridged: flagged nowhere, scored everywhere', () => {
    const { repetitions, health } = analyse(session, { fromS: middle, toS: middle + 0.02 });
    expect(health.lostPct).toBeGreaterThan(0);
    expect(verdicts(repetitions)).toEqual([true, true, true]);
    expect(withGap(repetitions)).toEqual([false, false, false]);
  });
});
