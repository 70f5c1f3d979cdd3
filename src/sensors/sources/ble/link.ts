import type { LinkState } from '../source.ts';
import type { Driver } from './drivers/driver.ts';
import { driverOf } from './drivers/drivers.ts';
import type { GattSession } from './gattSession.ts';
import type { LinkError } from './linkError.ts';
import type { FromRadio, Wish } from './messages.ts';
import type { NoblePeripheral } from './nobleApi.ts';

/** The first retry comes at once; then ever later. */
const BACK_OFF_MS = [0, 500, 1000, 2000, 4000, 8000];
/** A link that lived this long has earned a fresh start. */
const SETTLED_MS = 10_000;

/** One connection from connect to its end. */
export interface Connection {
  readonly peripheral: NoblePeripheral;
  /** Aborted with the reason when the connection is over, by whoever notices first. */
  readonly end: AbortController;
  /** The link layer said yes: it must be hung up. */
  established: boolean;
  gatt: GattSession | null;
  lastDataMs: number;
  streamingSinceMs: number;
}

/** What is known of one wanted sensor. */
export class Link {
  readonly wish: Wish;
  readonly driver: Driver;
  state: LinkState = 'searching';
  reason: string | null = null;
  peripheral: NoblePeripheral | null = null;
  connection: Connection | null = null;
  /** When the state began, ms. */
  sinceMs: number;
  #failures = 0;
  readonly #out: (message: FromRadio) => void;
  readonly #now: () => number;

  constructor(wish: Wish, now: () => number, out: (message: FromRadio) => void) {
    this.wish = wish;
    this.driver = driverOf(wish.driver);
    this.#now = now;
    this.#out = out;
    this.sinceMs = now();
  }

  get ageMs(): number {
    return this.#now() - this.sinceMs;
  }

  become(state: LinkState, reason: string | null = null, retryInMs: number | null = null): void {
    this.state = state;
    this.reason = reason;
    this.sinceMs = this.#now();
    this.#out({ type: 'link', id: this.wish.id, state, reason, retryInMs });
  }

  begin(peripheral: NoblePeripheral): Connection {
    this.connection = {
      peripheral,
      end: new AbortController(),
      established: false,
      gatt: null,
      lastDataMs: this.#now(),
      streamingSinceMs: Infinity,
    };
    return this.connection;
  }

  /** Ends what there was. @returns the peripheral to hang up, if it was connected */
  close(error: LinkError): NoblePeripheral | null {
    const { connection } = this;
    this.connection = null;
    this.peripheral = null;
    connection?.end.abort(error);
    return connection?.established ? connection.peripheral : null;
  }

  /** How long to wait before the next try, ms. */
  backOff(): number {
    const lived = this.connection?.streamingSinceMs ?? Infinity;
    if (this.#now() - lived > SETTLED_MS) this.#failures = 0;
    const waitMs = BACK_OFF_MS[Math.min(this.#failures, BACK_OFF_MS.length - 1)] ?? 0;
    this.#failures += 1;
    return waitMs;
  }
}
