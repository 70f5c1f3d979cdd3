import { connect } from './connect.ts';
import { GattSession } from './gattSession.ts';
import type { Connection, Link } from './link.ts';
import type { FromRadio } from './messages.ts';
import { sleep, within } from './within.ts';

const PREPARE_MS = 12_000;
const BATTERY_EVERY_MS = 60_000;
const RSSI_EVERY_MS = 5000;
/** Of questions for the device's clock: often until it is known well, then to follow it. */
const CLOCK_EVERY_MS = { first: 100, then: 250 };
const FIRST_QUESTIONS = 30;

export interface BringUp {
  readonly now: () => number;
  readonly out: (message: FromRadio) => void;
  /** The link layer reported the end of this connection. */
  readonly ended: (connection: Connection) => void;
  readonly handleOf: (id: string) => number | null;
}

/** noble keeps a peripheral's object for ever: nothing of an old connection may listen in a new one. */
function ownListeners(connection: Connection, ended: () => void): void {
  const { peripheral, end } = connection;
  peripheral.removeAllListeners();
  peripheral.once('disconnect', ended);
  end.signal.addEventListener('abort', () => peripheral.removeAllListeners(), { once: true });
}

/** From an advertisement just seen to data, or a {@link LinkError}. Every step has an end. */
export async function bringUp(link: Link, connection: Connection, to: BringUp): Promise<void> {
  const { peripheral, end } = connection;
  link.become('connecting');
  ownListeners(connection, () => to.ended(connection));
  await connect(peripheral, link.driver, end.signal);
  connection.established = true;
  to.out({ type: 'handle', id: link.wish.id, handle: to.handleOf(link.wish.id) });
  link.become('preparing');
  await within(prepare(link, connection, to), PREPARE_MS, 'prepare-timeout', end.signal);
  link.become('streaming');
  watchBattery(link, connection, to);
  watchRssi(link, connection, to);
  void watchClock(link, connection, to);
}

/** Packets that come before the setup is told wait for it. */
async function prepare(link: Link, connection: Connection, to: BringUp): Promise<void> {
  const { id } = link.wish;
  const early: FromRadio[] = [];
  let send = (packet: FromRadio): unknown => early.push(packet);
  connection.gatt = await GattSession.open(
    connection.peripheral,
    link.driver,
    connection.end.signal,
  );
  const setup = await link.driver.prepare(connection.gatt, (bytes) => {
    connection.lastDataMs = to.now();
    send({ type: 'packet', id, atMs: connection.lastDataMs, bytes });
  });
  connection.lastDataMs = connection.streamingSinceMs = to.now();
  to.out({ type: 'setup', id, setup });
  early.forEach(to.out);
  send = to.out;
}

/** Again and again while the connection lasts. */
function repeat(connection: Connection, everyMs: number, action: () => void): void {
  if (connection.end.signal.aborted) return;
  const timer = setInterval(action, everyMs);
  connection.end.signal.addEventListener('abort', () => clearInterval(timer), { once: true });
  action();
}

function watchBattery(link: Link, connection: Connection, to: BringUp): void {
  repeat(connection, BATTERY_EVERY_MS, () => {
    connection.gatt?.battery().then(
      (pct) => pct !== null && to.out({ type: 'battery', id: link.wish.id, pct }),
      () => undefined,
    );
  });
}

/** An adapter that does not answer is not asked again: each question leaves a listener until it is answered. */
function watchRssi(link: Link, connection: Connection, to: BringUp): void {
  let waiting = false;
  repeat(connection, RSSI_EVERY_MS, () => {
    if (waiting) return;
    waiting = true;
    connection.peripheral.updateRssiAsync().then(
      (rssiDbm) => {
        waiting = false;
        to.out({ type: 'rssi', id: link.wish.id, rssiDbm });
      },
      () => undefined,
    );
  });
}

/** At uneven times, so that questions fall at all places between two connection events. */
const pauseMs = (asked: number): number =>
  (asked < FIRST_QUESTIONS ? CLOCK_EVERY_MS.first : CLOCK_EVERY_MS.then) *
  (0.75 + Math.random() / 2);

async function watchClock(link: Link, connection: Connection, to: BringUp): Promise<void> {
  const { gatt, end } = connection;
  const { askClock } = link.driver;
  if (!gatt || !askClock) return;
  for (let asked = 1; !end.signal.aborted; asked++) {
    const sentMs = to.now();
    const ticks = await askClock(gatt).catch(() => null);
    if (ticks === null) return;
    to.out({ type: 'clock', id: link.wish.id, sentMs, ticks });
    await sleep(pauseMs(asked));
  }
}
