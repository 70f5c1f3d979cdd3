import { type StreamHealth, streamHealth } from '../../clock/stream.ts';
import type { SensorRole } from '../../sample.ts';
import { LINK_TEXTS } from '../radioTexts.ts';
import type { SensorLink, SensorSource, SourceListener } from '../source.ts';
import type { Wish } from './messages.ts';
import type { LinkStatus, Radio } from './radio.ts';
import { Reception } from './reception.ts';

export interface Assignment {
  readonly role: SensorRole;
  readonly sensor: Wish;
}

const NEEDED: readonly SensorRole[] = ['chest', 'trailArm'];

const linkOf = (worn: Reception, status: LinkStatus): SensorLink => ({
  sensor: worn.role,
  state: status.state,
  name: worn.wish.name,
  id: worn.wish.id,
  reason: status.reason,
  batteryPct: status.batteryPct,
  rssiDbm: status.rssiDbm,
  nominalRateHz: worn.stream?.format.rateHz ?? null,
});

const unassigned = (sensor: SensorRole): SensorLink => ({
  sensor,
  state: 'searching',
  name: '',
  reason: LINK_TEXTS.unassigned,
  batteryPct: null,
  rssiDbm: null,
  nominalRateHz: null,
});

/**
 * Samples of the assigned sensors in session time; onset is the call of `start`.
 * A link that comes and goes, or a radio that dies, never ends the source.
 */
export class BleSource implements SensorSource {
  readonly kind = 'ble';
  readonly simulated = false;
  readonly #radio: Radio;
  readonly #nowMs: () => number;
  readonly #worn = new Map<string, Reception>();
  #assignments: readonly Assignment[];
  #listener: SourceListener | null = null;
  #onsetMs = 0;
  #undo: (() => void)[] = [];
  #release: () => void = () => undefined;
  #endRecording: () => void = () => undefined;

  constructor(radio: Radio, assignments: readonly Assignment[], nowMs: () => number) {
    this.#radio = radio;
    this.#assignments = assignments;
    this.#nowMs = nowMs;
  }

  start(listener: SourceListener): void {
    this.#onsetMs = this.#nowMs();
    this.#listener = listener;
    this.#worn.clear();
    this.#undo = [
      this.#radio.listen({
        link: (status) => this.#onLink(status),
        setup: (id, setup) => this.#worn.get(id)?.connect(setup),
        packet: (id, atMs, bytes) => this.#onPacket(id, atMs, bytes),
        clock: (id, sentMs, ticks) => this.#onAnswer(id, sentMs, ticks),
      }),
    ];
    this.#wear();
  }

  /** Other sensors from now on; one that stays in its place goes on unbroken. */
  assign(assignments: readonly Assignment[]): void {
    this.#assignments = assignments;
    if (this.#listener) this.#wear();
  }

  async stop(): Promise<void> {
    this.#listener = null;
    this.#release();
    this.#endRecording();
    for (const f of this.#undo.splice(0)) f();
  }

  /** For each sensor that has connected at least once. */
  health(): Partial<Record<SensorRole, StreamHealth>> {
    const nowS = (this.#nowMs() - this.#onsetMs) / 1000;
    const all: Partial<Record<SensorRole, StreamHealth>> = {};
    for (const w of this.#worn.values()) if (w.stream) all[w.role] = streamHealth(w.stream, nowS);
    return all;
  }

  #wear(): void {
    const wanted = new Map(this.#assignments.map((a) => [a.sensor.id, a]));
    for (const [id, worn] of this.#worn)
      if (wanted.get(id)?.role !== worn.role) this.#worn.delete(id);
    for (const { role, sensor } of this.#assignments)
      if (!this.#worn.has(sensor.id)) this.#worn.set(sensor.id, new Reception(role, sensor));
    const releaseOld = this.#release;
    this.#release = this.#radio.hold(this.#assignments.map((a) => a.sensor));
    releaseOld();
    for (const link of this.#radio.status.links) this.#begin(link);
    const roles = new Set(this.#assignments.map((a) => a.role));
    const missing = NEEDED.filter((role) => !roles.has(role));
    for (const role of missing) this.#listener?.link(unassigned(role));
    // While a place is empty there is no practice to disturb, and a sensor to be found.
    this.#endRecording();
    this.#endRecording = missing.length > 0 ? () => undefined : this.#radio.beginRecording();
  }

  /** A sensor may have been connected before this session began. */
  #begin(link: LinkStatus): void {
    const worn = this.#worn.get(link.wish.id);
    if (!worn) return;
    if (link.setup && !worn.stream) worn.connect(link.setup);
    this.#listener?.link(linkOf(worn, link));
  }

  #onLink(status: LinkStatus): void {
    const worn = this.#worn.get(status.wish.id);
    if (worn) this.#listener?.link(linkOf(worn, status));
  }

  #onAnswer(id: string, sentMs: number, ticks: number): void {
    const worn = this.#worn.get(id);
    const answer = worn?.answered(ticks, (sentMs - this.#onsetMs) / 1000);
    if (worn && answer) this.#listener?.answer?.(worn.role, answer);
  }

  #onPacket(id: string, atMs: number, bytes: Uint8Array): void {
    const arrivalS = (atMs - this.#onsetMs) / 1000;
    const samples = arrivalS >= 0 ? this.#worn.get(id)?.take(bytes, arrivalS) : undefined;
    if (samples && samples.length > 0) this.#listener?.samples(samples);
  }
}
