import fc from 'fast-check';
import { afterEach, describe, expect, it, vi } from 'vitest';
import type { ImuSample, SensorRole } from '../../../src/sensors/sample.ts';
import type { SessionEvent } from '../../../src/sensors/sessionEvent.ts';
import { type ReplayInput, ReplaySource } from '../../../src/sensors/sources/replay/index.ts';
import type { SensorLink } from '../../../src/sensors/sources/source.ts';

const sample = (sensor: SensorRole, timeS: number, arrivalTimeS: number | null): ReplayInput => ({
  kind: 'sample',
  sample: {
    sensor,
    timeS,
    acc: { x: 0, y: 0, z: 9.81 },
    gyro: { x: 0, y: 0, z: 0 },
    deviceTimeS: null,
    arrivalTimeS,
    saturated: false,
  },
});

const event = (onsetS: number, durationS: number): ReplayInput => ({
  kind: 'event',
  event: { type: 'mark-tap', onsetS, durationS, value: null },
});

async function* batches(inputs: readonly ReplayInput[], size = 7) {
  for (let at = 0; at < inputs.length; at += size) yield inputs.slice(at, at + size);
}

type Heard =
  | { readonly atMs: number; readonly packet: readonly ImuSample[] }
  | { readonly atMs: number; readonly event: SessionEvent };

function play(inputs: AsyncIterable<readonly ReplayInput[]>, speed?: number) {
  const heard: Heard[] = [];
  const links: SensorLink[] = [];
  const source = new ReplaySource({
    inputs,
    sensors: { chest: { name: 'A', nominalRateHz: 100 } },
    ...(speed === undefined ? {} : { speed }),
  });
  const started = performance.now();
  const ended = new Promise<string | null>((resolve) => {
    source.start({
      samples: (packet) => heard.push({ atMs: performance.now() - started, packet }),
      event: (e) => heard.push({ atMs: performance.now() - started, event: e }),
      link: (link) => links.push(link),
      end: resolve,
    });
  });
  return { source, heard, links, ended };
}

const packets = (heard: readonly Heard[]) =>
  heard.flatMap((h) => ('packet' in h ? [h.packet] : []));

afterEach(() => {
  vi.useRealTimers();
});

describe('A recording played back', () => {
  it('gives packets whole and in the order in which they arrived', async () => {
    const inputs = [
      sample('chest', 0.0, 0.08),
      sample('trailArm', 0.005, 0.02),
      sample('chest', 0.01, 0.08),
      sample('trailArm', 0.015, 0.02),
      sample('chest', 0.02, 0.08),
      sample('trailArm', 0.025, 0.06),
      event(0.0, 0.05),
      sample('chest', 0.09, 0.11),
      sample('trailArm', 0.095, 0.1),
    ];
    const { heard, ended, links } = play(batches(inputs), Infinity);
    expect(await ended).toBeNull();
    const order = heard.map((h) =>
      'event' in h ? 'event' : `${h.packet[0]?.sensor}:${h.packet.length}`,
    );
    expect(order).toEqual([
      'trailArm:2',
      'event',
      'trailArm:1',
      'chest:3',
      'trailArm:1',
      'chest:1',
    ]);
    expect(links.map((l) => l.state)).toEqual(['streaming', 'ended']);
  });

  it('loses nothing and keeps the order of each sensor, whatever the arrival times', async () => {
    const arrival = fc.option(fc.double({ min: -1, max: 40, noNaN: true }));
    const input = fc.tuple(fc.constantFrom('chest' as const, 'trailArm' as const), arrival);
    await fc.assert(
      fc.asyncProperty(fc.array(input, { maxLength: 200 }), async (drawn) => {
        const inputs = drawn.map(([sensor, delay], k) =>
          sample(sensor, k / 100, delay === null ? null : k / 100 + delay),
        );
        const { heard, ended } = play(batches(inputs), Infinity);
        await ended;
        for (const sensor of ['chest', 'trailArm'])
          expect(
            packets(heard)
              .flat()
              .filter((s) => s.sensor === sensor),
          ).toEqual(
            inputs.flatMap((i) =>
              i.kind === 'sample' && i.sample.sensor === sensor ? [i.sample] : [],
            ),
          );
        expect(packets(heard).every((p) => p.every((s) => s.sensor === p[0]?.sensor))).toBe(true);
      }),
      { numRuns: 60 },
    );
  });

  it.each([1, 4])('at %d times the speed of life delivers when due', async (speed) => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout', 'performance', 'setImmediate'] });
    const inputs = [...Array(100).keys()].map((k) => sample('chest', k / 50, k / 50));
    const { heard, ended } = play(batches(inputs), speed);
    for (let ms = 0; ms < 2100; ms += 5) await vi.advanceTimersByTimeAsync(5);
    expect(await ended).toBeNull();
    expect(heard).toHaveLength(100);
    heard.forEach(({ atMs }, k) => {
      expect(atMs).toBeGreaterThanOrEqual((k * 20) / speed - 1.01);
      expect(atMs).toBeLessThanOrEqual((k * 20) / speed + 1.01);
    });
  });

  it('stops at once, also while it waits, and tells no end', async () => {
    const inputs = [
      sample('chest', 0, 0),
      sample('chest', 1000, 1000),
      sample('chest', 2000, 2000),
    ];
    const { source, heard, ended } = play(batches(inputs, 1));
    let over = false;
    void ended.then(() => (over = true));
    await vi.waitFor(() => expect(heard).toHaveLength(1), 240_000);
    await source.stop();
    expect(heard).toHaveLength(1);
    expect(over).toBe(false);
  });

  it('ends with the words of a recording that breaks off', async () => {
    async function* broken() {
      yield [sample('chest', 0, 0), sample('chest', 0.01, 0.01), sample('chest', 0.02, 0.02)];
      throw new Error('line 3 is broken');
    }
    const { ended, heard } = play(broken(), Infinity);
    expect(await ended).toBe('line 3 is broken');
    expect(heard.length).toBeGreaterThan(0);
  });

  it('refuses a speed that is not above 0', () => {
    expect(() => new ReplaySource({ inputs: batches([]), sensors: {}, speed: 0 })).toThrow(/speed/);
  });
});
