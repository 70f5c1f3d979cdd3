import { bringUp } from './bringUp.ts';
import { disconnect } from './connect.ts';
import { driverFor } from './drivers/drivers.ts';
import { type Connection, Link } from './link.ts';
import { handleOf, hangUpAll } from './leftovers.ts';
import { LinkError, linkError } from './linkError.ts';
import type { FromRadio, ToRadio, Wish } from './messages.ts';
import type { Noble, NoblePeripheral } from './nobleApi.ts';
import { problemOfState, type RadioProblemCode } from './problem.ts';
import { Scanner } from './scanner.ts';

const TICK_MS = 250;
const POWER_ON_MS = 5000;
/** An advertisement older than this says nothing about now. */
const FRESH_MS = 1500;
const SILENT_MS = 2000;
const UNSEEN_MS = 10_000;
const SEEN_EVERY_MS = 400;
const NOT_SEEN = new LinkError('not-seen').message;
/** A search takes air from the links: one that stays away while others stream is looked for this much. */
const SPARING = { everyMs: 6000, forMs: 2000 };

const advertisementOf = (p: NoblePeripheral) => ({
  name: p.advertisement.localName ?? '',
  serviceUuids: p.advertisement.serviceUuids ?? [],
});

/**
 * Keeps the wanted sensors connected. One thing at a time on the radio: scan, stop, connect, prepare;
 * every wait has an end; every connection is new from the ground.
 */
export class Central {
  readonly #noble: Noble;
  readonly #out: (message: FromRadio) => void;
  readonly #now: () => number;
  readonly #scanner: Scanner;
  readonly #links = new Map<string, Link>();
  readonly #seenMs = new Map<string, number>();
  readonly #startedMs: number;
  readonly #timer: NodeJS.Timeout;
  #adapter: 'unknown' | 'on' | 'off' = 'unknown';
  #wasOn = false;
  #browsing = false;
  #busy = false;
  #bringingUp: Promise<void> = Promise.resolve();
  /** Sensors whose last link has not been confirmed closed. */
  readonly #ending = new Set<string>();
  #leftovers: readonly number[] = [];

  constructor(noble: Noble, out: (message: FromRadio) => void, now: () => number) {
    this.#noble = noble;
    this.#out = out;
    this.#now = now;
    this.#startedMs = now();
    this.#scanner = new Scanner(noble, now);
    noble.on('warning', () => undefined);
    noble.on('stateChange', (state: string) => this.#onState(state));
    noble.on('discover', (peripheral: NoblePeripheral) => this.#onDiscover(peripheral));
    this.#onState(noble.state);
    this.#timer = setInterval(() => this.#tick(), TICK_MS);
  }

  take(message: ToRadio): void {
    if (message.type === 'want') this.#want(message.wishes);
    if (message.type === 'scan') this.#browsing = message.on;
    if (message.type === 'hangUp') this.#hangUpLeftovers(message.handles);
    if (message.type === 'identify') void this.#identify(message.id);
    this.#next();
  }

  /** Ends all links; settles in any case. */
  async stop(): Promise<void> {
    clearInterval(this.#timer);
    this.#browsing = false;
    await Promise.all([this.#scanner.set(false), ...this.#want([]), this.#bringingUp]);
  }

  #onState(state: string): void {
    const problem = problemOfState(state);
    if (state === 'poweredOn') this.#onPowerOn();
    else if (problem !== null) this.#onPowerOff(problem);
  }

  #onPowerOn(): void {
    if (this.#adapter === 'on') return;
    if (this.#wasOn) return this.#out({ type: 'startMeAgain' });
    this.#wasOn = true;
    this.#adapter = 'on';
    this.#out({ type: 'adapter', problem: null, detail: '' });
    this.#hangUpLeftovers(this.#leftovers);
    for (const link of this.#links.values()) if (link.state === 'lost') link.become('searching');
    this.#next();
  }

  #hangUpLeftovers(handles: readonly number[]): void {
    if (this.#adapter === 'on') hangUpAll(this.#noble, handles);
    else this.#leftovers = handles;
  }

  /** The stack reports no end of links when the adapter goes. */
  #onPowerOff(problem: RadioProblemCode): void {
    this.#adapter = 'off';
    this.#out({ type: 'adapter', problem, detail: '' });
    for (const link of this.#links.values()) {
      link.close(new LinkError('adapter-off'));
      link.become('lost', new LinkError('adapter-off').message);
    }
  }

  /** @returns when those that are wanted no more have hung up */
  #want(wishes: readonly Wish[]): Promise<unknown>[] {
    const ids = new Set(wishes.map((w) => w.id));
    const unwanted = [...this.#links.values()].filter((l) => !ids.has(l.wish.id));
    for (const wish of wishes) {
      if (this.#links.has(wish.id)) continue;
      const link = new Link(wish, this.#now, this.#out);
      this.#links.set(wish.id, link);
      link.become('searching');
    }
    return unwanted.map((link) => this.#drop(link));
  }

  async #drop(link: Link): Promise<void> {
    this.#links.delete(link.wish.id);
    const peripheral = link.close(new LinkError('cancelled'));
    link.become('ended');
    if (peripheral) await this.#confirmEnd(peripheral);
  }

  async #confirmEnd(peripheral: NoblePeripheral): Promise<boolean> {
    this.#ending.add(peripheral.id);
    const ended = await disconnect(peripheral);
    this.#ending.delete(peripheral.id);
    if (ended) this.#out({ type: 'handle', id: peripheral.id, handle: null });
    return ended;
  }

  async #identify(id: string): Promise<void> {
    const link = this.#links.get(id);
    const gatt = link?.connection?.gatt;
    if (gatt) await link.driver.identify?.(gatt).catch(() => undefined);
  }

  #onDiscover(peripheral: NoblePeripheral): void {
    const link = this.#links.get(peripheral.id);
    const driver = link?.driver ?? driverFor(advertisementOf(peripheral));
    if (!driver) return;
    this.#reportSeen(peripheral, driver.kind);
    // One that was switched off and on advertises before the adapter has given the old link up.
    if (link?.state !== 'searching' || this.#ending.has(peripheral.id)) return;
    link.peripheral = peripheral;
    link.become('found');
    this.#next();
  }

  #reportSeen(peripheral: NoblePeripheral, driver: Wish['driver']): void {
    const { id, rssi } = peripheral;
    const now = this.#now();
    if (now - (this.#seenMs.get(id) ?? -Infinity) < SEEN_EVERY_MS) return;
    this.#seenMs.set(id, now);
    const name = advertisementOf(peripheral).name || id;
    this.#out({ type: 'seen', id, name, driver, rssiDbm: rssi });
  }

  /** Decides what the radio does next: connect what was just seen, else scan if there is a reason to. */
  #next(): void {
    if (this.#adapter !== 'on' || this.#busy) return;
    const all = [...this.#links.values()];
    const found = all.find((l) => l.state === 'found' && l.ageMs < FRESH_MS);
    if (found?.peripheral) {
      this.#bringingUp = this.#bringUp(found, found.begin(found.peripheral));
      return;
    }
    void this.#scanner.set(this.#browsing || this.#searches(all));
  }

  #searches(all: readonly Link[]): boolean {
    const missing = all.filter((l) => l.state === 'searching' || l.state === 'found');
    const sparing =
      missing.every((l) => l.reason === NOT_SEEN) && all.some((l) => l.state === 'streaming');
    const turn = (this.#now() - this.#startedMs) % SPARING.everyMs < SPARING.forMs;
    return missing.length > 0 && (!sparing || turn);
  }

  async #bringUp(link: Link, connection: Connection): Promise<void> {
    this.#busy = true;
    try {
      await this.#scanner.set(false);
      connection.end.signal.throwIfAborted();
      await bringUp(link, connection, {
        now: this.#now,
        out: this.#out,
        ended: (c) => this.#onEnded(link, c),
        handleOf: (id) => handleOf(this.#noble, id),
      });
    } catch (error) {
      this.#lose(link, connection, linkError(error, 'prepare-failed'));
    } finally {
      this.#busy = false;
      this.#next();
    }
  }

  #onEnded(link: Link, connection: Connection): void {
    this.#out({ type: 'handle', id: link.wish.id, handle: null });
    this.#lose(link, connection, new LinkError('disconnected'));
  }

  #lose(link: Link, connection: Connection, error: LinkError): void {
    if (link.connection !== connection) return;
    const waitMs = link.backOff();
    const peripheral = link.close(error);
    link.become('lost', error.message);
    if (peripheral && error.code !== 'disconnected') void this.#hangUp(peripheral);
    link.become('retrying', error.message, waitMs);
    setTimeout(() => this.#retry(link), waitMs);
  }

  #retry(link: Link): void {
    if (link.state !== 'retrying' || this.#adapter !== 'on') return;
    link.become('searching', link.reason);
    this.#next();
  }

  /** A link whose end is never confirmed blocks its sensor; if nothing else runs, start the stack anew. */
  async #hangUp(peripheral: NoblePeripheral): Promise<void> {
    if (await this.#confirmEnd(peripheral)) return;
    const streaming = [...this.#links.values()].some((l) => l.state === 'streaming');
    if (!streaming) this.#out({ type: 'startMeAgain' });
  }

  #tick(): void {
    const now = this.#now();
    if (this.#adapter === 'unknown' && now - this.#startedMs > POWER_ON_MS) {
      this.#onPowerOff('no-answer');
    }
    for (const link of this.#links.values()) this.#watch(link, now);
    this.#next();
  }

  #watch(link: Link, now: number): void {
    const { connection, state } = link;
    if (state === 'streaming' && connection && now - connection.lastDataMs > SILENT_MS)
      this.#lose(link, connection, new LinkError('silent'));
    if (state === 'found' && link.ageMs > FRESH_MS && !this.#busy)
      link.become('searching', link.reason);
    if (state === 'searching' && link.ageMs > UNSEEN_MS) link.become('searching', NOT_SEEN);
  }
}
