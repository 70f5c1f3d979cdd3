import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { type DeskRadio, SensorDesk } from '../../../../src/sensors/sources/ble/desk.ts';
import type { Wish } from '../../../../src/sensors/sources/ble/messages.ts';
import { Pairings } from '../../../../src/sensors/sources/ble/pairings.ts';
import type {
  LinkStatus,
  RadioListener,
  RadioStatus,
} from '../../../../src/sensors/sources/ble/radio.ts';
import type { DeskSensor } from '../../../../src/sensors/sources/deskView.ts';
import { DESK_TEXTS, LINK_TEXTS } from '../../../../src/sensors/sources/radioTexts.ts';
import { witFrame } from '../../decode/bytes.ts';

const link = (wish: Wish, change: Partial<LinkStatus> = {}): LinkStatus => ({
  wish,
  state: 'streaming',
  reason: null,
  retryInMs: null,
  batteryPct: 80,
  rssiDbm: -60,
  setup: { rateHz: 100, info: null },
  ...change,
});

/** A radio by hand: it hears sensors 1 to `n`, and connects whatever is wanted. */
class HandRadio implements DeskRadio {
  wanted: readonly Wish[] = [];
  links: Record<string, Partial<LinkStatus>> = {};
  names: Record<string, string> = {};
  listener: RadioListener = {};
  readonly #now: () => number;
  #heard: readonly string[];

  constructor(n: number, now: () => number) {
    this.#now = now;
    this.#heard = Array.from({ length: n }, (_, i) => `s${i + 1}`);
  }

  get status(): RadioStatus {
    return {
      problem: null,
      ready: true,
      browsing: true,
      recording: false,
      seen: this.#heard.map((id, i) => ({
        id,
        name: this.names[id] ?? `Sensor ${id}`,
        driver: 'witMotion',
        rssiDbm: -50 - i,
        seenMs: this.#now(),
      })),
      links: this.wanted.map((w) => link(w, this.links[w.id])),
    };
  }

  silence(id: string): void {
    this.#heard = this.#heard.filter((other) => other !== id);
  }
  become(id: string, change: Partial<LinkStatus>): void {
    this.links[id] = change;
    this.listener.changed?.(this.status);
  }
  listen(listener: RadioListener): () => void {
    this.listener = listener;
    return () => undefined;
  }
  browse(): boolean {
    return true;
  }
  hold(wishes: readonly Wish[]): () => void {
    this.wanted = wishes;
    return () => undefined;
  }
  identify(): void {
    // Nobody looks here.
  }
}

describe('the sensors page, state by state', () => {
  let nowMs: number;
  beforeEach(() => {
    nowMs = 0;
    vi.useFakeTimers();
  });
  afterEach(() => {
    vi.useRealTimers();
  });

  const open = (n: number, file: string | null = null): { desk: SensorDesk; radio: HandRadio } => {
    const radio = new HandRadio(n, () => nowMs);
    const desk = new SensorDesk(radio, new Pairings(file), () => nowMs);
    desk.obey({ type: 'open' });
    return { desk, radio };
  };
  const pass = (ms: number): void => {
    nowMs += ms;
    vi.advanceTimersByTime(ms);
  };
  const sensor = (desk: SensorDesk, id: string): DeskSensor | undefined =>
    desk.view.sensors.find((s) => s.id === id);

  it('says of a sensor that is one too many that it waits, and connects it when it is chosen', () => {
    const { desk, radio } = open(5);
    expect(radio.wanted).toHaveLength(4);
    expect(sensor(desk, 's5')).toMatchObject({
      state: 'found',
      reason: LINK_TEXTS.waits.replace('{most}', '4'),
    });
    expect(desk.obey({ type: 'assign', id: 's5', role: 'chest' })).toBeNull();
    expect(radio.wanted.map((w) => w.id)).toContain('s5');
    expect(radio.wanted).toHaveLength(4);
    expect(sensor(desk, 's5')).toMatchObject({ role: 'chest', state: 'streaming', reason: null });
  });

  it('gives the place of a sensor that has gone to one that is there', () => {
    const { desk, radio } = open(5);
    radio.silence('s1');
    radio.become('s1', { state: 'retrying', reason: LINK_TEXTS.disconnected });
    expect(sensor(desk, 's1')?.state).toBe('retrying');
    radio.become('s1', { state: 'searching', reason: LINK_TEXTS['not-seen'] });
    expect(sensor(desk, 's1')).toBeUndefined();
    expect(radio.wanted.map((w) => w.id)).toContain('s5');
  });

  it('keeps one that is worn, heard or not', () => {
    const { desk, radio } = open(2);
    desk.obey({ type: 'assign', id: 's1', role: 'chest' });
    radio.silence('s1');
    radio.become('s1', { state: 'searching', reason: LINK_TEXTS['not-seen'] });
    expect(sensor(desk, 's1')).toMatchObject({ role: 'chest', state: 'searching' });
  });

  it('shows no old news of a sensor that sends nothing', () => {
    const { desk, radio } = open(1);
    desk.obey({ type: 'assign', id: 's1', role: 'chest' });
    for (let i = 0; i < 300; i++) {
      pass(10);
      radio.listener.packet?.('s1', nowMs, witFrame([0, 0, 2048, 1000, 0, 0, 0, 0, 0]));
    }
    const well = sensor(desk, 's1');
    expect(well).toMatchObject({ lostPct: 0, lastPacketAgeMs: expect.any(Number) as number });
    expect(well?.clockResidualMs).not.toBeNull();
    expect(well?.trace.slice(0, 20)).toContain(null);
    expect(well?.trace.slice(-20, -4)).not.toContain(null);
    radio.silence('s1');
    radio.become('s1', { state: 'lost', reason: LINK_TEXTS.silent });
    pass(5000);
    const ill = { lostPct: null, clockResidualMs: null, rssiDbm: null, measuredRateHz: 0 };
    expect(sensor(desk, 's1')).toMatchObject(ill);
    expect(new Set(sensor(desk, 's1')?.trace)).toEqual(new Set([null]));
  });

  it('measures the rate of a new connection by itself, not by the gap before it', () => {
    const { desk, radio } = open(1);
    const send = (seconds: number): void => {
      for (let i = 0; i < 100 * seconds; i++) {
        pass(10);
        radio.listener.packet?.('s1', nowMs, witFrame([0, 0, 2048, 0, 0, 0, 0, 0, 0]));
      }
    };
    expect(sensor(desk, 's1')?.measuredRateHz).toBeNull();
    send(25);
    expect(sensor(desk, 's1')?.measuredRateHz).toBeCloseTo(100, 0);
    pass(4000);
    radio.listener.setup?.('s1', { rateHz: 100, info: null });
    expect(sensor(desk, 's1')?.measuredRateHz).toBeNull();
    send(3);
    expect(sensor(desk, 's1')?.measuredRateHz).toBeCloseTo(100, 0);
    pass(4500);
    expect(sensor(desk, 's1')?.measuredRateHz).toBeLessThan(60);
  });

  it('tells two of one name apart', () => {
    const { desk, radio } = open(3);
    radio.names = { s1: 'Board', s2: 'Board' };
    expect(desk.view.sensors.map((s) => s.name)).toEqual(['Board (s1)', 'Board (s2)', 'Sensor s3']);
  });

  it('swaps what is worn while no page is open, and connects nothing for it', () => {
    const { desk, radio } = open(3);
    desk.obey({ type: 'assign', id: 's1', role: 'chest' });
    desk.obey({ type: 'close' });
    radio.wanted = [];
    desk.obey({ type: 'swap' });
    expect(sensor(desk, 's1')?.role).toBe('trailArm');
    expect(radio.wanted).toEqual([]);
  });

  it('stops waiting for a tap after 20 s and says that none came', () => {
    const { desk } = open(2);
    desk.obey({ type: 'assign-by-tap', role: 'trailArm' });
    pass(19_000);
    expect(desk.view).toMatchObject({ tapFor: 'trailArm', tapMissed: null });
    pass(2000);
    expect(desk.view).toMatchObject({ tapFor: null, tapMissed: 'trailArm' });
    desk.obey({ type: 'assign-by-tap', role: 'chest' });
    expect(desk.view).toMatchObject({ tapFor: 'chest', tapMissed: null });
    desk.obey({ type: 'cancel-tap' });
    expect(desk.view).toMatchObject({ tapFor: null, tapMissed: null });
  });

  it('forgets what it found about two clocks when others are worn', () => {
    const { desk } = open(2);
    desk.obey({ type: 'assign', id: 's1', role: 'chest' });
    desk.obey({ type: 'assign', id: 's2', role: 'trailArm' });
    expect(desk.obey({ type: 'sync' })).toBeNull();
    expect(desk.view.sync).toEqual({ state: 'listening', leftS: 8 });
    pass(9000);
    expect(desk.view.sync).toMatchObject({ state: 'failed' });
    desk.obey({ type: 'swap' });
    expect(desk.view.sync).toEqual({ state: 'idle' });
  });

  it.each([
    [3, 0, { state: 'done', taps: 3 }],
    [4, 12, { state: 'done', taps: 4 }],
    [2, 0, { state: 'failed', reason: DESK_TEXTS['too-few-taps'] }],
  ])('tapped together %i times, the second one %i ms late', (taps, lateMs, found) => {
    const { desk, radio } = open(2);
    desk.obey({ type: 'assign', id: 's1', role: 'chest' });
    desk.obey({ type: 'assign', id: 's2', role: 'trailArm' });
    const reading = (k: number): Uint8Array => {
      const tap = k >= 400 && k < 400 + 100 * taps && k % 100 < 2;
      return witFrame([0, 0, tap ? 6144 : 2048, 0, 0, 0, 0, 0, 0]);
    };
    for (let k = 0; k < 1200; k++) {
      if (k === 300) desk.obey({ type: 'sync' });
      pass(10);
      radio.listener.packet?.('s1', nowMs, reading(k));
      radio.listener.packet?.('s2', nowMs + lateMs, reading(k));
    }
    const { sync } = desk.view;
    expect(sync).toMatchObject(found);
    if (sync.state === 'done') expect(sync.offsetMs).toBeCloseTo(lateMs, 0);
  });

  it('a choice that cannot be written holds all the same, and the page says so', () => {
    const folder = mkdtempSync(join(tmpdir(), 'stillcatch-'));
    const inTheWay = join(folder, 'file');
    writeFileSync(inTheWay, '');
    const { desk } = open(1, join(inTheWay, 'sensors.json'));
    expect(desk.view.notKept).toBeNull();
    expect(desk.obey({ type: 'assign', id: 's1', role: 'chest' })).toBeNull();
    expect(sensor(desk, 's1')?.role).toBe('chest');
    expect(desk.view.notKept).toContain(join(inTheWay, 'sensors.json'));
    rmSync(inTheWay);
    desk.obey({ type: 'forget', id: 's1' });
    expect(desk.view.notKept).toBeNull();
    rmSync(folder, { recursive: true });
  });
});
