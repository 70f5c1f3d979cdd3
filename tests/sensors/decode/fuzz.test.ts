import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  countMalformed,
  createStream,
  streamHealth,
  takePacket,
} from '../../../src/sensors/clock/stream.ts';
import { movesenseDecoder } from '../../../src/sensors/decode/movesense.ts';
import {
  decodeOpenProfileInfo,
  openProfileDecoder,
} from '../../../src/sensors/decode/openProfile.ts';
import { type Decoder, PacketError } from '../../../src/sensors/decode/packet.ts';
import { witMotionDecoder } from '../../../src/sensors/decode/witMotion.ts';
import type { ImuSample } from '../../../src/sensors/sample.ts';
import { concat, imu6, openPacket, witFrame } from './bytes.ts';

const count = fc.integer({ min: -32768, max: 32767 });
const six = fc.array(count, { minLength: 6, maxLength: 6 });
const good = {
  open: fc
    .record({
      sequence: fc.nat(65535),
      us: fc.nat(2 ** 32 - 1),
      counts: fc.array(six, { minLength: 1, maxLength: 19 }),
    })
    .map(openPacket),
  wit: fc.array(six, { minLength: 1, maxLength: 4 }).map((f) => concat(...f.map(witFrame))),
  movesense: fc
    .tuple(
      fc.nat(2 ** 32 - 1),
      fc.array(fc.tuple(fc.float(), fc.float(), fc.float()), { minLength: 2, maxLength: 16 }),
    )
    .chain(([ms, v]) => {
      const n = Math.floor(v.length / 2);
      const payload = imu6(ms, v.slice(0, n), v.slice(n, 2 * n));
      // whole, or one half of it without the other: parts get lost and come in any order
      return fc.oneof(
        fc.constant(concat([2, 7], payload)),
        fc
          .tuple(fc.constantFrom(2, 3), fc.nat(payload.length))
          .map(([kind, cut]) =>
            concat([kind, 7], payload.subarray(kind === 2 ? 0 : cut, kind === 2 ? cut : undefined)),
          ),
      );
    }),
};

/** A good notification, cut, lengthened, with bytes changed; or plain noise. */
const spoiled = (base: fc.Arbitrary<Uint8Array>): fc.Arbitrary<Uint8Array> =>
  fc.oneof(
    base,
    fc.uint8Array({ maxLength: 260 }),
    fc
      .tuple(base, fc.nat(260), fc.uint8Array({ maxLength: 4 }), fc.nat(255), fc.nat(255))
      .map(([bytes, cut, tail, at, value]) => {
        const out = concat(bytes.subarray(0, cut), tail);
        if (at < out.length) out[at] = value;
        return out;
      }),
  );

function feed<S>(decoder: Decoder<S>, notifications: readonly Uint8Array[]) {
  const stream = createStream('chest', decoder.format);
  const state = decoder.create();
  const samples: ImuSample[] = [];
  notifications.forEach((bytes, i) => {
    try {
      for (const packet of decoder.decode(state, bytes))
        samples.push(...takePacket(stream, packet, i * 0.01));
    } catch (error) {
      if (!(error instanceof PacketError)) throw error;
      countMalformed(stream, error);
    }
  });
  return { samples, health: streamHealth(stream, notifications.length * 0.01) };
}

const finite = (s: ImuSample): boolean =>
  [s.timeS, s.acc.x, s.acc.y, s.acc.z, s.gyro.x, s.gyro.y, s.gyro.z].every(Number.isFinite);

/** More by hand: `FUZZ_RUNS=20000 npx vitest run tests/sensors/decode`. */
const RUNS = Number(process.env.FUZZ_RUNS ?? 300);

const OPEN = openProfileDecoder({
  rateHz: 104,
  fullScale: { accG: 16, gyroDegPerS: 2000 },
  role: 0,
  hardware: '',
  firmware: '',
});

describe('malformed packets', () => {
  it.each([
    ['open profile', OPEN, good.open],
    ['WitMotion', witMotionDecoder(100), good.wit],
    ['Movesense', movesenseDecoder(104), good.movesense],
  ] as [string, Decoder<unknown>, fc.Arbitrary<Uint8Array>][])(
    '%s: only its own error, no NaN, time never falls, each refusal counted',
    (_name, decoder, base) => {
      fc.assert(
        fc.property(fc.array(spoiled(base), { maxLength: 30 }), (notifications) => {
          const { samples, health } = feed(decoder, notifications);
          expect(samples.every(finite)).toBe(true);
          expect(samples.every((s, i) => i === 0 || s.timeS > (samples[i - 1]?.timeS ?? 0))).toBe(
            true,
          );
          expect(health.malformed).toBeLessThanOrEqual(notifications.length);
          expect(Object.values(health).some(Number.isNaN)).toBe(false);
        }),
        { numRuns: RUNS },
      );
    },
  );

  it('a counter that skips while the stamp barely moves: no reading comes before an earlier one', () => {
    const still = [0, 0, 2048, 0, 0, 0];
    const notifications = [0, 2].map((sequence, i) =>
      openPacket({ sequence, us: i, counts: [still, still] }),
    );
    const times = feed(OPEN, notifications).samples.map((s) => s.timeS);
    expect(times).toEqual([...times].sort((a, b) => a - b));
    expect(new Set(times).size).toBe(4);
  });

  it('the info of the open profile: only its own error', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 64 }), (bytes) => {
        try {
          expect(decodeOpenProfileInfo(bytes).rateHz).toBeGreaterThan(0);
        } catch (error) {
          expect(error).toBeInstanceOf(PacketError);
        }
      }),
    );
  });

  it('a thousand bad ones among a thousand good ones are counted exactly', () => {
    const notifications = Array.from({ length: 2000 }, (_, i) =>
      i % 2 === 0
        ? openPacket({ sequence: i / 2, us: (i / 2) * 9615, counts: [[0, 0, 2048, 0, 0, 0]] })
        : concat([9], [i % 256]),
    );
    const { samples, health } = feed(OPEN, notifications);
    expect([samples.length, health.malformed, health.lostPct]).toEqual([1000, 1000, 0]);
  });
});
