import { describe, expect, it } from 'vitest';
import type { ImuSample } from '../../../../src/sensors/sample.ts';
import type { SessionEvent } from '../../../../src/sensors/sessionEvent.ts';
import type { SensorLink, SourceListener } from '../../../../src/sensors/sources/source.ts';
import {
  ScriptError,
  SyntheticSource,
  type SyntheticSourceOptions,
  type Timers,
  simulateSession,
} from '../../../../src/sensors/sources/synthetic/index.ts';

/** A clock wound by hand. */
class HandClock implements Timers {
  ms = 0;
  #waiting: { atMs: number; callback: () => void } | null = null;

  now(): number {
    return this.ms;
  }

  after(delayMs: number, callback: () => void): () => void {
    this.#waiting = { atMs: this.ms + delayMs, callback };
    return () => {
      this.#waiting = null;
    };
  }

  /** Lets time pass until `untilMs` or until nothing waits. */
  run(untilMs: number): void {
    while (this.#waiting && this.#waiting.atMs <= untilMs) {
      const { atMs, callback } = this.#waiting;
      this.#waiting = null;
      this.ms = Math.max(this.ms, atMs);
      callback();
    }
    this.ms = Math.max(this.ms, Math.min(untilMs, 1e9));
  }

  get idle(): boolean {
    return this.#waiting === null;
  }
}

class Notebook implements SourceListener {
  readonly batches: ImuSample[][] = [];
  readonly events: SessionEvent[] = [];
  readonly links: SensorLink[] = [];
  readonly ends: (string | null)[] = [];

  samples(batch: readonly ImuSample[]): void {
    this.batches.push([...batch]);
  }
  event(event: SessionEvent): void {
    this.events.push(event);
  }
  link(link: SensorLink): void {
    this.links.push(link);
  }
  end(error: string | null): void {
    this.ends.push(error);
  }
}

function start(options: SyntheticSourceOptions) {
  const clock = new HandClock();
  const notes = new Notebook();
  const source = new SyntheticSource({ timers: clock, ...options });
  source.start(notes);
  return { clock, notes, source };
}

describe('the synthetic source', () => {
  const session = { seed: 8, script: 'r', calibration: 'short' as const };

  it('plays the very packets and events of the simulated session, then ends', () => {
    const { clock, notes } = start(session);
    clock.run(1e9);
    const expected = simulateSession(session);
    expect(notes.batches).toEqual(expected.packets.map((p) => p.samples));
    expect(notes.events).toEqual(expected.events);
    expect(notes.ends).toEqual([null]);
    expect(notes.links.slice(-2).map((l) => l.state)).toEqual(['ended', 'ended']);
  });

  it('keeps pace with the clock: no packet before its time, none held back', () => {
    const { clock, notes } = start(session);
    for (let ms = 100; ms < 20_000; ms += 100) {
      clock.run(ms);
      const last = notes.batches.at(-1)?.[0]?.arrivalTimeS ?? 0;
      expect(last).toBeLessThanOrEqual(ms / 1000);
      expect(last).toBeGreaterThan(ms / 1000 - 0.2);
    }
  });

  it('plays faster when asked', () => {
    const { clock, notes } = start({ ...session, speed: 10 });
    clock.run(1000);
    expect(notes.batches.at(-1)?.[0]?.arrivalTimeS).toBeGreaterThan(9.8);
    expect(notes.batches.at(-1)?.[0]?.arrivalTimeS).toBeLessThanOrEqual(10);
  });

  it('plays without waiting at infinite speed, letting others run in between', () => {
    const { clock, notes } = start({ ...session, speed: Infinity });
    expect(notes.ends).toEqual([]);
    clock.run(1);
    expect(notes.ends).toEqual([null]);
    expect(notes.batches).toHaveLength(simulateSession(session).packets.length);
  });

  it('says that it is simulated, and reports both links with names and battery', () => {
    const { clock, notes, source } = start(session);
    clock.run(5000);
    expect(source.simulated).toBe(true);
    expect(notes.links.slice(0, 2).map((l) => l.state)).toEqual(['connecting', 'connecting']);
    const streaming = notes.links.filter((l) => l.state === 'streaming');
    expect(new Set(streaming.map((l) => l.sensor))).toEqual(new Set(['chest', 'trailArm']));
    for (const link of streaming) {
      expect(link.name).toMatch(/^demo /);
      expect(link.batteryPct).toBeGreaterThan(80);
      expect(link.nominalRateHz).toBe(100);
    }
  });

  it('is silent after stop, also when stopped from within', async () => {
    const { clock, notes, source } = start(session);
    clock.run(3000);
    const before = notes.batches.length;
    await source.stop();
    clock.run(9000);
    expect(notes.batches).toHaveLength(before);
    expect(notes.ends).toEqual([]);

    const inner = new HandClock();
    const second = new SyntheticSource({ ...session, timers: inner });
    let seen = 0;
    second.start({
      samples: () => {
        seen++;
        void second.stop();
      },
      event: () => {},
      link: () => {},
      end: () => {},
    });
    inner.run(1e9);
    expect(seen).toBe(1);
  });

  it('refuses a script, a speed and a second start that make no sense', () => {
    expect(() => new SyntheticSource({ seed: 1, script: 'r x' })).toThrow(ScriptError);
    expect(() => new SyntheticSource({ seed: 1, speed: 0 })).toThrow('speed');
    const { source } = start(session);
    expect(() => source.start(new Notebook())).toThrow('already');
  });

  it('goes on for ever with a varied mix when endless', () => {
    const { clock, notes } = start({ seed: 8, calibration: 'short', endless: true, rateHz: 10 });
    clock.run(30 * 60 * 1000);
    expect(notes.ends).toEqual([]);
    expect(notes.events).toHaveLength(5);
    expect(notes.batches.at(-1)?.[0]?.arrivalTimeS).toBeGreaterThan(30 * 60 - 1);
    const timesOf = (sensor: string) =>
      notes.batches
        .flat()
        .filter((s) => s.sensor === sensor)
        .map((s) => s.timeS);
    for (const sensor of ['chest', 'trailArm']) {
      const times = timesOf(sensor);
      expect(times.slice(1).every((t, i) => t > (times[i] ?? 0))).toBe(true);
    }
  });
});
