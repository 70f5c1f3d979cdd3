import type { SensorRole } from '../../sample.ts';

const WAIT_MS = 20_000;

/** Waits for a tap on the sensor that is to be worn somewhere; not for ever. */
export class TapWait {
  #for: { readonly role: SensorRole; readonly sinceMs: number } | null = null;
  #missed: SensorRole | null = null;

  /** Where the tapped sensor will be worn; `null` while nothing is waited for. */
  get role(): SensorRole | null {
    return this.#for?.role ?? null;
  }

  /** The last wait was for this place and ended without a tap. */
  get missed(): SensorRole | null {
    return this.#missed;
  }

  begin(role: SensorRole, nowMs: number): void {
    this.#for = { role, sinceMs: nowMs };
    this.#missed = null;
  }

  end(): void {
    this.#for = null;
    this.#missed = null;
  }

  tick(nowMs: number): void {
    if (!this.#for || nowMs - this.#for.sinceMs <= WAIT_MS) return;
    this.#missed = this.#for.role;
    this.#for = null;
  }
}
