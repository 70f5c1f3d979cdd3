import { describe, expect, it } from 'vitest';
import { witMotionDecoder } from '../../../src/sensors/decode/witMotion.ts';
import type { Reading } from '../../../src/sensors/decode/packet.ts';
import { concat, hex, witFrame } from './bytes.ts';

// Public capture of such a sensor: obedier/vib, analyze_wt901_data.py (16 of 20 bytes given there; the last two angles added as zero).
const CAPTURE = hex('55 61 e4 03 eb f4 3f 00 7c 02 02 ff 33 00 52 fe 00 00 00 00');

const inG = (r: Reading | undefined): number[] =>
  r ? [r.acc.x, r.acc.y, r.acc.z].map((v) => v / 9.80665) : [];
const inDeg = (r: Reading | undefined): number[] =>
  r ? [r.gyro.x, r.gyro.y, r.gyro.z].map((v) => (v / Math.PI) * 180) : [];
const near = (values: number[]): unknown => values.map((v) => expect.closeTo(v, 2) as unknown);

const decoder = witMotionDecoder(100);
const one = (state: { rest: number[] }, bytes: Uint8Array) => decoder.decode(state, bytes);

describe('a frame of the WitMotion BLE 5 family', () => {
  it('reads the public capture as published', () => {
    const [packet] = one({ rest: [] }, CAPTURE);
    expect(inG(packet?.readings[0])).toEqual(near([0.486, -1.385, 0.031]));
    expect(inDeg(packet?.readings[0])).toEqual(near([38.82, -15.5, 3.11]));
    expect(packet).toMatchObject({ sequence: null, ticks: null });
  });

  it('comes several in one notification', () => {
    const frames = [1, 2, 3].map((k) => witFrame([k * 2048, 0, 0, 0, 0, 0]));
    const packets = one({ rest: [] }, concat(...frames));
    expect(packets.map((p) => Math.round(inG(p.readings[0])[0] ?? 0))).toEqual([1, 2, 3]);
  });

  it('may be cut anywhere between two notifications', () => {
    for (let cut = 1; cut < 20; cut++) {
      const state = decoder.create();
      const first = one(state, CAPTURE.subarray(0, cut));
      const second = one(state, CAPTURE.subarray(cut));
      expect([first.length, inG(second[0]?.readings[0])]).toEqual([
        0,
        near([0.486, -1.385, 0.031]),
      ]);
    }
  });

  it('is never glued to the rest of a lost one', () => {
    const state = decoder.create();
    one(state, witFrame([2048, 2048, 2048, 0, 0, 0]).subarray(0, 13));
    expect(inG(one(state, CAPTURE)[0]?.readings[0])).toEqual(near([0.486, -1.385, 0.031]));
    // nor is what was read already used again
    for (const g of [1, 2, 3]) {
      const frame = witFrame([g * 2048, 0, 0, 0, 0, 0]);
      expect(one(state, frame.subarray(0, 7))).toEqual([]);
      const packets = one(state, frame.subarray(7));
      expect(packets.map((p) => inG(p.readings[0])[0])).toEqual(near([g]));
    }
  });

  it('tells a reading at the end of its range', () => {
    const clipped = (count: number): unknown =>
      one(decoder.create(), witFrame([0, count, 0, 0, 0, 0]))[0]?.readings[0]?.saturated;
    expect([32_767, -32_768, 32_700].map(clipped)).toEqual([true, true, false]);
  });

  it('that answers a register read holds no motion', () => {
    const answer = concat(hex('55 71 3a 00'), new Uint8Array(16));
    expect(one(decoder.create(), answer)).toEqual([]);
  });

  it('with another header is refused, and the next good one is read', () => {
    const state = decoder.create();
    expect(() => one(state, concat([0x54], CAPTURE.subarray(1)))).toThrow(
      expect.objectContaining({ name: 'PacketError', code: 'header' }),
    );
    expect(one(state, CAPTURE)).toHaveLength(1);
  });
});
